/** What was changed in this window, to be taken back and done again. */
import type { Change } from '../answers';

/** Changes done, the last one last, and those taken back, the next to do again last. */
export interface Undo {
  done: readonly Change[];
  undone: readonly Change[];
}

/** Most changes that are remembered: more than a day of typing; a list without end only grows. */
const MOST = 500;

/** Nothing changed yet. */
export const nothingDone: Undo = { done: [], undone: [] };

/** A change by hand: what was taken back before it cannot be done again. */
export function withDone(undo: Undo, change: Change): Undo {
  return { done: [...undo.done, change].slice(-MOST), undone: [] };
}

/** The change that takes the last one back. */
export function toUndo(undo: Undo): Change | null {
  const last = undo.done.at(-1);
  return last ? { key: last.key, was: last.to, to: last.was } : null;
}

/** The change that does again what was taken back last. */
export function toRedo(undo: Undo): Change | null {
  return undo.undone.at(-1) ?? null;
}

/** After the last change was taken back. */
export function afterUndo(undo: Undo): Undo {
  const last = undo.done.at(-1);
  return last ? { done: undo.done.slice(0, -1), undone: [...undo.undone, last] } : undo;
}

/** After one was done again. */
export function afterRedo(undo: Undo): Undo {
  const next = undo.undone.at(-1);
  return next ? { done: [...undo.done, next], undone: undo.undone.slice(0, -1) } : undo;
}
