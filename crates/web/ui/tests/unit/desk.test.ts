import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Change, SheetAnswer, Typed, TypedLine } from '../../src/answers';
import { deskOf } from '../../src/sheet/desk.svelte';

/** What the invented server has in its file, and whether it answers. */
let count: Typed;
let answers: boolean;
let sent: Change[];

const line = (): TypedLine => ({
  key: 'part.count',
  label: 'castings',
  value: count,
  kind: 'count',
  choices: [],
  example: null,
  otherwise: null,
});

const sheet = (): SheetAnswer => ({
  job: 'a',
  name: 'A',
  language: 'en',
  code: null,
  red_lines: [],
  stops: [],
  head: [line()],
  blocks: [],
  remarks: [],
  limits: '',
  unsettled: null,
});

async function server(_way: string, how?: RequestInit): Promise<Response> {
  if (!answers) throw new TypeError('refused');
  if (how?.method !== 'PUT') return Response.json(sheet());
  const change = JSON.parse(String(how.body)) as Change;
  sent.push(change);
  if (change.was !== count) {
    return Response.json({ message: 'changed meanwhile', now: count }, { status: 409 });
  }
  if (typeof change.to === 'string') {
    return Response.json({ message: 'takes a whole number' }, { status: 422 });
  }
  count = change.to;
  return Response.json(sheet());
}

beforeEach(() => {
  count = 1;
  answers = true;
  sent = [];
  vi.useFakeTimers();
  vi.stubGlobal('fetch', server);
});

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A desk with its sheet on it. */
async function opened() {
  const desk = deskOf('a');
  await desk.load();
  return desk;
}

/** Lets every answer come in. */
const settled = () => vi.advanceTimersByTimeAsync(10);

test('a change goes out with what stood there, and comes back marked', async () => {
  const desk = await opened();
  expect(desk.marks.names).toEqual([]);
  desk.change('part.count', 1, 2);
  await settled();
  expect(sent).toEqual([{ key: 'part.count', was: 1, to: 2 }]);
  expect(desk.marks.names).toEqual(['castings']);
  expect([desk.canUndo, desk.canRedo]).toEqual([true, false]);
});

test('two changes in a row follow each other, and both are taken back', async () => {
  const desk = await opened();
  desk.change('part.count', 1, 2);
  desk.change('part.count', 1, 3);
  await settled();
  expect(sent.map(({ was, to }) => [was, to])).toEqual([
    [1, 2],
    [2, 3],
  ]);
  desk.takeBack();
  await settled();
  desk.takeBack();
  await settled();
  expect(count).toBe(1);
  desk.doAgain();
  await settled();
  expect(count).toBe(2);
});

test('a change that meets another asks, and puts ours in place when told to', async () => {
  const desk = await opened();
  count = 7;
  desk.change('part.count', 1, 2);
  await settled();
  expect(desk.merges).toEqual([{ key: 'part.count', mine: 2, theirs: 7 }]);
  expect(count).toBe(7);
  desk.useMine(desk.merges[0] ?? { key: '', mine: null, theirs: null });
  await settled();
  expect(count).toBe(2);
  expect(desk.merges).toEqual([]);
});

test('the other one is left standing when told to', async () => {
  const desk = await opened();
  count = 7;
  desk.change('part.count', 1, 2);
  await settled();
  desk.keepTheirs(desk.merges[0] ?? { key: '', mine: null, theirs: null });
  await settled();
  expect(count).toBe(7);
  expect(desk.sheet?.head[0]?.value).toBe(7);
  expect(desk.canUndo).toBe(false);
});

test('a no stands beside its field, and what was typed stays', async () => {
  const desk = await opened();
  desk.drafts['part.count'] = { text: 'two', was: 1 };
  desk.change('part.count', 1, 'two');
  await settled();
  expect(desk.refusals['part.count']?.message).toBe('takes a whole number');
  expect(desk.drafts['part.count']?.text).toBe('two');
  expect(desk.canUndo).toBe(false);
});

test('while the server is gone the last word waits, and goes out when it is back', async () => {
  const desk = await opened();
  answers = false;
  desk.change('part.count', 1, 2);
  await settled();
  expect(desk.gone).toBe(true);
  desk.change('part.count', 1, 4);
  await settled();
  expect(desk.standing(line())).toBe(4);
  answers = true;
  await vi.advanceTimersByTimeAsync(2500);
  expect(desk.gone).toBe(false);
  expect(count).toBe(4);
  expect(sent).toEqual([{ key: 'part.count', was: 1, to: 4 }]);
});

test('a change of which only the answer was lost is no question', async () => {
  const desk = await opened();
  count = 2;
  desk.change('part.count', 1, 2);
  await settled();
  expect(desk.canUndo).toBe(false);
  expect(desk.merges).toEqual([]);
  expect(desk.sheet?.head[0]?.value).toBe(2);
});

test('what is being typed outlives a change of the same line', async () => {
  const desk = await opened();
  desk.change('part.count', 1, 2);
  await settled();
  desk.drafts['part.count'] = { text: '5', was: 2 };
  desk.takeBack();
  await settled();
  expect(desk.drafts['part.count']).toEqual({ text: '5', was: 1 });
});
