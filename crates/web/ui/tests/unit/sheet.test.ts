import { expect, test } from 'vitest';
import type { BlockAnswer, RowAnswer, SheetAnswer, TypedLine } from '../../src/answers';
import { Gone, Refused } from '../../src/asking/ask';
import { addressOf, jobAt } from '../../src/asking/way';
import { differences, rowMark } from '../../src/sheet/marks';
import { mergeOf, mineOver } from '../../src/sheet/merge';
import { asText, asTyped, sameWord } from '../../src/sheet/typed';
import { type Waiting, withChange } from '../../src/sheet/waiting';

const line: TypedLine = {
  key: 'part.count',
  label: 'castings in one mould',
  value: 2,
  kind: 'count',
  choices: [],
  example: null,
  otherwise: null,
};

const row = (name: string, value: string): RowAnswer => ({
  name,
  value,
  band: null,
  other: null,
  note: null,
  large: false,
  figure: name,
  typed: null,
});

const block = (rows: RowAnswer[], typed: TypedLine[]): BlockAnswer => ({
  id: 'block-metal',
  heading: 'Metal',
  rows,
  typed,
});

const sheet = (blocks: BlockAnswer[]): SheetAnswer => ({
  job: 'a',
  name: 'A',
  language: 'en-GB',
  code: null,
  red_lines: [],
  stops: [],
  head: [],
  blocks,
  remarks: [],
  limits: '',
  unsettled: null,
});

test('what differs is marked, and nothing else', () => {
  const was = sheet([block([row('charge', '2 kg'), row('flask', 'long')], [line])]);
  const now = block([row('charge', '3 kg'), row('flask', 'long')], [{ ...line, value: 3 }]);
  const marks = differences(was, sheet([now]));
  expect([...marks.on].sort()).toEqual(['row block-metal charge', 'typed part.count']);
  expect(marks.names).toEqual(['charge', 'castings in one mould']);
  expect(marks.on.has(rowMark(now, row('flask', 'long')))).toBe(false);
});

test('a row that was not there before is marked', () => {
  const marks = differences(sheet([block([], [])]), sheet([block([row('feeder', '40 mm')], [])]));
  expect(marks.names).toEqual(['feeder']);
});

test('two changes that met are a question, with both in it', () => {
  const change = { key: 'part.count', was: 2, to: 4 };
  const merge = mergeOf(change, new Refused(409, { message: 'changed meanwhile', now: 3 }));
  expect(merge).toEqual({ key: 'part.count', mine: 4, theirs: 3 });
  expect(merge && mineOver(merge)).toEqual({ key: 'part.count', was: 3, to: 4 });
});

test('what was taken away meanwhile is a question too', () => {
  const change = { key: 'date', was: '1 May', to: '2 May' };
  const merge = mergeOf(change, new Refused(409, { message: 'changed meanwhile' }));
  expect(merge?.theirs).toBeNull();
});

test('another no, and a server that is gone, ask no such question', () => {
  const change = { key: 'part.count', was: 2, to: 4 };
  expect(mergeOf(change, new Refused(422, { message: 'no' }))).toBeNull();
  expect(mergeOf(change, new Gone('gone'))).toBeNull();
});

test('of several changes of one key that wait, the last word is sent with the first sight', () => {
  const waiting = [
    { key: 'a', was: 1, to: 2, by: 'undo' },
    { key: 'b', was: null, to: 'x', by: 'hand' },
    { key: 'a', was: 2, to: 3, by: 'hand' },
  ] as const;
  expect(waiting.reduce<Waiting[]>(withChange, [])).toEqual([
    { key: 'b', was: null, to: 'x', by: 'hand' },
    { key: 'a', was: 1, to: 3, by: 'hand' },
  ]);
});

test('what stands in a field comes back as it was typed', () => {
  const places = ['180, 100', 'heaviest'];
  expect(asTyped(asText(places), 'places')).toEqual(places);
  expect(asTyped('  ', 'text')).toBeNull();
  expect(asTyped('3/16"', 'text')).toBe('3/16"');
  expect(asTyped('3', 'count')).toBe(3);
  expect(asTyped('three', 'count')).toBe('three');
  expect(asTyped('180', 'text')).toBe('180');
});

test('a word with capitals is the same word', () => {
  expect(sameWord('silicon bronze', 'Silicon bronze')).toBe(true);
  expect(sameWord('silicon brass', 'Silicon bronze')).toBe(false);
  expect(sameWord(null, 'no')).toBe(false);
  expect(sameWord(false, null)).toBe(false);
});

test('any way to a job has an address that leads back to it', () => {
  for (const job of ['porch', '2026/church bell', 'a.b', 'ä%2F?#', 'v1.2/…']) {
    expect(addressOf(job)).not.toContain('.');
    expect(jobAt(addressOf(job))).toBe(job);
  }
  expect(jobAt('/')).toBeNull();
  expect(jobAt('/job/%E0%A4%A')).toBeNull();
});
