import { expect, test } from 'vitest';
import type { CardAnswer } from '../../src/answers';
import {
  afterwards,
  counted,
  HOLD_MS,
  type KeptEntry,
  keptAs,
  newId,
  toSend,
  undoable,
} from '../../src/bench/entries';
import { clockTime, lotOf } from '../../src/bench/outcome';
import { batchLot } from '../../src/bench/weighed';

const NOON = Date.UTC(2026, 4, 3, 12, 0, 0);

const one = (id: string, state: KeptEntry['state'], order: number, lot = id): KeptEntry => ({
  table: 'sand_tests',
  id,
  written: new Date(NOON).toISOString(),
  says: {},
  state,
  order,
  lot,
  at: NOON,
});

/** Ids that count: 1, 2, 3. */
function counting(): () => string {
  let number = 0;
  return () => String((number += 1));
}

test('an id is 128 bits of chance as the log has it', () => {
  const ids = Array.from({ length: 1000 }, newId);
  expect(ids.every((id) => /^[0-9a-f]{32}$/.test(id))).toBe(true);
  expect(new Set(ids).size).toBe(1000);
});

test('an entry waits where it can be undone, and goes in the order in which it was written', () => {
  const all = [one('b', 'kept', 2), one('a', 'kept', 1), one('c', 'sending', 3), one('d', 'sent', 4)];
  expect(toSend(all, NOON + HOLD_MS - 1).map(({ id }) => id)).toEqual(['c']);
  expect(toSend(all, NOON + HOLD_MS).map(({ id }) => id)).toEqual(['a', 'b', 'c']);
  expect(toSend(all, NOON, 0).map(({ id }) => id)).toEqual(['a', 'b', 'c']);
});

test('what the log did not speak of is sent again, what it refused stays with its reason', () => {
  const entry = one('a', 'sending', 1);
  expect(afterwards(entry, [])).toMatchObject({ state: 'sending' });
  expect(afterwards(entry, [{ id: 'a', number: 7, refused: null }])).toMatchObject({ state: 'sent' });
  const refused = afterwards(entry, [{ id: 'a', number: null, refused: 'no number' }]);
  expect(refused).toMatchObject({ state: 'refused', why: 'no number' });
  // Tried again, and taken: the reason goes.
  expect(afterwards(refused, [{ id: 'a', number: 7, refused: null }]).why).toBeUndefined();
});

test('the last lot is undone as a whole, and only while none of it is on its way', () => {
  const earlier = one('a', 'kept', 1);
  const pour = [one('b', 'kept', 2, 'pour'), one('c', 'kept', 3, 'pour')];
  expect(undoable([earlier, ...pour]).map(({ id }) => id)).toEqual(['b', 'c']);
  expect(undoable([earlier, pour[0]!, { ...pour[1]!, state: 'sending' }])).toEqual([]);
  expect(undoable([])).toEqual([]);
});

test('a lot counts once', () => {
  const all = [
    one('a', 'sent', 1, 'x'),
    one('b', 'sent', 2, 'x'),
    one('c', 'sent', 3, 'y'),
    one('d', 'kept', 4, 'y'),
    one('e', 'refused', 5, 'z'),
  ];
  expect(counted(all)).toEqual({ kept: 1, sent: 1, refused: 1 });
});

test('a lot is kept in order, with the time at which it was written', () => {
  const lot = keptAs(
    [
      { table: 'heats', id: 'h', says: {} },
      { table: 'pours', id: 'p', says: { heat: 'h' } },
    ],
    NOON,
    5,
  );
  expect(lot.map(({ id, order, state }) => [id, order, state])).toEqual([
    ['h', 5, 'kept'],
    ['p', 6, 'kept'],
  ]);
  expect(lot[0]!.written).toBe('2026-05-03T12:00:00.000Z');
  expect(lot[0]!.lot).toBe(lot[1]!.lot);
});

const card = {
  job: 'lid',
  castings: 2,
  lot: {
    mould: { job: 'Lid', castings: '2' },
    planned: [{ figure: 'charge', likely: '2.1' }],
    heat: { alloy: 'A356' },
    pour: { planned_temperature_c: '720' },
    casting: { planned_mass_kg: '0.8' },
  },
} as unknown as CardAnswer;

test('a pour is entries linked to each other, those that are pointed to first', () => {
  const outcome = {
    castings: 2,
    mass: '2 kg',
    temperature: '',
    how: 'steady',
    good: 1,
    looks: ['sink', 'seam'],
  };
  const seen = { poured: NOON, filledS: 4.24 };
  const lot = lotOf(card, outcome, seen, NOON + 600_000, counting());
  expect(lot.map(({ table }) => table)).toEqual([
    'moulds',
    'planned',
    'heats',
    'pours',
    'castings',
    'castings',
    'defects',
  ]);
  const known = new Set<string>();
  for (const { id, says } of lot) {
    for (const link of ['mould', 'heat', 'pour', 'casting']) {
      if (says[link] !== undefined && link in { mould: 1, heat: 1, pour: 1, casting: 1 }) {
        expect(known.has(says[link]!), `${link} ${says[link]}`).toBe(true);
      }
    }
    known.add(id);
  }
  const pour = lot[3]!.says;
  expect(pour).toMatchObject({ time: '4.2 s', mass: '2 kg', how: 'steady' });
  expect(pour['poured']).toBe(clockTime(NOON));
  // What was left out is no value.
  expect('temperature' in pour || 'opening' in pour).toBe(false);
  expect(lot.filter(({ table }) => table === 'castings').map(({ says }) => says['good'])).toEqual([
    'yes',
    'no',
  ]);
  expect(lot[6]!.says).toEqual({ casting: lot[5]!.id, look: 'sink seam' });
});

test('a batch keeps what the scale said; two parts of one column stay apart in the note', () => {
  const part = (name: string, column: string) => ({ name, column, mass: '', other: null });
  const parts = [
    part('sand', 'sand'),
    part('linseed-oil', 'binder'),
    part('cereal', 'binder'),
    part('water', 'water'),
  ];
  const weighed = ['10 kg', '200 g', '100 g', ''];
  const [entry] = batchLot({ name: 'oil-core' }, parts, weighed, NOON, () => 'x');
  expect(entry!.says).toEqual({
    mixed: clockTime(NOON),
    sand: '10 kg',
    note: 'oil-core: sand 10 kg; linseed-oil 200 g; cereal 100 g; water',
  });
});
