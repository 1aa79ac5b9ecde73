/**
 * A piece of the mould that can be cut: its skin, its edges, and a flat cap where the plane cuts
 * it. The cap is drawn where, looking through, one has entered the solid and not yet left it: back
 * faces behind the plane count up in the stencil, front faces count down.
 */
import {
  AlwaysStencilFunc,
  BackSide,
  BufferAttribute,
  BufferGeometry,
  DecrementWrapStencilOp,
  DoubleSide,
  FrontSide,
  Group,
  IncrementWrapStencilOp,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  NotEqualStencilFunc,
  type Plane,
  PlaneGeometry,
  ReplaceStencilOp,
  type Side,
  type StencilOp,
} from 'three';
import { sharpEdges } from './edges';
import { outline, type Upright } from './section';
import type { Piece } from './solids';
import { hatching, INK, type Tone, TONES } from './tones';

/** A piece in the picture. */
export interface CutPiece {
  piece: Piece;
  /** Everything of it; moved as one. */
  group: Group;
  skin: Mesh;
  /** What is drawn with it and is not itself: edges, counting faces and the cap. */
  rest: Group;
  cap: Mesh;
  /** The outline of what is cut. */
  outline: LineSegments;
}

/** Most facets of a piece whose edges are drawn: more take a second and longer to find. */
const MOST_EDGED = 200_000;

/** Sharper than this an edge is drawn, degrees: the facets of a round stay without. */
const SHARP = 32;

/** Hatching tiles along the mould. */
const TILES = 28;

/** Skins are drawn after all caps. */
export const AFTER_CAPS = 10_000;

/** Faces stand back a hair, so that lines on them are whole. */
export const BEHIND_LINES = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 };

/** Puts a piece together; `size` is that of the mould, mm, `at` its place in the row of pieces. */
export function cutPiece(
  piece: Piece,
  plane: Plane,
  size: number,
  at: number,
  tone: Tone = TONES[piece.kind],
): CutPiece {
  const shape = new BufferGeometry();
  shape.setAttribute('position', new BufferAttribute(piece.points, 3));
  shape.setIndex(new BufferAttribute(piece.facets, 1));
  const skin = new Mesh(
    shape,
    new MeshLambertMaterial({
      color: tone.skin,
      flatShading: true,
      clippingPlanes: [plane],
      ...BEHIND_LINES,
    }),
  );
  skin.renderOrder = AFTER_CAPS;
  const cap = capOf(tone, size, at);
  const cutLines = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ color: INK }));
  cutLines.renderOrder = AFTER_CAPS + 1;
  const rest = new Group();
  rest.add(
    cutLines,
    counting(shape, plane, BackSide, IncrementWrapStencilOp, at),
    counting(shape, plane, FrontSide, DecrementWrapStencilOp, at),
    cap,
  );
  if (piece.facets.length / 3 < MOST_EDGED) rest.add(edges(piece, plane));
  const group = new Group();
  group.add(skin, rest);
  return { piece, group, skin, rest, cap, outline: cutLines };
}

/** Draws the outline of what an upright plane cuts. */
export function drawOutline({ piece, outline: lines }: CutPiece, plane: Upright): void {
  const ends = new Float32Array(outline(piece.points, piece.facets, plane));
  lines.geometry.dispose();
  lines.geometry = new BufferGeometry();
  lines.geometry.setAttribute('position', new BufferAttribute(ends, 3));
}

/** Gives back what a piece holds on the graphics card. */
export function letGo({ group }: CutPiece): void {
  group.traverse((thing) => {
    if (!(thing instanceof Mesh || thing instanceof LineSegments)) return;
    thing.geometry.dispose();
    const material = thing.material as MeshBasicMaterial;
    material.map?.dispose();
    material.dispose();
  });
}

function counting(
  shape: BufferGeometry,
  plane: Plane,
  side: Side,
  count: StencilOp,
  at: number,
): Mesh {
  const faces = new Mesh(
    shape,
    new MeshBasicMaterial({
      side,
      depthWrite: false,
      depthTest: false,
      colorWrite: false,
      clippingPlanes: [plane],
      stencilWrite: true,
      stencilFunc: AlwaysStencilFunc,
      stencilFail: count,
      stencilZFail: count,
      stencilZPass: count,
    }),
  );
  faces.renderOrder = at + 0.1;
  return faces;
}

function capOf(tone: Tone, size: number, at: number): Mesh {
  const map = hatching(tone);
  // Four times the mould: a cap reaches past its piece wherever the plane stands.
  map.repeat.set(4 * TILES, 4 * TILES);
  const cap = new Mesh(
    new PlaneGeometry(4 * size, 4 * size),
    new MeshBasicMaterial({
      map,
      side: DoubleSide,
      ...BEHIND_LINES,
      stencilWrite: true,
      stencilRef: 0,
      stencilFunc: NotEqualStencilFunc,
      stencilFail: ReplaceStencilOp,
      stencilZFail: ReplaceStencilOp,
      stencilZPass: ReplaceStencilOp,
    }),
  );
  cap.renderOrder = at + 0.2;
  cap.onAfterRender = (renderer) => renderer.clearStencil();
  return cap;
}

function edges({ points, facets }: Piece, plane: Plane): LineSegments {
  const drawn = new Float32Array(sharpEdges(points, facets, SHARP));
  const ends = new BufferGeometry();
  ends.setAttribute('position', new BufferAttribute(drawn, 3));
  const ink = new LineBasicMaterial({ color: INK, clippingPlanes: [plane] });
  const lines = new LineSegments(ends, ink);
  lines.renderOrder = AFTER_CAPS + 1;
  return lines;
}
