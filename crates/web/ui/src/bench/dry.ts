/** The ten points: no pour before each was ticked, lately and for this very job. */

/** When each point was ticked, ms, by its name. */
export type Ticks = Record<string, number>;

/**
 * How long a tick holds, ms: a floor dries no wetter, but a mould left standing and a flux tin left
 * open do. Judgement: shorter, and one ticks again between two heats; longer, and yesterday's tick
 * lets today's pour begin.
 */
export const TICK_MS = 4 * 3600 * 1000;

/** Whether a point is ticked now. */
export function isTicked(ticks: Ticks, point: string, now: number): boolean {
  const at = ticks[point];
  return at !== undefined && at <= now && now - at < TICK_MS;
}

/** Ticks with one point put right: ticked where it was not, and the other way round. */
export function tapped(ticks: Ticks, point: string, now: number): Ticks {
  const { [point]: _, ...others } = ticks;
  return isTicked(ticks, point, now) ? others : { ...others, [point]: now };
}

/** How many of the points are ticked now. */
export function tickedOf(points: string[], ticks: Ticks, now: number): number {
  return points.filter((point) => isTicked(ticks, point, now)).length;
}

/** Whether a pour may begin: all of ten points, and never of fewer. */
export function mayPour(points: string[], ticks: Ticks, now: number): boolean {
  return points.length === 10 && tickedOf(points, ticks, now) === 10;
}
