import { UNSEEN_MINUTES } from '../comparing/statistics.ts';
import type { Estimate } from '../model/measured.ts';
import type { BandMinutes } from '../model/measures.ts';
import type { Band, Goal } from '../model/targets.ts';
import { noneCountedUpper } from '../stats/poisson.ts';
import { BANDS, IN_RANGE } from '../targets/bands.ts';
import type { Context } from './context.ts';
import { enoughSeen } from './coverage.ts';
import { estimate, fullDays, INTERVAL_DAYS, LEVEL, WHOLE_DAYS } from './estimate.ts';
import type { Measure } from './measure.ts';

const NONE_SEEN = 'none-seen';

/**
 * Shares of the time with readings. Missing time counts in no band. Goals on low and high are on the cumulative
 * shares, and compare unrounded values; with less than enough data nobody is told that one is met or not.
 */
export const timeInBands: Measure<'timeInBands'> = {
  id: 'timeInBands',
  source: 'Battelino 2019, Diabetes Care 42:1593-1603; Holt 2021, Diabetes Care 44:2589-2625; Daybands',
  needs: { readings: 1 },
  definition: { level: LEVEL, method: WHOLE_DAYS, lowMinutes: UNSEEN_MINUTES.low, highMinutes: UNSEEN_MINUTES.high },
  compute(shared) {
    const { readings } = shared.timeline;
    const perDay = BANDS.map((_, band) => bandByDay(shared, band));
    const below = add(perDay[0]!, perDay[1]!);
    const above = add(perDay[3]!, perDay[4]!);
    const share = (minutes: Float64Array, episode: number | null) =>
      bounded(shared, estimate(shared, minutes, shared.dayMinutes, 'share'), episode);
    const exclusive = Object.fromEntries(
      BANDS.map((band, i) => [
        band,
        i === IN_RANGE
          ? within(share(perDay[i]!, null), () => share(add(below, above), UNSEEN_MINUTES.high))
          : share(perDay[i]!, i < IN_RANGE ? UNSEEN_MINUTES.low : UNSEEN_MINUTES.high),
      ]),
    ) as Record<Band, Estimate>;
    const minutes = Object.fromEntries(BANDS.map((band, i) => [band, perDay[i]!.reduce(sum, 0)])) as BandMinutes;
    const cumulative = {
      low: holding(share(below, UNSEEN_MINUTES.low), exclusive['very-low']),
      high: holding(share(above, UNSEEN_MINUTES.high), exclusive['very-high']),
    };
    const goals = shared.targets.goals.map((goal) => judge(goal, { ...exclusive, ...cumulative }));
    return {
      ok: true,
      value: { minutes, exclusive, cumulative, goals, judged: enoughSeen(shared) },
      n: readings.count,
      of: 'readings',
    };
  },
};

/**
 * A share of 0 still leaves room for some: as many episodes as the exact Poisson bound allows when none was counted
 * (Garwood 1936), each of a usual length. Ours; a share of 0 says nothing about how days differ.
 */
function bounded(shared: Context, seen: Estimate, episode: number | null): Estimate {
  if (episode === null || seen.value > 0 || fullDays(shared) < INTERVAL_DAYS) return seen;
  const minutes = shared.dayMinutes.reduce(sum, 0);
  return { ...seen, low: 0, high: Math.min(1, (noneCountedUpper(LEVEL) * episode) / minutes), method: NONE_SEEN };
}

/** Where nothing lay outside, the rest of what the bound leaves room for: all in range still leaves room for some outside. */
function within(seen: Estimate, shareOutside: () => Estimate): Estimate {
  if (seen.value < 1) return seen;
  const outside = shareOutside();
  if (outside.value > 0 || outside.high === null) return seen;
  return { ...seen, low: 1 - outside.high, high: 1, method: outside.method };
}

/** A part for which more is left open, as none of it was seen, leaves as much open for the whole. */
function holding(whole: Estimate, part: Estimate): Estimate {
  if (whole.high === null || part.high === null || part.high <= whole.high) return whole;
  return { ...whole, high: part.high };
}

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
