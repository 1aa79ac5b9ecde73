/** Changes that have not reached the server, kept in the browser until they have. */
import type { Change } from '../answers';

const name = (job: string) => `oddside waiting ${job}`;

/** Where a change comes from: typed, taken back, or done again. */
export type By = 'hand' | 'undo' | 'redo';

/** A change that waits. */
export interface Waiting extends Change {
  by: By;
}

/** Keeps what waits; a browser that keeps nothing loses nothing but the safety net. */
export function keep(job: string, waiting: Waiting[]): void {
  try {
    if (waiting.length > 0) localStorage.setItem(name(job), JSON.stringify(waiting));
    else localStorage.removeItem(name(job));
  } catch {
    // Full or forbidden: the changes still stand on the page.
  }
}

/** What waited when the page was left. */
export function waitingOf(job: string): Waiting[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(name(job)) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isWaiting) : [];
  } catch {
    return [];
  }
}

/** A change in a row of others: the last word on a key takes the place of an earlier one. */
export function withChange(waiting: Waiting[], change: Waiting): Waiting[] {
  const earlier = waiting.find((other) => other.key === change.key);
  const others = waiting.filter((other) => other !== earlier);
  return [...others, { ...change, was: earlier ? earlier.was : change.was }];
}

function isWaiting(one: unknown): one is Waiting {
  const says = (name: string) => typeof one === 'object' && one !== null && name in one;
  return ['key', 'was', 'to', 'by'].every(says);
}
