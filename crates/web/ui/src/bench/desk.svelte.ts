/** What stands on the bench card: cards, entries and how the server is, in one place. */
import type { CardAnswer, CardsAnswer } from '../answers';
import { card, cards, keptCard, keptCards, Refused, Unpaired } from './ask';
import { counted, type KeptEntry, type Lot, undoable } from './entries';
import { send } from './sending';
import { entries, keep, recall, remember, undoLast } from './store';
import { learn } from './words.svelte';

declare const __BUILD__: string;

/** How the server is, as far as is known. */
export type Line = 'unknown' | 'there' | 'gone' | 'unpaired';

/** Between two tries to send, ms. */
const AGAIN_MS = 15_000;

let all = $state.raw<CardsAnswer | null>(null);
let open = $state.raw<CardAnswer | null>(null);
let line = $state<Line>('unknown');
let no = $state('');
let onPhone = $state.raw<KeptEntry[]>([]);
let trouble = $state('');

/** What the page reads. */
export const desk = {
  get cards() {
    return all;
  },
  get card() {
    return open;
  },
  get line() {
    return line;
  },
  /** Why there is no card of the job. */
  get no() {
    return no;
  },
  /** Why something could not be kept on the phone. */
  get trouble() {
    return trouble;
  },
  get count() {
    return counted(onPhone);
  },
  /** Why the log refused entries, each reason once. */
  get refusals() {
    return [...new Set(onPhone.flatMap((entry) => (entry.why ? [entry.why] : [])))];
  },
  get canUndo() {
    return undoable(onPhone).length > 0;
  },
  /** Whether this page is of another program than the one that answers. */
  get stale() {
    return all !== null && line === 'there' && all.build !== '' && all.build !== __BUILD__;
  },
};

/** Shows what was kept, at once, and then what the server answers, where it does. */
export async function load(job: string | null): Promise<void> {
  if (open?.job !== job) {
    open = null;
    no = '';
  }
  await look();
  await showKept(job);
  try {
    show(await cards());
    line = 'there';
    if (job !== null) open = await card(job);
    no = '';
  } catch (error) {
    if (error instanceof Refused) no = error.message;
    else line = error instanceof Unpaired ? 'unpaired' : 'gone';
  }
}

async function showKept(job: string | null): Promise<void> {
  const kept = all ?? (await keptCards());
  if (kept) show(kept);
  if (job === null) return;
  open ??= (await keptCard(job)) ?? null;
  await remember('last job', job);
}

function show(cards: CardsAnswer): void {
  all = cards;
  learn(cards.words, cards.language);
}

/** The job that was open last. */
export const lastJob = () => recall<string>('last job');

/** Keeps a lot on the phone, at once; says whether it is on its disk. */
export async function write(lot: Lot): Promise<boolean> {
  try {
    await keep(lot, Date.now());
    trouble = '';
  } catch (error) {
    trouble = error instanceof Error ? error.message : String(error);
    return false;
  }
  await look();
  // Asked for once something is worth keeping; a no changes nothing.
  void navigator.storage?.persist?.();
  if (line !== 'there') void wakeLater();
  return true;
}

/** Undoes what was written last. */
export async function undo(): Promise<void> {
  await undoLast();
  await look();
}

/** Sends what is due, or all of it at once. */
export async function sendNow(hold?: number): Promise<void> {
  const went = await send(Date.now(), hold);
  await look();
  if (went === 'unpaired') line = 'unpaired';
  else if (went === 'gone') {
    line = 'gone';
    void wakeLater();
  } else if (line === 'gone') line = 'there';
}

/** Sends again and again: when the page is looked at, when the network is back, and now and then. */
export function keepSending(): () => void {
  const again = () => void sendNow().catch(() => undefined);
  const timer = setInterval(again, AGAIN_MS);
  const seen = () => document.visibilityState === 'visible' && again();
  window.addEventListener('online', again);
  document.addEventListener('visibilitychange', seen);
  again();
  return () => {
    clearInterval(timer);
    window.removeEventListener('online', again);
    document.removeEventListener('visibilitychange', seen);
  };
}

async function look(): Promise<void> {
  onPhone = await entries();
}

/** Lets the browser send later by itself, where it can. */
async function wakeLater(): Promise<void> {
  try {
    const worker = (await navigator.serviceWorker.ready) as ServiceWorkerRegistration & {
      sync?: { register(name: string): Promise<void> };
    };
    await worker.sync?.register('entries');
  } catch {
    // It is sent when the page is looked at again.
  }
}
