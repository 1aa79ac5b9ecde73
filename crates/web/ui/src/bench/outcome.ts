/** How a pour came out: six answers, and the entries of the log that they come to. */
import type { CardAnswer } from '../answers';
import type { Lot } from './entries';

/** What is answered; as typed, with its unit. */
export interface Outcome {
  /** Castings in the mould. */
  castings: number;
  /** Metal poured; nothing where it was not weighed. */
  mass: string;
  /** How hot. */
  temperature: string;
  /** How it went in: a word of the log. */
  how: string;
  /** How many can be used for what they were made for. */
  good: number;
  /** What is seen on the others: words of the log. */
  looks: string[];
}

/** What the pour card has seen of it. */
export interface Seen {
  /** When the first drop fell, ms. */
  poured?: number;
  /** How long the mould took to fill, s. */
  filledS?: number;
  /** From the full mould to the open one, min. */
  openedMin?: number;
}

/** How a stream can have gone, as the log has it. */
export const HOW = ['steady', 'broken', 'splashed', 'slow', 'ran-short'] as const;

/** A time as the shop's clock shows it and the log writes it. */
export function clockTime(at: number): string {
  const date = new Date(at);
  const two = (number: number) => String(number).padStart(2, '0');
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${day}T${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** The day alone. */
export function today(at: number): string {
  return clockTime(at).slice(0, 10);
}

/** The entries of a pour, each linked to those before it. */
export function lotOf(
  card: CardAnswer,
  outcome: Outcome,
  seen: Seen,
  now: number,
  newId: () => string,
): Lot {
  const lot: Lot = [];
  const add = (table: string, says: Record<string, string>): string => {
    const id = newId();
    lot.push({ table, id, says: filled(says) });
    return id;
  };
  const mould = add('moulds', { ...card.lot.mould, castings: String(outcome.castings) });
  for (const figure of card.lot.planned) add('planned', { ...figure, mould });
  const heat = add('heats', card.lot.heat);
  const pour = add('pours', {
    ...card.lot.pour,
    heat,
    mould,
    poured: clockTime(seen.poured ?? now),
    temperature: outcome.temperature,
    time: seen.filledS === undefined ? '' : `${seen.filledS.toFixed(1)} s`,
    mass: outcome.mass,
    opening: seen.openedMin === undefined ? '' : `${seen.openedMin.toFixed(1)} min`,
    how: outcome.how,
  });
  for (let at = 0; at < outcome.castings; at += 1) {
    const good = at < outcome.good;
    const casting = add('castings', { ...card.lot.casting, pour, good: good ? 'yes' : 'no' });
    if (!good && outcome.looks.length > 0) {
      add('defects', { casting, look: outcome.looks.join(' ') });
    }
  }
  return lot;
}

/** Without what was left empty: an empty place is a value that was not given. */
function filled(says: Record<string, string>): Record<string, string> {
  return Object.fromEntries(Object.entries(says).filter(([, text]) => text.trim() !== ''));
}
