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

/** Share of the draw in which the cope is lifted; the rest is the pattern's. */
const COPE_FIRST = 0.45;

/** How far the cope, and then the pattern, are lifted in heights of the mould. */
const LIFTED = { cope: 1.25, casting: 0.55 };

/** Lift of a piece while the pattern is drawn, in heights of the mould; `out` goes from 0 to 1. */
export function liftOut(piece: Piece, out: number): number {
  if (isOf(piece, ['cope'])) return LIFTED.cope * Math.min(1, out / COPE_FIRST);
  if (!isOf(piece, ['casting'])) return 0;
  return LIFTED.casting * Math.max(0, (out - COPE_FIRST) / (1 - COPE_FIRST));
}

/** Whether a piece is there while the pattern is drawn: metal and cores come later. */
export function isInTheWay(piece: Piece): boolean {
  return isOf(piece, ['cope', 'drag', 'casting']);
}
