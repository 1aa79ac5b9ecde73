/** A map on a piece of the mould: its skin, its lines of equal value, and the face of the cut. */
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  KeepStencilOp,
  LineBasicMaterial,
  LineSegments,
  type Material,
  Mesh,
  NotEqualStencilFunc,
  type Plane,
  type ShaderMaterial,
} from 'three';
import { AFTER_CAPS, BEHIND_LINES, type CutPiece } from './cut_piece';
import { cutOf, valueNear } from './field';
import { isolines, type Numbered } from './isolines';
import type { DrawnMap, Field } from './map';
import { mapPaint, NOTHING } from './map_paint';
import type { Upright } from './section';
import { INK } from './tones';

/** A piece with a map on it. */
export interface PaintedPiece {
  cut: CutPiece;
  /** Paint of skin and face, told by turns what to show. */
  paints: ShaderMaterial[];
  /** Numbers on the skin. */
  numbers: Numbered[];
  /** Numbers on the face of the cut. */
  onFace: Numbered[];
  /** What the plane cuts of the field, and the lines on it. */
  face: { skin: Mesh; lines: LineSegments } | null;
}

/** Numbers of a line stand apart by this share of the mould. */
const APART = 1 / 16;

/** Drawn only where the piece is cut. */
const IN_THE_CUT = {
  stencilWrite: true,
  stencilRef: 0,
  stencilFunc: NotEqualStencilFunc,
  stencilFail: KeepStencilOp,
  stencilZFail: KeepStencilOp,
  stencilZPass: KeepStencilOp,
} as const;

/** Paints a piece; `at` is its place in the row of pieces, `size` that of the mould, mm. */
export function painted(
  cut: CutPiece,
  map: DrawnMap,
  plane: Plane,
  size: number,
  at: number,
): PaintedPiece {
  const corners = cornersOf(cut);
  const values = map.skin?.values ?? valuesOf(corners, map.field);
  const shape = new BufferGeometry();
  shape.setAttribute('position', new BufferAttribute(corners, 3));
  shape.setAttribute('value', new BufferAttribute(asPainted(values), 1));
  const paint = mapPaint(map.head, plane, BEHIND_LINES);
  cut.skin.geometry = shape;
  (cut.skin.material as Material).dispose();
  cut.skin.material = paint;
  const { ends, numbers } = isolines(corners, values, map.head.lines, size * APART);
  const onSkin = linesOf(ends, { clippingPlanes: [plane] });
  onSkin.renderOrder = AFTER_CAPS + 1;
  cut.rest.add(onSkin);
  const done: PaintedPiece = {
    cut,
    paints: [paint],
    numbers,
    onFace: [],
    face: null,
  };
  if (map.field) withFace(done, map, at);
  return done;
}

/** Draws the face of the cut anew. */
export function drawFace(piece: PaintedPiece, field: Field, map: DrawnMap, plane: Upright): void {
  if (!piece.face) return;
  const { skin, lines } = piece.face;
  const { corners, values } = cutOf(field, plane);
  const shape = new BufferGeometry();
  shape.setAttribute('position', new BufferAttribute(corners, 3));
  shape.setAttribute('value', new BufferAttribute(asPainted(values), 1));
  skin.geometry.dispose();
  skin.geometry = shape;
  const found = isolines(corners, values, map.head.lines, APART * spanOf(field));
  lines.geometry.dispose();
  lines.geometry = new BufferGeometry();
  lines.geometry.setAttribute('position', new BufferAttribute(new Float32Array(found.ends), 3));
  piece.onFace = found.numbers;
}

/** Tells the paint to show values to be read, or tones to be looked at. */
export function tellValues(piece: PaintedPiece, telling: boolean): void {
  for (const { uniforms } of piece.paints) if (uniforms.telling) uniforms.telling.value = telling;
  piece.cut.rest.traverse((thing) => {
    if (thing instanceof LineSegments) thing.visible = !telling;
  });
  piece.cut.cap.visible = !telling && !piece.face;
}

function withFace(done: PaintedPiece, map: DrawnMap, at: number): void {
  const paint = mapPaint(map.head, null, { ...BEHIND_LINES, ...IN_THE_CUT, side: DoubleSide });
  const face = new Mesh(new BufferGeometry(), paint);
  face.renderOrder = at + 0.3;
  face.frustumCulled = false;
  const lines = linesOf([], IN_THE_CUT);
  lines.renderOrder = at + 0.4;
  lines.onAfterRender = (renderer) => renderer.clearStencil();
  // What was cut is painted: the plain cap would lie over it, and count as nothing.
  done.cut.cap.visible = false;
  done.cut.rest.add(face, lines);
  done.face = { skin: face, lines };
  done.paints.push(paint);
}

function linesOf(ends: number[], more: object): LineSegments<BufferGeometry, LineBasicMaterial> {
  const shape = new BufferGeometry();
  shape.setAttribute('position', new BufferAttribute(new Float32Array(ends), 3));
  const lines = new LineSegments(shape, new LineBasicMaterial({ color: INK, ...more }));
  lines.frustumCulled = false;
  return lines;
}

/** Corners of all facets, nine numbers a facet. */
function cornersOf({ piece: { points, facets } }: CutPiece): Float32Array {
  const corners = new Float32Array(3 * facets.length);
  facets.forEach((point, at) => {
    for (let axis = 0; axis < 3; axis += 1) {
      corners[3 * at + axis] = points[3 * point + axis] ?? 0;
    }
  });
  return corners;
}

function valuesOf(corners: Float32Array, field: Field | null): Float32Array {
  const values = new Float32Array(corners.length / 3).fill(NaN);
  if (!field) return values;
  const known = new Map<string, number>();
  return values.map((_, at) => {
    const place = corners.subarray(3 * at, 3 * at + 3);
    const key = place.join(' ');
    const value = known.get(key) ?? valueNear(field, place);
    known.set(key, value);
    return value;
  });
}

/** Values for the graphics card: a facet with a corner that has none has none. */
function asPainted(values: Float32Array): Float32Array {
  return values.map((value, at) => {
    const facet = at - (at % 3);
    const whole = [0, 1, 2].every((corner) => !Number.isNaN(values[facet + corner] ?? NaN));
    return whole ? value : NOTHING;
  });
}

const spanOf = ({ count, size_mm }: Field) => size_mm * Math.hypot(...count);
