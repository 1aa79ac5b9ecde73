import { expect, test } from 'vitest';
import { glossaryOf, isOurs, lessonAt, lessonOf, wordAt } from '../../src/asking/way';
import { idOf, placeOf } from '../../src/sheet/place';
import { classGiven } from '../../src/teaching/class';

test('a lesson and a word have addresses that lead back to them', () => {
  expect(lessonAt(lessonOf('2026/a lid v1.2'))).toBe('2026/a lid v1.2');
  expect(wordAt(glossaryOf('cold shut'))).toBe('cold shut');
  expect(wordAt('/glossary')).toBe('');
  expect(wordAt('/job/x')).toBeNull();
  expect(lessonAt('/job/x')).toBeNull();
  for (const address of ['/glossary', glossaryOf('a/b'), lessonOf('x')]) {
    expect(isOurs(address)).toBe(true);
  }
  expect(isOurs('/bench/x')).toBe(false);
});

test('what a class leaves empty is not asked for', () => {
  const given = { pupils: 8, sessions: 2, minutes: 80, adults: 2, flasks: null };
  expect(classGiven(given)).toBe('pupils=8&sessions=2&minutes=80&adults=2');
  expect(classGiven({ ...given, flasks: 3 })).toContain('flasks=3');
});

test('a line that an advice names is led to on its own sheet', () => {
  const lead = { key: 'heap.mass', label: 'sand in the heap', on: 'sand' as const };
  expect(placeOf(lead, 'x')).toBe(`/sand#${idOf('heap.mass')}`);
  expect(placeOf({ ...lead, key: 'part.unit', on: 'job' }, 'a b')).toBe('/job/a%20b#typed-part-unit');
});
