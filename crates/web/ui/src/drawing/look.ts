/** Where the mould is looked at from. */

/** A place to look from: turned round the upright axis, tipped up, and how near. */
export interface Look {
  /** Angle round the upright axis, degrees. */
  turn: number;
  /** Angle above the level, degrees. */
  tip: number;
  /** How large the mould stands in the picture; 1 fills it. */
  near: number;
}

/** As the mould stands on a bench: from the front, a little from the right and from above. */
export const asOnBench: Look = { turn: -62, tip: 24, near: 1 };

/** A step of the keys and buttons, degrees. */
export const STEP = 15;

/** A step nearer. */
export const NEARER = 1.25;

/** Another look with something added, within what can be looked at. */
export function turned(look: Look, turn: number, tip: number): Look {
  return { ...look, turn: (look.turn + turn) % 360, tip: kept(look.tip + tip, -85, 90) };
}

/** A look from nearer, or from farther away below 1. */
export function nearer(look: Look, times: number): Look {
  return { ...look, near: kept(look.near * times, 0.4, 12) };
}

/** What a key does; nothing for one that is not ours. */
export function byKey(look: Look, key: string): Look | null {
  switch (key) {
    case 'ArrowLeft':
      return turned(look, -STEP, 0);
    case 'ArrowRight':
      return turned(look, STEP, 0);
    case 'ArrowUp':
      return turned(look, 0, STEP);
    case 'ArrowDown':
      return turned(look, 0, -STEP);
    case '+':
    case '=':
      return nearer(look, NEARER);
    case '-':
      return nearer(look, 1 / NEARER);
    case 'Home':
      return asOnBench;
    default:
      return null;
  }
}

const kept = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
