/** The address of the page and the job that it stands for. */

/** The address of a job's sheet; a dot is written out, since an address with one is a file. */
export function addressOf(job: string): string {
  return `/job/${encodeURIComponent(job).replaceAll('.', '%2E')}`;
}

/** The address of what to weigh out for a job's melt. */
export function meltOf(job: string): string {
  return addressOf(job).replace('/job/', '/melt/');
}

/** The address of an experiment. */
export function trialOf(way: string): string {
  return addressOf(way).replace('/job/', '/experiment/');
}

/** The experiment that an address stands for. */
export function trialAt(path: string): string | null {
  return path.startsWith('/experiment/') ? jobAt(path.replace('/experiment/', '/job/')) : null;
}

/** The address of the log, where the pour of a job is written down. */
export function logOf(job: string): string {
  return addressOf(job).replace('/job/', '/log/');
}

/** The job whose pour an address of the log stands for; no name where it is chosen there. */
export function logAt(path: string): string | null {
  if (path === '/log') return '';
  return path.startsWith('/log/') ? jobAt(path.replace('/log/', '/job/')) : null;
}

/** The address of a job's bench card on this machine: a page of its own, not one of these. */
export function benchOf(job: string): string {
  return addressOf(job).replace('/job/', '/bench/');
}

/** The address of a job as a lesson. */
export function lessonOf(job: string): string {
  return addressOf(job).replace('/job/', '/lesson/');
}

/** The job whose lesson an address stands for. */
export function lessonAt(path: string): string | null {
  return path.startsWith('/lesson/') ? jobAt(path.replace('/lesson/', '/job/')) : null;
}

/** The address of a word in the glossary. */
export function glossaryOf(word: string): string {
  return addressOf(word).replace('/job/', '/glossary/');
}

/** The word of the glossary that an address stands for; an empty one where it is all of it. */
export function wordAt(path: string): string | null {
  if (path === '/glossary') return '';
  return path.startsWith('/glossary/') ? jobAt(path.replace('/glossary/', '/job/')) : null;
}

/** Whether an address is one of ours. */
export function isOurs(path: string): boolean {
  return /^\/($|(job|melt|lesson|experiment|log|glossary)\/|(sand|shop|experiments|log|glossary)$)/.test(path);
}

/** The job whose melt an address stands for. */
export function meltAt(path: string): string | null {
  return path.startsWith('/melt/') ? jobAt(path.replace('/melt/', '/job/')) : null;
}

/** The job of an address; none on the first page, and on one that is no address of ours. */
export function jobAt(path: string): string | null {
  const way = /^\/job\/(.+)$/.exec(path)?.[1];
  if (way === undefined) return null;
  try {
    return decodeURIComponent(way);
  } catch {
    return null;
  }
}
