/**
 * A sheet that is worked on: what stands on it, what is being typed, and what is on its way to the
 * server. Changes go out one after the other; none is dropped until the server has answered.
 */
import type { Change, No, SheetAnswer, Typed, TypedLine } from '../answers';
import { Gone, Refused, change as changeOf, sheet as sheetOf } from '../asking/ask';
import { differences, noMarks, type Marks } from './marks';
import { mergeOf, mineOver, type Merge } from './merge';
import { same } from './typed';
import { afterRedo, afterUndo, nothingDone, toRedo, toUndo, withDone } from './undo';
import { keep, type Waiting, waitingOf, withChange } from './waiting';

/** A field that is open: what is typed in it, and what stood there when it was opened. */
export interface Draft {
  text: string;
  was: Typed;
  /** What of it was sent last. */
  sent?: string;
}

/** Between two tries to reach a server that is gone, ms: a restart is seen at once. */
const AGAIN_MS = 2000;

/** A sheet to work on. */
export type Desk = ReturnType<typeof deskOf>;

/** Where a sheet comes from, and where its changes go. */
export interface From {
  sheet: () => Promise<SheetAnswer>;
  change: (one: Change) => Promise<SheetAnswer>;
}

const ofJob = (job: string): From => ({
  sheet: () => sheetOf(job),
  change: (one) => changeOf(job, one),
});

/** Opens the sheet of a job, or another one that is changed in the same way. */
export function deskOf(job: string, from: From = ofJob(job)) {
  let sheet = $state.raw<SheetAnswer | null>(null);
  let marks = $state.raw<Marks>(noMarks);
  let undo = $state.raw(nothingDone);
  let waiting = $state.raw<Waiting[]>(waitingOf(job));
  let onItsWay = $state.raw<Waiting | null>(null);
  let merges = $state.raw<Merge[]>([]);
  let gone = $state(false);
  let trouble = $state.raw<No | null>(null);
  const drafts = $state<Record<string, Draft>>({});
  const refusals = $state<Record<string, No>>({});
  let again: ReturnType<typeof setTimeout> | undefined;

  /** Asks for the sheet; what is new on it is marked, except on the first look. */
  async function load(): Promise<void> {
    try {
      show(await from.sheet(), true);
      await sendNext();
    } catch (error) {
      if (error instanceof Gone) later();
      else trouble = error instanceof Refused ? error.no : { message: String(error) };
    }
  }

  /** Shows a sheet. A mere look leaves the marks of the last change, unless it finds another. */
  function show(now: SheetAnswer, isLook = false): void {
    const found = sheet ? differences(sheet, now) : noMarks;
    if (!isLook || found.on.size > 0) marks = found;
    sheet = now;
    gone = false;
    trouble = null;
  }

  /** Tries again after a while. */
  function later(): void {
    gone = true;
    clearTimeout(again);
    again = setTimeout(() => (sheet && waiting.length > 0 ? sendNext() : load()), AGAIN_MS);
  }

  /** Puts a change on its way; behind one of the same key it starts from what that one leaves. */
  function put(change: Waiting): void {
    const was = onItsWay?.key === change.key ? onItsWay.to : change.was;
    waiting = withChange(waiting, { ...change, was });
    keep(job, waiting);
    void sendNext();
  }

  async function sendNext(): Promise<void> {
    const next = waiting[0];
    if (onItsWay || !next) return;
    onItsWay = next;
    waiting = waiting.slice(1);
    try {
      const { key, was, to } = next;
      arrived(next, await from.change({ key, was, to }));
    } catch (error) {
      if (error instanceof Gone) {
        // First what was on its way, then what came after it, one for each key.
        waiting = [next, ...waiting].reduce(withChange, []);
        onItsWay = null;
        return later();
      }
      refused(next, error);
    }
    onItsWay = null;
    keep(job, waiting);
    await sendNext();
  }

  function arrived({ by, ...change }: Waiting, now: SheetAnswer): void {
    show(now);
    if (by === 'undo') undo = afterUndo(undo);
    else if (by === 'redo') undo = afterRedo(undo);
    else undo = withDone(undo, change);
    delete refusals[change.key];
    const draft = drafts[change.key];
    // What was typed further meanwhile stays open, and starts from what stands there now.
    if (draft && draft.text !== draft.sent) draft.was = change.to;
    else delete drafts[change.key];
  }

  function refused(change: Waiting, error: unknown): void {
    gone = false;
    const merge = mergeOf(change, error);
    if (merge && same(merge.mine, merge.theirs)) {
      // It had arrived, and only the answer was lost.
      delete drafts[change.key];
      void load();
    } else if (merge) {
      merges = [...merges.filter((other) => other.key !== merge.key), merge];
    } else {
      refusals[change.key] = error instanceof Refused ? error.no : { message: String(error) };
    }
  }

  /** What will stand at a line once all that waits has arrived. */
  function standing(line: TypedLine): Typed {
    const later = waiting.find((change) => change.key === line.key);
    if (later) return later.to;
    return onItsWay?.key === line.key ? onItsWay.to : line.value;
  }

  function withoutMerge(merge: Merge): void {
    merges = merges.filter((other) => other !== merge);
  }

  const busy = () => onItsWay !== null || waiting.length > 0;

  return {
    job,
    drafts,
    refusals,
    load,
    standing,
    get sheet() {
      return sheet;
    },
    get marks() {
      return marks;
    },
    get merges() {
      return merges;
    },
    get gone() {
      return gone;
    },
    get trouble() {
      return trouble;
    },
    get busy() {
      return busy();
    },
    get canUndo() {
      return !busy() && toUndo(undo) !== null;
    },
    get canRedo() {
      return !busy() && toRedo(undo) !== null;
    },
    /** Puts another value behind a key. */
    change(key: string, was: Typed, to: Typed): void {
      delete refusals[key];
      const draft = drafts[key];
      if (draft) draft.sent = draft.text;
      if (same(was, to)) delete drafts[key];
      else put({ key, was, to, by: 'hand' });
    },
    /** Gives a field up; what stood there stays. */
    giveUp(key: string): void {
      delete drafts[key];
      delete refusals[key];
    },
    takeBack(): void {
      const change = busy() ? null : toUndo(undo);
      if (change) put({ ...change, by: 'undo' });
    },
    doAgain(): void {
      const change = busy() ? null : toRedo(undo);
      if (change) put({ ...change, by: 'redo' });
    },
    /** Leaves standing what somebody else has typed. */
    keepTheirs(merge: Merge): void {
      withoutMerge(merge);
      delete drafts[merge.key];
      void load();
    },
    /** Puts ours in its place. */
    useMine(merge: Merge): void {
      withoutMerge(merge);
      put({ ...mineOver(merge), by: 'hand' });
    },
    /** Looks whether the file was changed elsewhere, unless something is being typed. */
    lookAgain(): void {
      const typing = Object.keys(drafts).length > 0 || merges.length > 0;
      if (sheet && !typing && !busy()) void load();
    },
    /** Asks no more. */
    leave(): void {
      clearTimeout(again);
    },
  };
}
