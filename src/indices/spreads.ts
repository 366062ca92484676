import { meanOf, sampleSd } from '../stats/moments.ts';
import type { Index } from './indexOf.ts';
import type { Trace } from './trace.ts';

/** Where the spread of glucose comes from, mg/dL; `cvWithin` is the mean of the days' CVs, percent. */
export interface Spreads {
  /** Of all readings. */
  total: number;
  /** Within days: mean of each day's SD. */
  within: number;
  /** Between the means of days. */
  dailyMeans: number;
  /** Of the average profile by clock time. */
  clockTimes: number;
  /** Between days at one clock time, averaged over clock times. */
  betweenDays: number;
  cvWithin: number;
}

/** `grid[day][slot]`: one value a clock time, null where there is none. Needs two days with two values. */
export function spreadsOf(grid: readonly (readonly (number | null)[])[]): Spreads | null {
  const known = (list: readonly (number | null)[]) => list.filter((value) => value !== null);
  const days = grid.map(known).filter((day) => day.length >= 2);
  if (days.length < 2) return null;
  const slots = (grid[0] ?? []).map((_, slot) => known(grid.map((day) => day[slot] ?? null)));
  const shared = slots.filter((slot) => slot.length >= 2);
  if (shared.length < 2) return null;
  return {
    total: sampleSd(days.flat()),
    within: meanOf(days.map(sampleSd)),
    dailyMeans: sampleSd(days.map(meanOf)),
    clockTimes: sampleSd(shared.map(meanOf)),
    betweenDays: meanOf(shared.map(sampleSd)),
    cvWithin: meanOf(days.map((day) => (100 * sampleSd(day)) / meanOf(day))),
  };
}

/** The family of standard deviations over full days; clock times in steps of the interval. Partly from memory. */
export const spreads: Index<Spreads> = {
  id: 'spreads',
  source: 'Rodbard 2009, Diabetes Technol Ther 11:551-565',
  unit: 'mg/dL',
  definition: {},
  compute(trace) {
    if (trace.mgdl.length === 0) return { ok: false, why: 'no-readings' };
    const value = spreadsOf(gridOf(trace));
    if (value === null) return { ok: false, why: 'too-few-days' };
    return { ok: true, value, n: trace.fullDays.length, of: 'days' };
  },
};

function gridOf({ mgdl, day, minuteOfDay, fullDays, interval }: Trace): (number | null)[][] {
  const slots = Math.ceil(1440 / interval);
  const row = new Map(fullDays.map((full, i) => [full, i]));
  const grid = fullDays.map(() => new Array<number | null>(slots).fill(null));
  mgdl.forEach((value, i) => {
    const here = row.get(day[i]!);
    if (here !== undefined) grid[here]![Math.floor(minuteOfDay[i]! / interval)] = value;
  });
  return grid;
}
