import { chance } from './chance.ts';
import { type DayStatistic, influence } from './dayStatistic.ts';
import { normalCdf, studentQuantile } from './distributions.ts';

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
const LEAST_CORRELATION = 0.25;
const MOST_CORRELATION = 0.6;

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
 * Interval of `now` minus `then`: at each end the wider of two. (1) The day-to-day error of both (linearised), widened
 * for the correlation of neighbouring days, with Student's t. (2) Stretches of days drawn again in both, expanded for
 * few days. Null when neither period's days differ.
 */
export function changeInterval(
  before: DayStatistic,
  now: DayStatistic,
  drawn: { before: DrawnPeriod; now: DrawnPeriod },
  level: number,
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
  const degrees = Math.max(2, Math.floor(variance ** 2 / (a.variance ** 2 / a.degrees + b.variance ** 2 / b.degrees)));
  const t = studentQuantile((1 + level) / 2, degrees);
  const reach = t * Math.sqrt(variance);
  const again = drawnChanges(sides[0], sides[1]);
  again.sort();
  const tail = normalCdf(-t * Math.sqrt((degrees + 1) / degrees));
  const at = (p: number) => again[Math.min(again.length - 1, Math.max(0, Math.round(p * (again.length - 1))))]!;
  return {
    change,
    low: Math.min(change - reach, at(tail)),
    high: Math.max(change + reach, at(1 - tail)),
    correlation,
  };
}

interface DayError {
  variance: number;
  degrees: number;
}

/**
 * Variance of a sum of n pulls whose neighbours correlate by a, a², a³ …: the usual one times `more`, and the spread
 * itself is seen too small by (more - 1) / (n - 1).
 */
function errorOf(pull: Float64Array, a: number): DayError {
  const n = pull.length;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += pull[i]! ** 2;
  const more = (1 + a) / (1 - a) - (2 * a * (1 - a ** n)) / (n * (1 - a) ** 2);
  const seen = 1 - (more - 1) / (n - 1);
  return { variance: (squares * n * more) / ((n - 1) * seen), degrees: Math.max(1, n / more - 1) };
}

/** Correlation of neighbouring days in all periods together, corrected for the few days behind it (Kendall 1954). */
function neighbours(periods: { pull: Float64Array; place: Int32Array }[]): number {
  let products = 0;
  let pairs = 0;
  let squares = 0;
  let days = 0;
  for (const { pull, place } of periods) {
    let own = 0;
    for (let i = 0; i < pull.length; i++) own += pull[i]! ** 2;
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
  const likely = (seen + 1 / n) / Math.max(0.3, 1 - 4 / n);
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
