import { expect, test } from 'vitest';
import { isInTheWay, liftOut } from '../../src/drawing/apart';
import { tones, valueText } from '../../src/drawing/bands';
import { sharpEdges } from '../../src/drawing/edges';
import { cutOf, valueNear } from '../../src/drawing/field';
import { moved, onDrawing, onJoint, typedWith } from '../../src/drawing/handle';
import { isolines } from '../../src/drawing/isolines';
import { type Field, readMap } from '../../src/drawing/map';
import { written } from '../../src/drawing/numbers';
import type { Piece } from '../../src/drawing/solids';
import { leftText } from '../../src/working/runs.svelte';

const head = { tells: '', unit: 'mm', low: 0, high: 4, beyond: false, lines: [1, 2, 3], marks: [] };

/** Bytes as the server packs them. */
function packed(more: object, numbers: ArrayBufferView[]): ArrayBuffer {
  const text = JSON.stringify({ ...head, ...more });
  const padded = text.padEnd(Math.ceil(text.length / 4) * 4);
  const parts = [new Uint32Array([padded.length]), new TextEncoder().encode(padded), ...numbers];
  const whole = parts.reduce((sum, part) => sum + part.byteLength, 0);
  const bytes = new Uint8Array(whole);
  let at = 0;
  for (const part of parts) {
    bytes.set(new Uint8Array(part.buffer, part.byteOffset, part.byteLength), at);
    at += part.byteLength;
  }
  return bytes.buffer;
}

test('a map is read as it was packed, and a short one is refused', () => {
  const skin = { points: 3, facets: 1 };
  const field = { count: [2, 1, 1], origin_mm: [0, 0, 0], size_mm: 2 };
  const points = new Float32Array([0, 0, 0, 1, 0, 0, 0, 1, 0]);
  const numbers = [points, new Uint32Array([0, 1, 2]), new Float32Array([1, 2, NaN])];
  const map = readMap(packed({ skin, field }, [...numbers, new Float32Array([5, 6])]));
  expect([...(map.skin?.facets ?? [])]).toEqual([0, 1, 2]);
  expect([...(map.skin?.values ?? [])]).toEqual([1, 2, NaN]);
  expect([...(map.field?.values ?? [])]).toEqual([5, 6]);
  expect(() => readMap(packed({ skin, field }, numbers))).toThrow(/bytes/);
  expect(() => readMap(new ArrayBuffer(3))).toThrow(/head/);
});

test('tones grow darker from band to band', () => {
  const light = tones(6).map(([red, green, blue]) => 0.2126 * red + 0.7152 * green + 0.0722 * blue);
  expect(light).toEqual([...light].sort((one, other) => other - one));
  expect(valueText(2.4567, 'en')).toBe('2.46');
});

test('a line of equal value crosses a facet where the value lies', () => {
  // The value is x: the line of 1 runs across at x = 1.
  const corners = [0, 0, 0, 4, 0, 0, 0, 4, 0];
  const { ends, numbers } = isolines(corners, [0, 4, 0], [1], 0.1);
  expect(ends).toHaveLength(6);
  expect([ends[0], ends[3]]).toEqual([1, 1]);
  expect(numbers).toHaveLength(1);
  expect(isolines(corners, [0, NaN, 0], [1], 0.1).ends).toEqual([]);
  expect(isolines(corners, [5, 6, 7], [1], 0.1).ends).toEqual([]);
});

test('a field is read at its nearest cell and cut between its layers', () => {
  const values = new Float32Array(27).map((_, at) => Math.floor(at / 3) % 3);
  const field: Field = { count: [3, 3, 3], origin_mm: [0, 0, 0], size_mm: 2, values };
  expect(valueNear(field, [1, 3, 1])).toBe(1);
  expect(valueNear(field, [7, 5, 1])).toBe(2);
  expect(valueNear(field, [99, 5, 1])).toBe(NaN);
  // Half way between the layers of 0 and 1.
  const cut = cutOf(field, { axis: 1, at: 2 });
  expect(Math.min(...cut.values)).toBeCloseTo(0.5);
  expect(Math.max(...cut.values)).toBeCloseTo(0.5);
  expect(cut.corners[1]).toBe(2);
});

test('numbers stand where their value is seen and none on another', () => {
  const one = { x: 10, y: 10, value: 2, marked: false };
  const close = { x: 20, y: 12, value: 2, marked: true };
  const hidden = { x: 90, y: 90, value: 3, marked: false };
  const seen = (x: number) => (x < 50 ? 2 : 1);
  expect(written([one, close, hidden], seen, 4)).toEqual([close]);
  expect(written([one, hidden], () => null, 4)).toEqual([]);
});

test('the edges of a box are its twelve', () => {
  const corner = (at: number) => [at & 1, (at >> 1) & 1, (at >> 2) & 1];
  const points = new Float32Array(Array.from({ length: 8 }, (_, at) => corner(at)).flat());
  const sides = [
    [0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5],
  ];
  const facets = sides.flatMap(([a = 0, b = 0, c = 0, d = 0]) => [a, b, c, a, c, d]);
  expect(sharpEdges(points, new Uint32Array(facets), 32)).toHaveLength(12 * 6);
});

test('a place is found on the drawing, and a move over it is one on the joint', () => {
  const plan = { corner_mm: [15, 80], size_mm: [180, 90], smaller: 2.5, inside_mm: [250, 200] };
  const stands = onDrawing(plan, [100, 50]);
  expect(stands.left).toBeCloseTo((15 + 40 + 9) / 198);
  expect(stands.top).toBeCloseTo(60 / 90);
  const [right, up] = onJoint(plan, 40 / 198, -20 / 90);
  expect([right, up]).toEqual([expect.closeTo(100), expect.closeTo(50)]);
  expect(moved(plan, [240.4, 10], [100, -50])).toEqual([250, 0]);
  const handle = (key: string, text: string) => ({ key, label: text, at_mm: [0, 0], text });
  const all = [handle('gates', '1, 2'), handle('gates', '3.5, 4'), handle('feeders', '9, 9')];
  expect(typedWith(all, all[0]!, [7, 8])).toEqual(['7, 8', '3.5, 4']);
});

test('the cope goes first, then the pattern, and what is cast later is not there', () => {
  const piece = (kind: Piece['kind'], name: string = kind): Piece => ({
    name, label: name, kind, points: new Float32Array(), facets: new Uint32Array(),
  });
  expect(liftOut(piece('cope'), 0.2)).toBeGreaterThan(0);
  expect(liftOut(piece('casting'), 0.4)).toBe(0);
  expect(liftOut(piece('casting'), 1)).toBeGreaterThan(0);
  expect(liftOut(piece('drag'), 1)).toBe(0);
  const seen = [piece('core'), piece('rigging'), piece('rigging', 'vents')].map(isInTheWay);
  expect(seen).toEqual([false, false, true]);
});

test('time that is left is told in seconds, then in minutes', () => {
  expect(leftText(42, 'en')).toBe('42 sec');
  expect(leftText(240, 'en')).toBe('4 min');
});
