import { expect, test } from 'vitest';
import type { Change } from '../../src/answers';
import { afterRedo, afterUndo, nothingDone, toRedo, toUndo, withDone } from '../../src/sheet/undo';

const first: Change = { key: 'part.count', was: null, to: 2 };
const second: Change = { key: 'part.count', was: 2, to: 3 };

test('nothing done is nothing to take back or do again', () => {
  expect(toUndo(nothingDone)).toBeNull();
  expect(toRedo(nothingDone)).toBeNull();
  expect(afterUndo(nothingDone)).toEqual(nothingDone);
  expect(afterRedo(nothingDone)).toEqual(nothingDone);
});

test('what is taken back is the last change the other way round', () => {
  const undo = withDone(withDone(nothingDone, first), second);
  expect(toUndo(undo)).toEqual({ key: 'part.count', was: 3, to: 2 });
  expect(toUndo(afterUndo(undo))).toEqual({ key: 'part.count', was: 2, to: null });
});

test('what is done again is the change itself, in the order in which it was made', () => {
  let undo = withDone(withDone(nothingDone, first), second);
  undo = afterUndo(afterUndo(undo));
  expect(toUndo(undo)).toBeNull();
  expect(toRedo(undo)).toEqual(first);
  expect(toRedo(afterRedo(undo))).toEqual(second);
});

test('a new change ends what could be done again', () => {
  const undo = withDone(afterUndo(withDone(nothingDone, first)), second);
  expect(toRedo(undo)).toBeNull();
  expect(undo.done).toEqual([second]);
});

test('the list has an end, and the oldest change goes first', () => {
  let undo = nothingDone;
  for (let to = 1; to <= 600; to += 1) undo = withDone(undo, { key: 'a', was: to - 1, to });
  expect(undo.done.length).toBe(500);
  expect(undo.done[0]?.to).toBe(101);
});
