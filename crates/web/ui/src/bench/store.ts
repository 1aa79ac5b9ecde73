/** What the phone keeps: entries until they are in the log, and the last cards it was given. */
import { keptAs, type KeptEntry, type Lot, undoable } from './entries';

const NAME = 'oddside-bench';
const ENTRIES = 'entries';
const KEPT = 'kept';

/** Sent entries that stay on the phone to be counted; older ones are in the log and go. */
const MOST_SENT = 300;

/** Opens the store; another page of ours that makes it newer is let through. */
function opened(): Promise<IDBDatabase> {
  return new Promise((done, failed) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore(ENTRIES, { keyPath: 'id' });
      asked.result.createObjectStore(KEPT);
    };
    asked.onsuccess = () => {
      asked.result.onversionchange = () => asked.result.close();
      done(asked.result);
    };
    asked.onerror = () => failed(asked.error);
  });
}

/** Does something in one step: all of it is kept when this is done, or nothing. */
async function within<T>(
  stores: string[],
  mode: IDBTransactionMode,
  work: (step: IDBTransaction) => T | Promise<T>,
): Promise<T> {
  const database = await opened();
  try {
    const step = database.transaction(stores, mode, { durability: 'strict' });
    const ended = new Promise<void>((done, failed) => {
      step.oncomplete = () => done();
      step.onabort = () => failed(step.error ?? new Error('the store gave up'));
    });
    const result = await work(step);
    await ended;
    return result;
  } finally {
    database.close();
  }
}

function answered<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
}

/** All entries. */
export function entries(): Promise<KeptEntry[]> {
  return within([ENTRIES], 'readonly', (step) =>
    answered<KeptEntry[]>(step.objectStore(ENTRIES).getAll()),
  );
}

/** Keeps a lot; when this is done it is on the phone's disk. */
export function keep(lot: Lot, now: number): Promise<void> {
  return within([ENTRIES], 'readwrite', async (step) => {
    const store = step.objectStore(ENTRIES);
    const all = await answered<KeptEntry[]>(store.getAll());
    const first = 1 + Math.max(0, ...all.map((entry) => entry.order));
    for (const entry of keptAs(lot, now, first)) store.put(entry);
    const sent = all.filter((entry) => entry.state === 'sent');
    sent.sort((one, other) => other.order - one.order);
    for (const old of sent.slice(MOST_SENT)) store.delete(old.id);
  });
}

/** Undoes the last lot where none of it is on its way; says whether it did. */
export function undoLast(): Promise<boolean> {
  return within([ENTRIES], 'readwrite', async (step) => {
    const store = step.objectStore(ENTRIES);
    const lot = undoable(await answered<KeptEntry[]>(store.getAll()));
    for (const entry of lot) store.delete(entry.id);
    return lot.length > 0;
  });
}

/** Changes entries by what they are now: what was undone meanwhile stays undone. */
export function change(
  ids: string[],
  how: (entry: KeptEntry) => KeptEntry,
): Promise<KeptEntry[]> {
  return within([ENTRIES], 'readwrite', async (step) => {
    const store = step.objectStore(ENTRIES);
    const changed: KeptEntry[] = [];
    for (const id of ids) {
      const entry = await answered<KeptEntry | undefined>(store.get(id));
      if (!entry) continue;
      changed.push(how(entry));
      store.put(how(entry));
    }
    return changed;
  });
}

/** What was kept under a name; nothing where there is none. */
export function recall<T>(name: string): Promise<T | undefined> {
  return within([KEPT], 'readonly', (step) =>
    answered<T | undefined>(step.objectStore(KEPT).get(name)),
  );
}

/** Keeps something under a name. */
export function remember(name: string, value: unknown): Promise<void> {
  return within([KEPT], 'readwrite', (step) => {
    step.objectStore(KEPT).put(value, name);
  });
}

/** Forgets what was kept under a name. */
export function forget(name: string): Promise<void> {
  return within([KEPT], 'readwrite', (step) => {
    step.objectStore(KEPT).delete(name);
  });
}
