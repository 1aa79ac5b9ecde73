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

/** How long an answer is waited for, ms: the hardest plan takes a tenth of it on a small laptop. */
const PATIENCE_MS = 60_000;

/** Words, jobs, tests and mixes. */
export const cards = () => keptFresh<CardsAnswer>('cards', '/cards');

/** The card of a job. */
export const card = (job: string) => keptFresh<CardAnswer>(nameOf(job), wayOf(job));

/** The same as they were kept last. */
export const keptCards = () => recall<CardsAnswer>('cards');
export const keptCard = (job: string) => recall<CardAnswer>(nameOf(job));

const nameOf = (job: string) => `card ${job}`;
const wayOf = (job: string) => `/jobs/${encodeURIComponent(job)}/card`;

/** The weight at which to stop drying. */
export function stopWeight(given: Record<string, string>): Promise<ToldAnswer> {
  return asked('/bench/dry', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ mix: null, given }),
  });
}

/** What the server answers, kept for when it does not. */
async function keptFresh<T>(name: string, way: string): Promise<T> {
  const value = await asked<T>(way);
  await remember(name, value);
  return value;
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
