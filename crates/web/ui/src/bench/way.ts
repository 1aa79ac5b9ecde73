/** The address of the bench card: the job it is of, and the screen. */

export type Screen = 'heap' | 'jobs' | 'weigh' | 'test' | 'ready' | 'pour' | 'out';

const SCREENS: Screen[] = ['heap', 'jobs', 'weigh', 'test', 'ready', 'pour', 'out'];

/** The address of a job's card; a dot is written out, since an address with one is a file. */
export function wayTo(job: string): string {
  return `/bench/${encodeURIComponent(job).replaceAll('.', '%2E')}`;
}

/** The job of an address; none where it names none. */
export function jobOf(path: string): string | null {
  const way = /^\/bench\/(.+)$/.exec(path)?.[1];
  try {
    return way === undefined ? null : decodeURIComponent(way);
  } catch {
    return null;
  }
}

/** The screen of an address: the heap where it names none. */
export function screenOf(hash: string): Screen {
  return SCREENS.find((screen) => `#${screen}` === hash) ?? 'heap';
}
