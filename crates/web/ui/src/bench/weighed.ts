/** A batch as it was weighed out, and the entry of the log that it comes to. */
import type { MixAnswer, WeighedPart } from '../answers';
import type { Lot } from './entries';
import { clockTime } from './outcome';

/** The columns of the log that a part may go into. */
const COLUMNS = ['sand', 'clay', 'binder', 'water'];

/** The entry of a batch: what the scale said of each part, and all parts by name in its note. */
export function batchLot(
  mix: Pick<MixAnswer, 'name'>,
  parts: WeighedPart[],
  weighed: string[],
  now: number,
  newId: () => string,
): Lot {
  const says: Record<string, string> = { mixed: clockTime(now) };
  for (const column of COLUMNS) {
    const of = parts.flatMap((part, at) => (part.column === column ? [weighed[at] ?? ''] : []));
    // Two parts of one column stay apart in the note: what they are together nobody has weighed.
    if (of.length === 1 && of[0]) says[column] = of[0];
  }
  const told = parts.map((part, at) => `${part.name} ${weighed[at] ?? ''}`.trim());
  says['note'] = `${mix.name}: ${told.join('; ')}`;
  return [{ table: 'batches', id: newId(), says }];
}
