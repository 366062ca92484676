import type { Estimate } from '../model/measured.ts';
import type { BandMinutes } from '../model/measures.ts';
import type { Band, Goal } from '../model/targets.ts';
import { BANDS } from '../targets/bands.ts';
import type { Context } from './context.ts';
import { estimates, LEVEL, WHOLE_DAYS } from './estimate.ts';
import type { Measure } from './measure.ts';

/**
 * Shares of the time with readings. Missing time counts in no band. Goals on low and high are on the cumulative
 * shares, and compare unrounded values.
 */
export const timeInBands: Measure<'timeInBands'> = {
  id: 'timeInBands',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603; edges Holt 2021, Diabetes Care 44:2589-2625; intervals ours',
  needs: { readings: 1 },
  definition: { level: LEVEL, method: WHOLE_DAYS },
  compute(shared) {
    const { readings } = shared.timeline;
    if (readings.count === 0) return { ok: false, why: 'no-readings' };
    const perDay = BANDS.map((_, band) => bandByDay(shared, band));
    const below = add(perDay[0]!, perDay[1]!);
    const above = add(perDay[3]!, perDay[4]!);
    const [veryLow, low, inRange, high, veryHigh, lows, highs] = estimates(
      shared,
      [...perDay, below, above],
      shared.dayMinutes,
    ) as [Estimate, Estimate, Estimate, Estimate, Estimate, Estimate, Estimate];
    const exclusive = { 'very-low': veryLow, low, 'in-range': inRange, high, 'very-high': veryHigh };
    const minutes = Object.fromEntries(BANDS.map((band, i) => [band, perDay[i]!.reduce(sum, 0)])) as BandMinutes;
    const cumulative = { low: lows, high: highs };
    const goals = shared.targets.goals.map((goal) => judge(goal, { ...exclusive, ...cumulative }));
    return { ok: true, value: { minutes, exclusive, cumulative, goals }, n: readings.count, of: 'readings' };
  },
};

function judge(goal: Goal, shares: Record<Band, Estimate>) {
  const { value } = shares[goal.of];
  return { ...goal, met: goal.op === '<' ? value < goal.share : value > goal.share };
}

function bandByDay({ dayBands, dayMinutes }: Context, band: number): Float64Array {
  return dayMinutes.map((_, day) => dayBands[day * 5 + band]!);
}

function add(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((minutes, day) => minutes + b[day]!);
}

function sum(a: number, b: number): number {
  return a + b;
}
