/**
 * Tones of a map: one warm hue from light to dark, a step for each band between two lines, so that
 * neighbours differ in print without colour as well.
 */

/** Lightest, middle and darkest tone, red green blue from 0 to 1. */
const ENDS = [
  [0.973, 0.929, 0.871],
  [0.757, 0.494, 0.302],
  [0.208, 0.086, 0.031],
] as const;

/** Tone where there is no value: the paper. */
export const NO_VALUE = [0.988, 0.984, 0.969] as const;

/** Most lines that a map may have. */
export const MOST_LINES = 9;

/** The tones of so many bands, the lightest first. */
export function tones(bands: number): [number, number, number][] {
  return Array.from({ length: bands }, (_, band) => {
    const along = bands > 1 ? (2 * band) / (bands - 1) : 1;
    const from = ENDS[along < 1 ? 0 : 1];
    const to = ENDS[along < 1 ? 1 : 2];
    const share = along < 1 ? along : along - 1;
    const mix = (one: number) => (from[one] ?? 0) + share * ((to[one] ?? 0) - (from[one] ?? 0));
    return [mix(0), mix(1), mix(2)];
  });
}

/** A tone as the page writes it. */
export function asColour(tone: readonly number[]): string {
  return `rgb(${tone.map((part) => Math.round(255 * part)).join(' ')})`;
}

/** A value of a map in the numbers of a language: what a line says, or a place. */
export function valueText(value: number, language: string): string {
  const digits = new Intl.NumberFormat(language, { maximumSignificantDigits: 3 });
  return digits.format(value);
}
