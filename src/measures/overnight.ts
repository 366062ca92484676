import type { Overnight } from '../model/trust.ts';
import { median } from '../stats/quantile.ts';
import { NIGHT_END, SEEN_SHARE } from '../targets/consensus.ts';
import { mgPerDl } from '../units.ts';
import type { Context } from './context.ts';
import { nightMinutes } from './hourMinutes.ts';
import type { Measure } from './measure.ts';

const MIN_NIGHTS = 5;
const EDGE = 30;
export const STEADY_CHANGE = 30;
export const STEADY_RANGE = 50;

/** Whether a night was steady, however high. */
export const isSteady = ({ change, range }: Overnight['nights'][number]): boolean =>
  Math.abs(change) <= STEADY_CHANGE && range <= STEADY_RANGE;

/**
 * From the mean of 00:00-00:30 to that of 05:30-06:00, night by night, and how far the night ranged. No published
 * threshold for a steady night was found: within 30 mg/dL, and 50 between lowest and highest, are ours.
 */
export const overnight: Measure<'overnight'> = {
  id: 'overnight',
  source: 'Daybands',
  needs: { nights: MIN_NIGHTS },
  definition: { edge: EDGE, steadyChange: STEADY_CHANGE, steadyRange: STEADY_RANGE, nights: MIN_NIGHTS },
  compute(shared) {
    const nights = shared.timeline.days.flatMap((_, day) => oneNight(shared, day) ?? []);
    if (nights.length < MIN_NIGHTS) return { ok: false, why: 'too-few-nights' };
    const steady = nights.filter(isSteady);
    const value = { nights, median: median(nights.map(({ change }) => change)), steady: steady.length };
    return { ok: true, value, n: nights.length, of: 'nights' };
  },
};

function oneNight({ timeline, heights }: Context, index: number): Overnight['nights'][number] | null {
  const { minute, weight } = timeline.readings;
  const day = timeline.days[index]!;
  const sums = { start: 0, end: 0 };
  const minutes = { start: 0, end: 0 };
  let seen = 0;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = 0;
  for (let i = day.from; i < day.to; i++) {
    // No break: a clock that went back over midnight shows the evening again before the rest of the night.
    if (minute[i]! >= NIGHT_END) continue;
    seen += weight[i]!;
    lowest = Math.min(lowest, heights[i]!);
    highest = Math.max(highest, heights[i]!);
    const edge = minute[i]! < EDGE ? 'start' : minute[i]! >= NIGHT_END - EDGE ? 'end' : null;
    if (edge === null) continue;
    sums[edge] += heights[i]! * weight[i]!;
    minutes[edge] += weight[i]!;
  }
  if (seen < SEEN_SHARE * nightMinutes(timeline, day) || minutes.start === 0 || minutes.end === 0) return null;
  const start = mgPerDl(sums.start / minutes.start);
  const end = mgPerDl(sums.end / minutes.end);
  return { date: day.date, start, end, change: end - start, range: highest - lowest };
}
