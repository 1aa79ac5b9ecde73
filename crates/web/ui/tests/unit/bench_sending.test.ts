import { beforeEach, expect, test, vi } from 'vitest';
import type { SentEntry, TakenEntry } from '../../src/answers';
import type { KeptEntry } from '../../src/bench/entries';
import { send } from '../../src/bench/sending';

/** The phone's disk, and the log: each id once. */
const phone = new Map<string, KeptEntry>();
const log = new Map<string, SentEntry>();

vi.mock('../../src/bench/store', () => ({
  entries: () => Promise.resolve([...phone.values()]),
  change: (ids: string[], how: (entry: KeptEntry) => KeptEntry) => {
    const there = ids.flatMap((id) => phone.get(id) ?? []);
    const changed = there.map(how);
    for (const entry of changed) phone.set(entry.id, entry);
    return Promise.resolve(changed);
  },
}));

function write(count: number): void {
  for (let at = 0; at < count; at += 1) {
    const id = `e${at}`;
    const written = '2026-05-03T12:00:00.000Z';
    const entry = { table: 'heats', id, written, says: {}, order: at, lot: id, at: 0 };
    phone.set(id, { ...entry, state: 'kept' });
  }
}

/** A server that takes what it is sent; what `refuses` says no to stays out of the log. */
function taking(refuses: (id: string) => boolean = () => false) {
  return (_: string, how: RequestInit): Promise<Response> => {
    const sent = JSON.parse(how.body as string) as SentEntry[];
    const taken = sent.map((entry): TakenEntry => {
      if (refuses(entry.id)) return { id: entry.id, number: null, refused: 'no number' };
      if (!log.has(entry.id)) log.set(entry.id, entry);
      return { id: entry.id, number: 1, refused: null };
    });
    return Promise.resolve(new Response(JSON.stringify(taken)));
  };
}

const answers = vi.fn<(way: string, how: RequestInit) => Promise<Response>>();

beforeEach(() => {
  phone.clear();
  log.clear();
  answers.mockReset();
  vi.stubGlobal('fetch', answers);
});

const states = () => [...phone.values()].map(({ state }) => state);

test('everything goes, in lots', async () => {
  write(450);
  answers.mockImplementation(taking());
  expect(await send(1, 0)).toBe('all');
  expect(answers).toHaveBeenCalledTimes(3);
  expect([...log.keys()]).toEqual([...phone.keys()]);
});

test('a server that is not there leaves all on the phone', async () => {
  write(3);
  answers.mockRejectedValue(new TypeError('no network'));
  expect(await send(1, 0)).toBe('gone');
  expect(states()).toEqual(['sending', 'sending', 'sending']);
  answers.mockReset().mockImplementation(taking());
  // What was on its way goes again without waiting.
  expect(await send(1)).toBe('all');
  expect(log.size).toBe(3);
});

test('a server killed before its answer was whole is sent the same again, and writes it once', async () => {
  write(3);
  answers.mockImplementationOnce(async (way, how) => {
    await taking()(way, how);
    return new Response('[{"id":"e0","nu');
  });
  expect(await send(1, 0)).toBe('gone');
  expect([log.size, states().includes('sent')]).toEqual([3, false]);
  answers.mockImplementation(taking());
  expect(await send(1, 0)).toBe('all');
  expect(log.size).toBe(3);
});

test('an answer that does not speak of an entry is no answer to it', async () => {
  write(2);
  answers.mockResolvedValueOnce(new Response('[{"id":"e0","number":1,"refused":null}]'));
  expect(await send(1, 0)).toBe('gone');
  expect(states()).toEqual(['sent', 'sending']);
});

test('one that is refused stays with its reason and holds up no other', async () => {
  write(3);
  answers.mockImplementation(taking((id) => id === 'e1'));
  expect(await send(1, 0)).toBe('all');
  expect(states()).toEqual(['sent', 'refused', 'sent']);
  expect([...log.keys()]).toEqual(['e0', 'e2']);
});

test('a phone that is not paired any more keeps everything', async () => {
  write(1);
  answers.mockResolvedValue(new Response('{}', { status: 401 }));
  expect(await send(1, 0)).toBe('unpaired');
  answers.mockResolvedValue(new Response('{}', { status: 507 }));
  expect(await send(1, 0)).toBe('gone');
  expect(phone.size).toBe(1);
});

test('what can still be undone waits', async () => {
  write(1);
  expect(await send(1000)).toBe('some');
  expect(answers).not.toHaveBeenCalled();
});
