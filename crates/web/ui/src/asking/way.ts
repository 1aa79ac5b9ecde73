/** The address of the page and the job that it stands for. */

/** The address of a job's sheet; a dot is written out, since an address with one is a file. */
export function addressOf(job: string): string {
  return `/job/${encodeURIComponent(job).replaceAll('.', '%2E')}`;
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
