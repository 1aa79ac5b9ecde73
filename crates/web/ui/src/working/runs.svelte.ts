/** Longer work on the server: told by it as it goes on, for as long as somebody looks. */
import type { Run } from '../answers';
import { runEvents } from '../asking/ask';

let known = $state.raw<Run[]>([]);
let source: EventSource | null = null;
let looking = 0;

/** All runs since the program was started. */
export function runs(): Run[] {
  return known;
}

/** The last run of a job that does this. */
export function runOf(job: string, of: Run['of']): Run | undefined {
  return known.find((run) => run.job === job && run.of === of);
}

/** Whether a run is not over yet. */
export function isGoing(run: Run | undefined): boolean {
  return run?.state === 'waits' || run?.state === 'under-way';
}

/** Looks on until the function that is given back is called. */
export function lookOn(): () => void {
  looking += 1;
  if (!source) {
    source = runEvents();
    // A browser that loses the server tries again by itself.
    source.onmessage = (told: MessageEvent<string>) => {
      known = JSON.parse(told.data) as Run[];
    };
  }
  return () => {
    looking -= 1;
    if (looking > 0) return;
    source?.close();
    source = null;
  };
}

/** A run that was just begun, before the server has told of it. */
export function begun(run: Run): void {
  known = [...known.filter((other) => other.job !== run.job || other.of !== run.of), run];
}

/** Seconds in words: whole minutes above two. */
export function leftText(seconds: number, language: string): string {
  const minutes = seconds >= 120;
  return new Intl.NumberFormat(language, {
    style: 'unit',
    unit: minutes ? 'minute' : 'second',
    maximumFractionDigits: 0,
  }).format(minutes ? seconds / 60 : Math.max(1, seconds));
}
