/** Which numbers of a map are written over its picture. */

/** A number that might be written: where, in pixels, its value, and whether it was marked. */
export interface Offered {
  x: number;
  y: number;
  value: number;
  marked: boolean;
}

/** Pixels that a number keeps free around its middle. */
const ROOM = { wide: 34, tall: 18 };

/** A marked place is seen where the value there is as near as this share of the scale. */
const NEAR_MARK = 0.06;

/** A line is seen where the value there is as near as this share of the scale. */
const NEAR_LINE = 0.02;

/**
 * The numbers that are seen and have room: where something else lies before a place, the value
 * that is seen there is another. Marked places come first.
 */
export function written(
  offered: readonly Offered[],
  seen: (x: number, y: number) => number | null,
  range: number,
): Offered[] {
  const kept: Offered[] = [];
  const inOrder = [...offered].sort((one, other) => Number(other.marked) - Number(one.marked));
  for (const one of inOrder) {
    const value = seen(one.x, one.y);
    const near = range * (one.marked ? NEAR_MARK : NEAR_LINE);
    if (value === null || Math.abs(value - one.value) > near) continue;
    const free = kept.every(
      (other) =>
        Math.abs(other.x - one.x) >= ROOM.wide || Math.abs(other.y - one.y) >= ROOM.tall,
    );
    if (free) kept.push(one);
  }
  return kept;
}
