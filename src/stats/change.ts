import { alikeDays } from './alike.ts';
import { chance } from './chance.ts';
import { type DayStatistic, influence, total } from './dayStatistic.ts';
import { studentQuantile } from './distributions.ts';
import { exp, square } from './elementary.ts';
import { noneCountedUpper } from './poisson.ts';
import { expandedTail } from './resample.ts';

/** Days of one period in order, each with its number on the calendar, and how often each draw took each day. */
export interface DrawnPeriod {
  place: Int32Array;
  draws: Uint8Array;
  count: number;
}

export interface ChangeInterval {
  change: number;
  low: number;
  high: number;
  /** Correlation between neighbouring days that the interval answers for. */
  correlation: number;
}

/**
 * Days resemble their neighbours. Two fortnights tell a correlation of days so badly that an estimate of 0 is worth
 * little, so this much is always answered for (ours; tests/comparing shows what it gives). Above the upper bound a
 * fortnight holds too few independent days for any interval.
 */
const LEAST_CORRELATION = 0.3;
const MOST_CORRELATION = 0.6;
/** Part of the estimate's standard error that is added to it: too small an estimate calls chance a change (ours). */
const CAUTION = 0.5;

/** Draws stretches of neighbouring days with replacement (circular blocks, Politis & Romano 1992), n days a draw. */
export function drawPeriod(place: Int32Array, count: number, seed: number): DrawnPeriod {
  const days = place.length;
  const block = days < 20 ? 2 : 3;
  const next = chance(seed);
  const draws = new Uint8Array(days * count);
  for (let draw = 0; draw < count; draw++) {
    const from = draw * days;
    for (let taken = 0; taken < days; ) {
      const start = Math.floor(next() * days);
      for (let step = 0; step < block && taken < days; step++, taken++) {
        const cell = from + ((start + step) % days);
        draws[cell] = draws[cell]! + 1;
      }
    }
  }
  return { place, draws, count };
}

/**
 * Interval of `now` minus `then`: at each end the widest of what applies. (1) The day-to-day error of both (linearised),
 * widened for the correlation of neighbouring days, with Student's t. (2) Stretches of days drawn again in both, expanded
 * for few days. (3) For `rare` ratios, which a few days make up and most days lack: each period's own interval on the log
 * scale, the two put together by recovered variances (Zou & Donner 2008, Stat Med 27:1693-1702, from memory); a sum of
 * rare minutes is more often too small than too large, and (1) and (2) know nothing of the days not seen. `rare` is what
 * one episode adds to the top, null for other numbers. Null when neither period's days differ.
 */
export function changeInterval(
  before: DayStatistic,
  now: DayStatistic,
  drawn: { before: DrawnPeriod; now: DrawnPeriod },
  level: number,
  rare: number | null,
): ChangeInterval | null {
  const sides = [
    { statistic: before, drawn: drawn.before, pull: influence(before) },
    { statistic: now, drawn: drawn.now, pull: influence(now) },
  ] as const;
  const change = sides[1].pull.value - sides[0].pull.value;
  const correlation = neighbours(sides.map(({ pull, drawn }) => ({ pull: pull.perDay, place: drawn.place })));
  const [a, b] = sides.map(({ pull }) => errorOf(pull.perDay, correlation)) as [DayError, DayError];
  const variance = a.variance + b.variance;
  if (!(variance > 0)) return null;
  // Welch's degrees of freedom, from days that count for fewer than they are.
  const degrees = Math.max(
    2,
    Math.floor(square(variance) / (square(a.variance) / a.degrees + square(b.variance) / b.degrees)),
  );
  const t = studentQuantile((1 + level) / 2, degrees);
  const reach = t * Math.sqrt(variance);
  const again = drawnChanges(sides[0], sides[1]);
  again.sort();
  const tail = expandedTail(degrees + 1, t);
  const at = (p: number) => again[Math.min(again.length - 1, Math.max(0, Math.round(p * (again.length - 1))))]!;
  const ends = { low: Math.min(change - reach, at(tail)), high: Math.max(change + reach, at(1 - tail)) };
  if (rare !== null) {
    const [then, later] = [aroundRare(before, a, level, rare), aroundRare(now, b, level, rare)];
    ends.low = Math.min(ends.low, change - Math.sqrt(square(later.down) + square(then.up)));
    ends.high = Math.max(ends.high, change + Math.sqrt(square(later.up) + square(then.down)));
  }
  return { change, ...ends, correlation };
}

