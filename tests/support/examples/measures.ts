import type { LocalDate, MgPerDl } from '../../../src/model/glucose.ts';
import type { Estimate, Measured } from '../../../src/model/measured.ts';
import type * as M from '../../../src/model/measures.ts';
import type { Band } from '../../../src/model/targets.ts';
import { addDays } from '../../../src/time/calendar.ts';

/** Small made-up measures for the findings' own examples. Days run from Monday 1 January 2024. */
export const exampleDate = (day: number): LocalDate => addDays('2024-01-01', day);

export const mg = (value: number) => value as MgPerDl;
export const listed = <T>(n: number, make: (day: number) => T): T[] => Array.from({ length: n }, (_, day) => make(day));

export const exampleEstimate = (value: number): Estimate => ({
  value,
  low: value * 0.6,
  high: Math.min(1, value * 1.4),
  level: 0.95,
  method: 'whole-day-resampling',
  days: 14,
});

/** Days with the same share of readings by day and night. */
export function seenCoverage(days: number, share: number, nightShare = share): Measured<M.Coverage> {
  const value: M.Coverage = {
    share,
    hours: days * 24 * share,
    ofHours: days * 24,
    night: { share: nightShare, hours: days * 6 * nightShare, ofHours: days * 6 },
    byDay: listed(days, (day) => ({ date: exampleDate(day), share, hours: 24 * share })),
    byHour: listed(24, (hour) => (hour < 6 ? nightShare : share)),
    daysWithReadings: share > 0 ? days : 0,
    fullDays: share >= 0.7 ? days : 0,
    enough: days >= 14 && share >= 0.7,
    reached72h: days * 24 * share >= 72,
    wholeDay: days * 24 * share >= 72 && nightShare >= share / 2,
    missing: { hole: days * 1440 * (1 - share), change: 0, edge: 0 },
  };
  return { ok: true, value, n: value.daysWithReadings, of: 'days' };
}

/** `n` nights, the last of them different when `last` is given. */
export function nightsLike(n: number, usual: Partial<M.Night> = {}, last: Partial<M.Night> = {}): Measured<M.Night[]> {
  const value = listed(
    n,
    (day): M.Night => ({
      date: exampleDate(day),
      share: 1,
      state: 'none-seen',
      outside: false,
      lowMinutes: 0,
      veryLowMinutes: 0,
      highMinutes: 0,
      lowest: mg(95),
      lowestLimit: 0,
      lowestMinute: 180,
      longestLow: 0,
      ...usual,
      ...(day === n - 1 ? last : {}),
    }),
  );
  return { ok: true, value, n, of: 'nights' };
}

/** Minutes in the bands given, none in the others. */
export function bandsLike(
  given: Partial<M.BandMinutes>,
  ...goals: M.TimeInBands['goals']
): Measured<M.TimeInBands> & { ok: true } {
  const minutes = { 'very-low': 0, low: 0, 'in-range': 0, high: 0, 'very-high': 0, ...given };
  const total = Object.values(minutes).reduce((sum, each) => sum + each, 0);
  const of = (...bands: Band[]) => exampleEstimate(bands.reduce((sum, band) => sum + minutes[band], 0) / (total || 1));
  const exclusive = {
    'very-low': of('very-low'),
    low: of('low'),
    'in-range': of('in-range'),
    high: of('high'),
    'very-high': of('very-high'),
  };
  const cumulative = { low: of('very-low', 'low'), high: of('high', 'very-high') };
  return { ok: true, value: { minutes, exclusive, cumulative, goals, judged: true }, n: 4032, of: 'readings' };
}

/** The same of too few readings for a verdict. */
export function openBandsLike(...given: Parameters<typeof bandsLike>): Measured<M.TimeInBands> {
  const bands = bandsLike(...given);
  return { ...bands, value: { ...bands.value, judged: false } };
}

/** A day of 24 bins, each with the same lower edge; `wide` widens the middle half of single hours. */
export function modalDayLike(p25: number, wide: Record<number, number> = {}): Measured<M.ModalDay> {
  const bins = listed(24, (hour): M.ModalBin => {
    const width = wide[hour] ?? 50;
    return {
      minute: hour * 60,
      p5: p25 - 15,
      p25,
      p50: p25 + 20,
      p75: p25 + width,
      p95: p25 + width + 60,
      n: 168,
      days: 14,
    };
  });
  return { ok: true, value: { binMinutes: 60, bins, raw: bins }, n: 14, of: 'days' };
}

/** One day for each share in range. */
export function daysLike(inRange: number[], given: Partial<M.DailySummary> = {}): Measured<M.DailySummary[]> {
  const value = inRange.map(
    (share, day): M.DailySummary => ({
      date: exampleDate(day),
      share: 1,
      mean: mg(150),
      lowest: mg(75),
      highest: mg(260),
      limits: { lowest: 0, highest: 0 },
      bound: null,
      minutes: { 'very-low': 0, low: 0, 'in-range': share * 1440, high: (1 - share) * 1440, 'very-high': 0 },
      inRange: share,
      full: true,
      ...given,
    }),
  );
  return { ok: true, value, n: value.length, of: 'days' };
}

/** One window from 18:00 to 22:00, the hardest and the best at once. */
export function windowsLike(days: number, good: number, high = 0.5): Measured<M.DayWindows> {
  const goodDays = listed(good, exampleDate);
  const window = { fromMinute: 1080, toMinute: 1320, inRange: 1 - high, low: 0, high, days, goodDays };
  return { ok: true, value: { best: window, hardest: window, all: [window] }, n: days, of: 'days' };
}

export function dawnLike(rises: number[]): Measured<M.DawnRise> {
  const nights = rises.map((rise, day) => ({
    date: exampleDate(day),
    nadir: mg(100),
    nadirMinute: 200,
    before: mg(100 + rise),
    rise,
  }));
  const sorted = [...rises].sort((a, b) => a - b);
  const value = { nights, median: sorted[Math.floor(sorted.length / 2)] ?? 0, leftOut: 0 };
  return { ok: true, value, n: nights.length, of: 'nights' };
}

export function meanLike(value: number, above = 0, below = 0): Measured<M.MeanGlucose> {
  const censored = above + below;
  const bound = censored === 0 ? null : below === 0 ? 'lower' : above === 0 ? 'upper' : 'both';
  const mgdl = { ...exampleEstimate(0), value, low: value - 12, high: value + 12 };
  return {
    ok: true,
    value: { mgdl, bounded: censored > 0, bound, censored, below, above },
    n: 4032,
    of: 'readings',
  };
}
