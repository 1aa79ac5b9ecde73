/** Entries of the log as they are kept on the phone, from the tap to the log. */
import type { SentEntry, TakenEntry } from '../answers';

/** How an entry stands. */
export type EntryState = 'kept' | 'sending' | 'sent' | 'refused';

/** An entry on the phone. */
export interface KeptEntry extends SentEntry {
  state: EntryState;
  /** Counts the entries of this phone: those that others point to come first. */
  order: number;
  /** What was written at once, and is undone at once. */
  lot: string;
  /** When it was written down, ms. */
  at: number;
  /** Why the log refused it. */
  why?: string;
}

/** What is to be written at once. */
export type Lot = Pick<SentEntry, 'table' | 'says' | 'id'>[];

/**
 * How long an entry waits on the phone before it is sent, ms. In this time it is undone without a
 * trace; in the log it can only be corrected. Shorter, and a wrong tap is in the log before it is
 * seen; longer, and the laptop lags behind the heap.
 */
export const HOLD_MS = 60_000;

/** Most entries that are sent at once; a pour of some sixty goes in one. */
export const MOST_AT_ONCE = 200;

/** An id as the log has it: 128 bits of chance as 32 digits. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Entries of a lot as they are kept. */
export function keptAs(lot: Lot, now: number, first: number): KeptEntry[] {
  const written = new Date(now).toISOString();
  const name = newId();
  return lot.map((entry, at) => ({
    ...entry,
    written,
    state: 'kept',
    order: first + at,
    lot: name,
    at: now,
  }));
}

/** Those to be sent now, in order: also what was being sent when the page was closed. */
export function toSend(all: KeptEntry[], now: number, hold = HOLD_MS): KeptEntry[] {
  const waits = all.filter((entry) => entry.state !== 'sent');
  const due = waits.filter((entry) => entry.state !== 'kept' || now - entry.at >= hold);
  return due.sort((one, other) => one.order - other.order).slice(0, MOST_AT_ONCE);
}

/** An entry as it is sent. */
export function asSent({ table, id, written, says }: KeptEntry): SentEntry {
  return { table, id, written, says };
}

/** An entry after the log has answered; one that it did not speak of waits for the next time. */
export function afterwards(entry: KeptEntry, taken: TakenEntry[]): KeptEntry {
  const answer = taken.find((one) => one.id === entry.id);
  if (!answer) return { ...entry, state: 'sending' };
  if (answer.refused === null) return { ...entry, state: 'sent', why: undefined };
  return { ...entry, state: 'refused', why: answer.refused };
}

/** The last lot, where it can be undone: none of it is on its way yet. */
export function undoable(all: KeptEntry[]): KeptEntry[] {
  const last = all.reduce<KeptEntry | null>(
    (so, entry) => (so === null || entry.order > so.order ? entry : so),
    null,
  );
  if (!last) return [];
  const lot = all.filter((entry) => entry.lot === last.lot);
  return lot.every((entry) => entry.state === 'kept') ? lot : [];
}

/** How many stand how; a lot counts once, as it was written. */
export function counted(all: KeptEntry[]): { kept: number; sent: number; refused: number } {
  const lots = new Map<string, KeptEntry[]>();
  for (const entry of all) lots.set(entry.lot, [...(lots.get(entry.lot) ?? []), entry]);
  const count = { kept: 0, sent: 0, refused: 0 };
  for (const lot of lots.values()) {
    if (lot.some((entry) => entry.state === 'refused')) count.refused += 1;
    else if (lot.every((entry) => entry.state === 'sent')) count.sent += 1;
    else count.kept += 1;
  }
  return count;
}