/**
 * How far a ratio of sums (top over bottom) may lie below and above what was seen, on the log scale. Where the top is 0
 * it may still be as many episodes as the Poisson bound allows, each adding `episode` to the top.
 */
function aroundRare(
  { columns, of }: DayStatistic,
  { variance, degrees }: DayError,
  level: number,
  episode: number,
): { down: number; up: number } {
  const sums = columns.map(total);
  const value = of(sums);
  if (!(value > 0)) return { down: 0, up: (noneCountedUpper(level) * episode) / sums[1]! };
  const t = studentQuantile((1 + level) / 2, Math.max(2, Math.floor(Math.min(degrees, daysThatCount(columns[0]!)))));
  const factor = exp((t * Math.sqrt(variance)) / value);
  return { down: value - value / factor, up: value * factor - value };
}

/** As many days as would hold the same sum if it were spread evenly (Kish 1965): two, where two days hold nearly all. */
function daysThatCount(perDay: Float64Array): number {
  let squares = 0;
  for (let day = 0; day < perDay.length; day++) squares += square(perDay[day]!);
  return square(total(perDay)) / squares;
}

interface DayError {
  variance: number;
  degrees: number;
}

function errorOf(pull: Float64Array, a: number): DayError {
  const n = pull.length;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += square(pull[i]!);
  const { times, degrees } = alikeDays(n, a);
  return { variance: ((squares * n) / (n - 1)) * times, degrees };
}

/** Correlation of neighbouring days in all periods together, corrected for the few days behind it (Kendall 1954). */
function neighbours(periods: { pull: Float64Array; place: Int32Array }[]): number {
  let products = 0;
  let pairs = 0;
  let squares = 0;
  let days = 0;
  for (const { pull, place } of periods) {
    let own = 0;
    for (let i = 0; i < pull.length; i++) own += square(pull[i]!);
    if (own === 0) continue;
    // Each period in its own spread, so that the wider one does not speak for both.
    const spread = own / pull.length;
    for (let i = 1; i < pull.length; i++) {
      if (place[i]! - place[i - 1]! !== 1) continue;
      products += (pull[i]! * pull[i - 1]!) / spread;
      pairs++;
    }
    squares += pull.length;
    days += pull.length;
  }
  if (pairs < 8) return LEAST_CORRELATION;
  const n = days / periods.length;
  const seen = products / pairs / (squares / days);
  const likely = (seen + 1 / n) / Math.max(0.3, 1 - 4 / n) + CAUTION / Math.sqrt(pairs);
  return Math.min(MOST_CORRELATION, Math.max(LEAST_CORRELATION, likely));
}

interface DrawnSide {
  statistic: DayStatistic;
  drawn: DrawnPeriod;
}

function drawnChanges(before: DrawnSide, now: DrawnSide): Float64Array {
  const earlier = drawnValues(before);
  return drawnValues(now).map((value, draw) => value - earlier[draw]!);
}

function drawnValues({ statistic: { columns, of }, drawn: { draws, count } }: DrawnSide): Float64Array {
  const days = columns[0]!.length;
  const values = new Float64Array(count);
  const sums = new Array<number>(columns.length).fill(0);
  for (let draw = 0; draw < count; draw++) {
    sums.fill(0);
    for (let day = 0; day < days; day++) {
      const times = draws[draw * days + day]!;
      if (times === 0) continue;
      for (let k = 0; k < columns.length; k++) sums[k] = sums[k]! + times * columns[k]![day]!;
    }
    values[draw] = of(sums);
  }
  return values;
}
