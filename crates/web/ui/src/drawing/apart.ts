/** How far each piece is lifted when the mould is taken apart, from the drag upward. */
import { boxOf, type Piece } from './solids';

/** What is lifted together, from the bottom up. */
const ORDER = [['drag'], ['casting', 'rigging'], ['core'], ['cope']] as const;

/** Air between what is lifted apart, as a share of the height of the closed mould. */
const AIR = 0.25;

/** Lift of each piece with the mould wholly apart, mm, in the order of the pieces. */
export function lifts(pieces: Piece[]): number[] {
  const boxes = pieces.map((piece) => boxOf(piece.points));
  const bottom = Math.min(...boxes.map(([low]) => low[2] ?? 0));
  const top = Math.max(...boxes.map(([, high]) => high[2] ?? 0));
  const lifted = pieces.map(() => 0);
  let free = bottom;
  for (const kinds of ORDER) {
    const layer = pieces.flatMap((piece, at) => (isOf(piece, kinds) ? [at] : []));
    if (layer.length === 0) continue;
    const low = Math.min(...layer.map((at) => boxes[at]?.[0][2] ?? 0));
    const high = Math.max(...layer.map((at) => boxes[at]?.[1][2] ?? 0));
    const lift = Math.max(0, free - low);
    for (const at of layer) lifted[at] = lift;
    free = Math.max(free, high + lift) + AIR * (top - bottom);
  }
  return lifted;
}

// Vents are air in the cope, and leave with it.
function isOf(piece: Piece, kinds: readonly string[]): boolean {
  return kinds.includes(piece.name === 'vents' ? 'cope' : piece.kind);
}
