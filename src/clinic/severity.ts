import type { Facts, Severity, SeverityPart } from '../model/clinic.ts';

/** Minutes of a week. */
const WEEK = 7 * 1440;

/**
 * What counts 10 points. Very low: 1 % of the time, the goal for most adults (Battelino 2019, Diabetes Care 42:1593-1603), in
 * minutes a week. Longest low: the minutes from which a low is called extended (Battelino 2023, Lancet Diabetes Endocrinol
 * 11:42-57, from memory). One very low night in so many, and hours on end above the very high limit: ours.
 */
export const TEN = { veryLow: 0.01 * WEEK, longestLow: 120, nights: 7, unbrokenHigh: 360 } as const;
/** A low night counts so much of a very low one. Ours. */
const LOW_NIGHT = 0.25;
/** Points for each long high without insulin noted, and the most of these that count; for what moved since last time. Ours. */
export const OURS = { noInsulin: 5, mostHighs: 3, worseLows: 10, worse: 5, agreed: 5 } as const;

const LOWS: readonly string[] = ['low', 'very-low', 'lows', 'very-lows'];

/**
 * How much presses, in whole points that can be added up by hand: 10 is what a published limit allows, or one of ours. What
 * could not be worked out counts nothing.
 */
export function severityOf(facts: Facts): Severity {
  const { shares, lows, highs, change, lastTime } = facts;
  const known = (facts.nights ?? []).filter((state) => state !== 'unknown');
  const nights = known.reduce((sum, state) => sum + (state === 'very-low' ? 1 : state === 'low' ? LOW_NIGHT : 0), 0);
  const worseNights = lastTime?.measure?.way === 'worse' && lastTime.measure.of === 'nights-low';
  const worse = change?.worse ?? [];
  const isAgreed = (lastTime?.goal ?? lastTime?.step) !== undefined;
  const exact: Record<SeverityPart, number> = {
    veryLow: (10 * (shares?.veryLow ?? 0) * WEEK) / TEN.veryLow,
    longestLow: (10 * (lows?.longest ?? 0)) / TEN.longestLow,
    nights: known.length > 0 ? (10 * TEN.nights * nights) / known.length : 0,
    unbrokenHigh: (10 * (highs?.longestLevel2 ?? 0)) / TEN.unbrokenHigh,
    noInsulin: OURS.noInsulin * Math.min(OURS.mostHighs, highs?.withoutInsulin ?? 0),
    worse: worseNights || worse.some((of) => LOWS.includes(of)) ? OURS.worseLows : worse.length > 0 ? OURS.worse : 0,
    agreed: isAgreed && lastTime?.measure?.way !== 'better' ? OURS.agreed : 0,
  };
  const parts = (Object.keys(exact) as SeverityPart[]).map((of) => ({ of, points: Math.round(exact[of]) }));
  return {
    points: parts.reduce((sum, { points }) => sum + points, 0),
    parts: parts.filter(({ points }) => points > 0),
  };
}

export const NOTHING: Severity = { points: 0, parts: [] };
