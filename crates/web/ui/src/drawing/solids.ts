/**
 * The solids of a mould as they are sent: the length of the head, the head as JSON, then for each
 * piece its points (32-bit floats, mm) and its facets (32-bit numbers of points), little-endian.
 */
import type { PieceHead, PieceKind, SolidsHead } from '../answers';
import { readHead, WORD, wholly } from './packed';

/** A piece of the mould. */
export interface Piece {
  name: string;
  /** Its name in the language of the shop. */
  label: string;
  kind: PieceKind;
  /** x y z of each point, mm. */
  points: Float32Array;
  /** Three numbers of points for each facet. */
  facets: Uint32Array;
}

/** x y z, mm. */
export type Corner = [number, number, number];

/** Corners of a facet, and numbers of a point. */
const THREE = 3;

/** Reads the pieces; the arrays lie in the bytes themselves, nothing is copied. */
export function readSolids(bytes: ArrayBuffer): Piece[] {
  const what = 'the solids of the mould';
  const { head, start } = readHead<SolidsHead>(bytes, what);
  wholly(bytes, head.pieces.reduce((sum, piece) => sum + bytesOf(piece), start), what);
  let at = start;
  return head.pieces.map((piece) => {
    const points = new Float32Array(bytes, at, piece.points * THREE);
    at += points.byteLength;
    const facets = new Uint32Array(bytes, at, piece.facets * THREE);
    at += facets.byteLength;
    return { name: piece.name, label: piece.label, kind: piece.kind, points, facets };
  });
}

/** The box around points, mm: lowest and highest corner. */
export function boxOf(points: Float32Array): [Corner, Corner] {
  const low: Corner = [Infinity, Infinity, Infinity];
  const high: Corner = [-Infinity, -Infinity, -Infinity];
  points.forEach((mm, at) => {
    const axis = at % THREE;
    low[axis] = Math.min(low[axis] ?? mm, mm);
    high[axis] = Math.max(high[axis] ?? mm, mm);
  });
  return [low, high];
}

const bytesOf = (piece: PieceHead) => (piece.points + piece.facets) * THREE * WORD;
