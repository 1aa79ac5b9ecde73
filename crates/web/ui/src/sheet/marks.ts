/** What differs between two sheets: marked until the next change. */
import type { BlockAnswer, RemarkAnswer, RowAnswer, SheetAnswer, TypedLine } from '../answers';

/** Marks of a sheet, and the names of what is marked, for those who hear the page. */
export interface Marks {
  on: ReadonlySet<string>;
  names: string[];
}

/** Nothing marked. */
export const noMarks: Marks = { on: new Set(), names: [] };

/** By which a row is known from one sheet to the next. */
export function rowMark(block: BlockAnswer, row: RowAnswer): string {
  return `row ${block.id} ${row.figure ?? row.name}`;
}

/** By which a typed line is known. */
export function typedMark(line: TypedLine): string {
  return `typed ${line.key}`;
}

/** By which a remark is known. */
export function remarkMark(remark: RemarkAnswer): string {
  return `remark ${remark.block} ${remark.words} ${remark.advice}`;
}

/** By which a sentence of the head is known. */
export function sentenceMark(sentence: string): string {
  return `sentence ${sentence}`;
}

/** Everything on a sheet that was not on the other, or was otherwise there. */
export function differences(was: SheetAnswer, is: SheetAnswer): Marks {
  const before = new Map(everything(was).map(({ mark, says }) => [mark, says]));
  const changed = everything(is).filter(({ mark, says }) => before.get(mark) !== says);
  return {
    on: new Set(changed.map(({ mark }) => mark)),
    names: [...new Set(changed.map(({ name }) => name))],
  };
}

/** Something on a sheet: its mark, what it is called, and all it says. */
interface Said {
  mark: string;
  name: string;
  says: string;
}

function everything(sheet: SheetAnswer): Said[] {
  const sentences = [...sheet.red_lines, ...sheet.stops].map((sentence) => ({
    mark: sentenceMark(sentence),
    name: sentence,
    says: sentence,
  }));
  const remarks = sheet.remarks.map((remark) => ({
    mark: remarkMark(remark),
    name: remark.words,
    says: remark.weight,
  }));
  return [
    ...sheet.head.map(ofLine),
    ...sentences,
    ...sheet.blocks.flatMap(ofBlock),
    ...remarks,
  ];
}

function ofBlock(block: BlockAnswer): Said[] {
  const rows = block.rows.flatMap((row) => {
    const says = [row.value, row.band, row.other, row.note].join(' | ');
    const said = { mark: rowMark(block, row), name: row.name, says };
    return row.typed ? [said, ofLine(row.typed)] : [said];
  });
  return [...rows, ...block.typed.map(ofLine)];
}

function ofLine(line: TypedLine): Said {
  return { mark: typedMark(line), name: line.label, says: JSON.stringify(line.value) };
}
