/** Clocks of a pour: what they show and when they sound, worked out from the moment they began. */
import type { ClockAnswer } from '../answers';

/** A sound: each second of the last few, at the likely time, at the end of the band. */
export type Sound = 'tick' | 'likely' | 'end';

/** From so many seconds before the likely time each second is heard, so that nobody has to look. */
const TICKS_S = 3;

/** Seconds gone since the clock began; never less than none, also where a clock was set back. */
export function gone(began: number, now: number): number {
  return Math.max(0, (now - began) / 1000);
}

/** What is heard between two moments, in order; after a pause only the last of each kind. */
export function sounds(clock: ClockAnswer, from: number, to: number): Sound[] {
  const heard: [number, Sound][] = [];
  const within = (at: number) => at > from && at <= to;
  if (within(clock.likely_s)) heard.push([clock.likely_s, 'likely']);
  if (clock.high_s > clock.likely_s && within(clock.high_s)) heard.push([clock.high_s, 'end']);
  for (let before = TICKS_S; before >= 1; before -= 1) {
    const at = clock.likely_s - before;
    // One who slept through the ticks needs none of them.
    if (within(at) && to - at < 1) heard.push([at, 'tick']);
  }
  return heard.sort(([one], [other]) => one - other).map(([, sound]) => sound);
}

/** Where in its band a clock stands. */
export function place(clock: ClockAnswer, goneS: number): 'before' | 'within' | 'after' {
  if (goneS < clock.low_s) return 'before';
  return goneS <= clock.high_s ? 'within' : 'after';
}

/** Seconds until the end of the band, at which nothing is waited for any more; never below none. */
export function left(clock: ClockAnswer, goneS: number): number {
  return Math.max(0, clock.high_s - goneS);
}

/** Seconds in large digits: 7.4 of a stream, 12:05 and 1:02:09 of a mould. */
export function digits(seconds: number, tenths: boolean): string {
  if (tenths && seconds < 60) return (Math.floor(seconds * 10) / 10).toFixed(1);
  const whole = tenths ? Math.floor(seconds) : Math.ceil(seconds);
  const two = (number: number) => String(number).padStart(2, '0');
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60];
  if (hours > 0) return `${hours}:${two(minutes)}:${two(whole % 60)}`;
  return `${minutes}:${two(whole % 60)}`;
}
