/** What is typed, as the file has it and as it stands in a field. */
import type { Kind, Typed } from '../answers';

/** Between several places on one line. */
const BETWEEN = '; ';

/** As it stands in a field; nothing where it is left to the program. */
export function asText(value: Typed): string {
  if (value === null) return '';
  if (Array.isArray(value)) return value.join(BETWEEN);
  return String(value);
}

/**
 * As the file has it. Nothing typed leaves it to the program; a count that is no whole number is
 * sent as typed, for the server to say what is wrong with it.
 */
export function asTyped(text: string, kind: Kind): Typed {
  const plain = text.trim();
  if (plain === '') return null;
  if (kind === 'places') {
    return plain
      .split(';')
      .map((place) => place.trim())
      .filter((place) => place !== '');
  }
  return kind === 'count' && /^\d{1,9}$/.test(plain) ? Number(plain) : plain;
}

/** Whether the same word is meant: capitals do not count in the file either. */
export function sameWord(one: Typed, other: Typed): boolean {
  const small = (value: Typed) => (typeof value === 'string' ? value.toLowerCase() : value);
  return same(small(one), small(other));
}

/** Whether the same thing is typed. */
export function same(one: Typed, other: Typed): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
