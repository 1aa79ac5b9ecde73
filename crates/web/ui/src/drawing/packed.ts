/** Raw numbers behind a head, as the server sends them: its length, the head as JSON, the numbers. */

/** Bytes of a number. */
export const WORD = 4;

/** Reads the head; the numbers begin at `start`. `what` is told where there is none. */
export function readHead<T>(bytes: ArrayBuffer, what: string): { head: T; start: number } {
  const length = bytes.byteLength >= WORD ? new DataView(bytes).getUint32(0, true) : 0;
  const start = WORD + length;
  if (length === 0 || length % WORD !== 0 || start > bytes.byteLength) {
    throw new Error(`${what} came without their head`);
  }
  const text = new TextDecoder().decode(new Uint8Array(bytes, WORD, length));
  return { head: JSON.parse(text) as T, start };
}

/** Throws unless there are just so many bytes. */
export function wholly(bytes: ArrayBuffer, wanted: number, what: string): void {
  if (wanted === bytes.byteLength) return;
  throw new Error(`${what} have ${bytes.byteLength} bytes in place of ${wanted}`);
}
