/** Where a pour stands: which step, and what its clocks have seen. It survives a page that is shut. */
import type { StepAnswer } from '../answers';

/** A pour under way. */
export interface PourState {
  /** The plan that it goes by. */
  code: string;
  /** The step, counted from nought. */
  step: number;
  /** When the clock of the step began, ms. */
  began?: number;
  /** When it was stopped, ms. */
  stopped?: number;
  /** When the first drop fell, ms. */
  poured?: number;
  /** When the mould was full, ms. */
  full?: number;
  /** When it was opened, ms. */
  opened?: number;
  /** Whether it is in the log. */
  done?: boolean;
}

/** A pour at its first step. */
export function begun(code: string): PourState {
  return { code, step: 0 };
}

/** After one more press: a clock of the stream begins, then stops, then the step is over. */
export function onward(state: PourState, steps: StepAnswer[], now: number): PourState {
  const watches = steps[state.step]?.clock?.watches;
  if (watches === 'filling' && state.began === undefined) {
    return { ...state, began: now, poured: now };
  }
  if (watches === 'filling' && state.stopped === undefined) {
    return { ...state, stopped: now, full: now };
  }
  const opened = watches === 'opening' ? now : state.opened;
  return entering({ ...state, step: state.step + 1, opened }, steps);
}

/** After a press of the way back: what a clock has seen stays written down until it runs anew. */
export function back(state: PourState, steps: StepAnswer[]): PourState {
  const watches = steps[state.step]?.clock?.watches;
  if (watches === 'filling' && state.stopped !== undefined) return { ...state, stopped: undefined };
  if (watches === 'filling' && state.began !== undefined) {
    return { ...state, began: undefined, poured: undefined, full: undefined };
  }
  return entering({ ...state, step: Math.max(0, state.step - 1) }, steps);
}

/** The clock of the step that is entered: the stream's as it was left, the mould's from when it was full. */
function entering(state: PourState, steps: StepAnswer[]): PourState {
  const watches = steps[state.step]?.clock?.watches;
  if (watches === 'filling') return { ...state, began: state.poured, stopped: state.full };
  if (watches === 'opening') return { ...state, began: state.full, stopped: undefined };
  return { ...state, began: undefined, stopped: undefined };
}

/** What the next press does, as a word of the card. */
export function onwardIs(state: PourState, steps: StepAnswer[]): string {
  const watches = steps[state.step]?.clock?.watches;
  if (watches === 'filling' && state.began === undefined) return 'phone-clock-begin';
  if (watches === 'filling' && state.stopped === undefined) return 'phone-clock-full';
  if (watches === 'opening') return 'phone-clock-opened';
  return state.step + 1 === steps.length ? 'phone-how-out' : 'phone-next';
}

/** What was seen of a pour, for the log. */
export function seenOf(state: PourState | undefined): {
  poured?: number;
  filledS?: number;
  openedMin?: number;
} {
  if (!state || state.poured === undefined) return {};
  const { poured, full, opened } = state;
  return {
    poured,
    filledS: full === undefined ? undefined : (full - poured) / 1000,
    openedMin: full === undefined || opened === undefined ? undefined : (opened - full) / 60_000,
  };
}
