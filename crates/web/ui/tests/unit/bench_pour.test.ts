import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { ClockAnswer, StepAnswer } from '../../src/answers';
import { digits, gone, left, place, sounds } from '../../src/bench/clock';
import { isTicked, mayPour, tapped, TICK_MS, tickedOf, type Ticks } from '../../src/bench/dry';
import { back, begun, onward, onwardIs, type PourState, seenOf } from '../../src/bench/pour_state';
import { jobOf, screenOf, wayTo } from '../../src/bench/way';

const filling: ClockAnswer = { watches: 'filling', low_s: 3, likely_s: 4, high_s: 6 };
const opening: ClockAnswer = { watches: 'opening', low_s: 600, likely_s: 900, high_s: 1200 };

test('a clock counts from the moment it began, and never below none', () => {
  expect(gone(1000, 5200)).toBeCloseTo(4.2);
  expect(gone(5000, 1000)).toBe(0);
  expect([2.9, 3, 6, 6.1].map((at) => place(filling, at))).toEqual([
    'before',
    'within',
    'within',
    'after',
  ]);
  expect(left(opening, 300)).toBe(900);
  expect(left(opening, 5000)).toBe(0);
});

test('the stream is heard each second before its time, at it, and at the end of its band', () => {
  const heard: string[] = [];
  for (let at = 0; at < 8; at += 0.1) heard.push(...sounds(filling, at, at + 0.1));
  expect(heard).toEqual(['tick', 'tick', 'tick', 'likely', 'end']);
});

test('a phone that slept makes up for the end, not for the ticks', () => {
  expect(sounds(opening, 0, 5000)).toEqual(['likely', 'end']);
  expect(sounds(opening, 5000, 5001)).toEqual([]);
  const exact: ClockAnswer = { watches: 'filling', low_s: 4, likely_s: 4, high_s: 4 };
  expect(sounds(exact, 3.95, 4.05)).toEqual(['likely']);
});

test('digits are cut while they count up and rounded up while they count down', () => {
  expect(digits(4.29, true)).toBe('4.2');
  expect(digits(75.9, true)).toBe('1:15');
  expect(digits(899.1, false)).toBe('15:00');
  expect(digits(3729, false)).toBe('1:02:09');
  expect(digits(0, false)).toBe('0:00');
});

const step = (id: string, clock: ClockAnswer | null = null) => ({ id, clock }) as StepAnswer;
const steps = [step('ready'), step('fill', filling), step('wait', opening), step('open')];

/** After presses at these moments, s. */
function pressed(moments: number[]): PourState {
  return moments.reduce((state, at) => onward(state, steps, at * 1000), begun('K7'));
}

test('each press goes one step on; at the stream the first drop and the full mould come between', () => {
  expect(onwardIs(begun('K7'), steps)).toBe('phone-next');
  expect(onwardIs(pressed([0]), steps)).toBe('phone-clock-begin');
  expect(onwardIs(pressed([0, 10]), steps)).toBe('phone-clock-full');
  expect(onwardIs(pressed([0, 10, 14.2]), steps)).toBe('phone-next');
  expect(onwardIs(pressed([0, 10, 14.2, 15]), steps)).toBe('phone-clock-opened');
  expect(onwardIs(pressed([0, 10, 14.2, 15, 1300]), steps)).toBe('phone-how-out');
  const seen = seenOf(pressed([0, 10, 14.2, 15, 1300]));
  expect(seen.poured).toBe(10_000);
  expect(seen.filledS).toBeCloseTo(4.2);
  expect(seen.openedMin).toBeCloseTo((1300 - 14.2) / 60);
});

test('the mould is counted from when it was full, also after going back and forth', () => {
  const waiting = pressed([0, 10, 14.2, 15]);
  expect(waiting.began).toBe(14_200);
  const again = back(waiting, steps);
  expect([again.step, again.began, again.stopped]).toEqual([1, 10_000, 14_200]);
  const running = back(again, steps);
  expect([running.step, running.began, running.stopped]).toEqual([1, 10_000, undefined]);
  const idle = back(running, steps);
  expect([idle.began, idle.poured]).toEqual([undefined, undefined]);
  expect(back(idle, steps).step).toBe(0);
  expect(back(begun('K7'), steps).step).toBe(0);
  expect(seenOf(undefined)).toEqual({});
});

const points = Array.from({ length: 10 }, (_, at) => `p${at}`);
const all: Ticks = Object.fromEntries(points.map((point) => [point, 0]));

test('no pour before each of the ten was ticked, and not for long afterwards', () => {
  expect(mayPour(points, all, 1)).toBe(true);
  for (const point of points) {
    const { [point]: _, ...nine } = all;
    expect(mayPour(points, nine, 1)).toBe(false);
  }
  expect(mayPour(points, all, TICK_MS)).toBe(false);
  expect(tickedOf(points, { ...all, p0: TICK_MS }, TICK_MS)).toBe(1);
  // A list that came short is no way round.
  expect(mayPour([], {}, 1)).toBe(false);
  expect(mayPour(points.slice(1), all, 1)).toBe(false);
  // A tick from a clock that was ahead is none.
  expect(isTicked({ p0: 500 }, 'p0', 100)).toBe(false);
});

test('a tap ticks, another takes it back', () => {
  const once = tapped({}, 'p3', 5);
  expect(once).toEqual({ p3: 5 });
  expect(tapped(once, 'p3', 6)).toEqual({});
  expect(tapped(once, 'p3', 5 + TICK_MS)).toEqual({ p3: 5 + TICK_MS });
});

test('an address is of a job, dots and strokes in it', () => {
  for (const job of ['lid', '2026/block', 'v1.2 new', 'çà']) {
    expect(jobOf(wayTo(job))).toBe(job);
    expect(wayTo(job)).not.toContain('.');
  }
  expect(jobOf('/bench')).toBeNull();
  expect(jobOf('/bench/%E0%A4%A')).toBeNull();
  expect(screenOf('#pour')).toBe('pour');
  expect(screenOf('#elsewhere')).toBe('heap');
});

test('the server sends every word that the bench card uses, and no other', () => {
  const folder = join(import.meta.dirname, '../../src/bench');
  const text = readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8'));
  const used = text.flatMap((source) => source.match(/(?<=')phone-[a-z-]+(?=')/g) ?? []);
  const rust = readFileSync(join(folder, '../../../src/answers/phone_words.rs'), 'utf8');
  const sent = rust.match(/(?<=")phone-[a-z-]+(?=")/g) ?? [];
  expect([...new Set(used)].sort()).toEqual([...sent].sort());
});
