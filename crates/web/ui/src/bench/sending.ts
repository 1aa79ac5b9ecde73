/** Entries on their way to the log: from the page, and from the worker when no page is open. */
import type { TakenEntry } from '../answers';
import { afterwards, asSent, toSend } from './entries';
import { change, entries } from './store';

/** How a try to send went. */
export type Sent = 'all' | 'some' | 'gone' | 'unpaired';

const WAY = '/api/v1/entries';

/**
 * Sends what is due, in order. Marked first and confirmed last, so that whatever is broken off in
 * the middle is sent again: the log writes each id once.
 */
export async function send(now: number, hold?: number): Promise<Sent> {
  for (;;) {
    const due = toSend(await entries(), now, hold);
    const fresh = due.filter((entry) => entry.state !== 'refused');
    // What was refused is tried again with whatever else goes, and does not hold it up.
    if (fresh.length === 0) return (await entries()).some((one) => one.state === 'kept') ? 'some' : 'all';
    const ids = due.map((entry) => entry.id);
    const marked = await change(ids, (entry) => ({ ...entry, state: 'sending' }));
    let answer: Response;
    try {
      answer = await fetch(WAY, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(marked.map(asSent)),
      });
    } catch {
      return 'gone';
    }
    if (answer.status === 401) return 'unpaired';
    if (!answer.ok) return 'gone';
    let taken: TakenEntry[];
    try {
      taken = (await answer.json()) as TakenEntry[];
    } catch {
      // Broken off in the middle of its answer.
      return 'gone';
    }
    const told = await change(ids, (entry) => afterwards(entry, taken));
    if (told.some((entry) => entry.state === 'sending')) return 'gone';
  }
}
