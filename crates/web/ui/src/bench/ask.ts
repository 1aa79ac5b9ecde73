/** What the bench card asks the server, and what it has to go on with where there is none. */
import type { CardAnswer, CardsAnswer, ToldAnswer } from '../answers';
import { recall, remember } from './store';

/** The server does not answer. */
export class Gone extends Error {}

/** This phone is not paired, or not any more. */
export class Unpaired extends Error {}

/** The server said no, in words. */
export class Refused extends Error {}

const ROOT = '/api/v1';

/** How long an answer is waited for, ms: beyond, a kept card is of more use than a fresh one. */
const PATIENCE_MS = 8000;

/** Cards as they were answered, or as they were kept. */
export interface Held<T> {
  value: T;
  fresh: boolean;
}

/** Words, jobs, tests and mixes. */
export const cards = () => held<CardsAnswer>('cards', '/cards');

/** The card of a job. */
export const card = (job: string) =>
  held<CardAnswer>(`card ${job}`, `/jobs/${encodeURIComponent(job)}/card`);

/** The weight at which to stop drying. */
export function stopWeight(given: Record<string, string>): Promise<ToldAnswer> {
  return asked('/bench/dry', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ mix: null, given }),
  });
}

/** Fresh where the server answers, else what was kept of it last; a no of the server stands. */
async function held<T>(name: string, way: string): Promise<Held<T>> {
  try {
    const value = await asked<T>(way);
    await remember(name, value);
    return { value, fresh: true };
  } catch (error) {
    if (error instanceof Refused) throw error;
    const value = await recall<T>(name);
    if (value === undefined) throw error;
    return { value, fresh: false };
  }
}

async function asked<T>(way: string, how: RequestInit = {}): Promise<T> {
  let answer: Response;
  try {
    answer = await fetch(ROOT + way, { ...how, signal: AbortSignal.timeout(PATIENCE_MS) });
    if (answer.ok) return (await answer.json()) as T;
  } catch (error) {
    throw new Gone(String(error));
  }
  const said = await answer.text();
  if (answer.status === 401) throw new Unpaired(said);
  if (answer.status >= 500) throw new Gone(said);
  throw new Refused(wordsOf(said));
}

/** The words of a no. */
function wordsOf(said: string): string {
  try {
    const no = JSON.parse(said) as { message: string; hint: string | null };
    return `${no.message} ${no.hint ?? ''}`.trim();
  } catch {
    return said;
  }
}
