/** Lines of equal value over facets, and the places where their numbers may stand. */

/** A place with the value that is written there. */
export interface Numbered {
  at: [number, number, number];
  value: number;
  /** Marked on purpose, not one of many along a line. */
  marked: boolean;
}

/** Lines as pairs of ends, x y z, and their numbers. */
export interface Isolines {
  ends: number[];
  numbers: Numbered[];
}

/** Most numbers along lines: beyond, none of them is found again. */
const MOST = 600;

/**
 * Lines through facets whose corners stand in `corners` (nine numbers a facet) and have `values`
 * (three a facet); numbers stand no nearer to each other than `apart` along the lines of a value.
 */
export function isolines(
  corners: ArrayLike<number>,
  values: ArrayLike<number>,
  lines: readonly number[],
  apart: number,
): Isolines {
  const ends: number[] = [];
  const numbers: Numbered[] = [];
  for (const line of lines) {
    const own: Numbered[] = [];
    for (let facet = 0; 3 * facet + 2 < values.length; facet += 1) {
      const segment = crossed(corners, values, facet, line);
      if (!segment) continue;
      ends.push(...segment);
      const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = segment;
      const at: Numbered['at'] = [(a + d) / 2, (b + e) / 2, (c + f) / 2];
      if (numbers.length + own.length >= MOST) continue;
      if (own.every((other) => distance(other.at, at) >= apart)) {
        own.push({ at, value: line, marked: false });
      }
    }
    numbers.push(...own);
  }
  return { ends, numbers };
}

/** Both ends of a line through a facet; none where it does not cross it. */
function crossed(
  corners: ArrayLike<number>,
  values: ArrayLike<number>,
  facet: number,
  line: number,
): number[] | null {
  const found: number[] = [];
  for (let side = 0; side < 3; side += 1) {
    const [from, to] = [3 * facet + side, 3 * facet + ((side + 1) % 3)];
    const [low, high] = [values[from] ?? NaN, values[to] ?? NaN];
    if (Number.isNaN(low) || Number.isNaN(high)) return null;
    if (low < line === high < line) continue;
    const share = (line - low) / (high - low);
    for (let axis = 0; axis < 3; axis += 1) {
      const [start, end] = [corners[3 * from + axis] ?? 0, corners[3 * to + axis] ?? 0];
      found.push(start + share * (end - start));
    }
  }
  return found.length === 6 ? found : null;
}

const distance = (one: Numbered['at'], other: Numbered['at']) =>
  Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
