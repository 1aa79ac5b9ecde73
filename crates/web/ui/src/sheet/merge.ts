/** Where two changes of one thing met: which of the two is to stand. */
import type { Change, Typed } from '../answers';
import { Refused } from '../asking/ask';

/** A question which of two changes to keep. */
export interface Merge {
  key: string;
  /** What this window wants. */
  mine: Typed;
  /** What stands in the file. */
  theirs: Typed;
}

/** The question that a refused change asks; none where it was refused for another reason. */
export function mergeOf(change: Change, error: unknown): Merge | null {
  if (!(error instanceof Refused) || error.status !== 409) return null;
  return { key: change.key, mine: change.to, theirs: error.no.now ?? null };
}

/** The change that puts ours in the place of theirs, which has now been seen. */
export function mineOver(merge: Merge): Change {
  return { key: merge.key, was: merge.theirs, to: merge.mine };
}
