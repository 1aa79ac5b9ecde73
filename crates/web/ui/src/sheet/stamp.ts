/** By which it is known whether what hangs on a sheet has to be asked for anew. */
import type { SheetAnswer } from '../answers';

/** The plan of a sheet and all that is typed for it: a gate that is moved changes no figure. */
export function stampOf(sheet: SheetAnswer): string {
  const rows = sheet.blocks.flatMap((block) => block.rows.flatMap((row) => row.typed ?? []));
  const lines = [...sheet.blocks.flatMap((block) => block.typed), ...rows];
  return JSON.stringify([sheet.code, lines.map(({ key, value }) => [key, value])]);
}
