import { expect, test } from 'vitest';
import { lifts } from '../../src/drawing/apart';
import { outline } from '../../src/drawing/section';
import { boxOf, type Piece, readSolids } from '../../src/drawing/solids';

/** Corners and facets of a box, wound outward. */
function boxed(low: number[], high: number[]): { points: number[]; facets: number[] } {
  const points = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((corner) =>
    [0, 1, 2].map((axis) => ((corner >> axis) & 1 ? high : low)[axis] ?? 0),
  );
  const sides = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const facets = sides.flatMap(([a, b, c, d]) => [a, b, c, a, c, d] as number[]);
  return { points, facets };
}

/** Bytes as the server packs them. */
function packed(pieces: { name: string; kind: string; points: number[]; facets: number[] }[]) {
  const heads = pieces.map(({ name, kind, points, facets }) => ({
    name,
    label: `the ${name}`,
    kind,
    points: points.length / 3,
    facets: facets.length / 3,
  }));
  let head = JSON.stringify({ pieces: heads });
  head = head.padEnd(Math.ceil(head.length / 4) * 4);
  const numbers = pieces.reduce((sum, one) => sum + one.points.length + one.facets.length, 0);
  const bytes = new ArrayBuffer(4 + head.length + 4 * numbers);
  const view = new DataView(bytes);
  view.setUint32(0, head.length, true);
  new Uint8Array(bytes, 4).set(new TextEncoder().encode(head));
  let at = 4 + head.length;
  for (const { points, facets } of pieces) {
    for (const mm of points) view.setFloat32((at += 4) - 4, mm, true);
    for (const corner of facets) view.setUint32((at += 4) - 4, corner, true);
  }
  return bytes;
}

const piece = (kind: string, low: number, high: number, name = kind) => ({
  name,
  kind,
  ...boxed([0, 0, low], [100, 50, high]),
});

test('pieces come out as they were packed', () => {
  const drag = piece('drag', -40, 0);
  const cope = piece('cope', 0, 60);
  const read = readSolids(packed([drag, cope]));
  expect(read.map(({ label, kind }) => [label, kind])).toEqual([
    ['the drag', 'drag'],
    ['the cope', 'cope'],
  ]);
  expect([...(read[1]?.points ?? [])]).toEqual(cope.points);
  expect([...(read[0]?.facets ?? [])]).toEqual(drag.facets);
  expect(boxOf(read[0]?.points ?? new Float32Array())).toEqual([
    [0, 0, -40],
    [100, 50, 0],
  ]);
});

test('bytes that were cut short, or have something left over, are told', () => {
  const bytes = packed([piece('drag', -40, 0)]);
  expect(() => readSolids(bytes.slice(0, -4))).toThrow(/in place of/);
  expect(() => readSolids(new ArrayBuffer(2))).toThrow(/head/);
  expect(() => readSolids(new ArrayBuffer(64))).toThrow(/head/);
  const longer = new Uint8Array(bytes.byteLength + 4);
  longer.set(new Uint8Array(bytes));
  expect(() => readSolids(longer.buffer)).toThrow(/in place of/);
});

test('taken apart, nothing of one layer stands as high as the next begins', () => {
  const pieces = readSolids(
    packed([
      piece('casting', -20, 15, 'casting-1'),
      piece('rigging', -10, 60, 'sprue'),
      piece('core', -5, 5, 'core-eye'),
      piece('rigging', 30, 60, 'vents'),
      piece('cope', 0, 60),
      piece('drag', -40, 0),
    ]),
  );
  const lifted = lifts(pieces);
  const low = (at: number) => (boxOf((pieces[at] as Piece).points)[0][2] ?? 0) + (lifted[at] ?? 0);
  const high = (at: number) => (boxOf((pieces[at] as Piece).points)[1][2] ?? 0) + (lifted[at] ?? 0);
  expect(lifted[5]).toBe(0);
  expect(low(0)).toBeGreaterThan(high(5));
  expect(lifted[1]).toBe(lifted[0]);
  expect(low(2)).toBeGreaterThan(Math.max(high(0), high(1)));
  expect(low(4)).toBeGreaterThan(high(2));
  expect(lifted[3]).toBe(lifted[4]);
});

test('the outline of a cut box is as long as the way round its section', () => {
  const { points, facets } = boxed([0, 0, 0], [100, 50, 30]);
  const cut = (axis: 0 | 1 | 2, at: number) =>
    outline(new Float32Array(points), new Uint32Array(facets), { axis, at });
  expect(length(cut(1, 20))).toBeCloseTo(2 * (100 + 30), 4);
  expect(length(cut(0, 20))).toBeCloseTo(2 * (50 + 30), 4);
  // In a face of the box it is the outline of that face or nothing, never a part of it.
  expect(length(cut(2, 0))).toBeCloseTo(0, 4);
  expect(length(cut(2, 30))).toBeCloseTo(2 * (100 + 50), 4);
  expect(cut(1, 51)).toEqual([]);
});

function length(ends: number[]): number {
  let sum = 0;
  for (let at = 0; at + 5 < ends.length; at += 6) {
    const along = [0, 1, 2].map((axis) => (ends[at + 3 + axis] ?? 0) - (ends[at + axis] ?? 0));
    sum += Math.hypot(...along);
  }
  return sum;
}
