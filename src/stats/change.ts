import { chance } from './chance.ts';
import { type DayError, errorOf, neighbours } from './dayError.ts';
import { type DayStatistic, influence, total } from './dayStatistic.ts';
import { studentQuantile } from './distributions.ts';
import { square } from './elementary.ts';
import { noneCountedUpper } from './poisson.ts';
import { expandedTail } from './resample.ts';
import { type BoundedScale, liesOn } from './scales.ts';

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
 * Interval of `now` minus `then`. No end lies where nothing can: what was seen then cannot fall by more than all of it.
 * At each end the widest of what applies. (1) Each period's own interval, plain and on `scale`, from its day-to-day error
 * (linearised) widened for the correlation of neighbouring days, with Student's t; the two put together by recovered variances (Zou &
 * Donner 2008, Stat Med 27:1693-1702, from memory). (2) Stretches of days drawn again in both, expanded for few days.
 * (3) For `rare` ratios, which a few days make up and most days lack, (1) with the degrees of freedom of the days that
 * hold it: a sum of rare minutes is more often too small than too large, and (1) and (2) know nothing of the days not
 * seen. `rare` is what one episode adds to the top, null for other numbers. Null when neither period's days differ.
 */
export function changeInterval(
  before: DayStatistic,
  now: DayStatistic,
  drawn: { before: DrawnPeriod; now: DrawnPeriod },
  level: number,
  { scale, rare }: { scale: BoundedScale; rare: number | null },
): ChangeInterval | null {
  const sides = [
    { statistic: before, drawn: drawn.before, pull: influence(before) },
    { statistic: now, drawn: drawn.now, pull: influence(now) },
  ] as const;
  const [then, later] = [sides[0].pull.value, sides[1].pull.value];
  const change = later - then;
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
  const ends = drawnEnds(sides, degrees, t);
  const widen = (first: Around, second: Around): void => {
    ends.low = Math.min(ends.low, change - Math.sqrt(square(second.down) + square(first.up)));
    ends.high = Math.max(ends.high, change + Math.sqrt(square(second.up) + square(first.down)));
  };
  const reach = [t * Math.sqrt(a.variance), t * Math.sqrt(b.variance)] as const;
  widen({ down: reach[0], up: reach[0] }, { down: reach[1], up: reach[1] });
  widen(around(then, reach[0], scale), around(later, reach[1], scale));
  if (rare !== null) widen(aroundRare(before, a, level, rare, scale), aroundRare(now, b, level, rare, scale));
  return { change, low: Math.max(-then, ends.low), high: Math.min(scale.most - then, ends.high), correlation };
}

/** How far a value may lie below and above what was seen. */
interface Around {
  down: number;
  up: number;
}

function around(value: number, reach: number, scale: BoundedScale): Around {
  if (!liesOn(scale, value)) return { down: reach, up: reach };
  const end = (by: number) => scale.from(scale.to(value) + by * scale.slope(value));
  return { down: value - end(-reach), up: end(reach) - value };
}

/** Both ends of the changes between periods drawn again. */
function drawnEnds(sides: readonly [DrawnSide, DrawnSide], degrees: number, t: number): { low: number; high: number } {
  const again = drawnChanges(sides[0], sides[1]);
  again.sort();
  const tail = expandedTail(degrees + 1, t);
  const at = (p: number) => again[Math.min(again.length - 1, Math.max(0, Math.round(p * (again.length - 1))))]!;
  return { low: at(tail), high: at(1 - tail) };
}

/**
 * The same of what only some days hold. Where none does it may still be as many episodes as the Poisson bound allows, each
 * adding `episode` to the top of the ratio.
 */
function aroundRare(
  { columns, of }: DayStatistic,
  { variance, degrees }: DayError,
  level: number,
  episode: number,
  scale: BoundedScale,
): Around {
  const sums = columns.map(total);
  const value = of(sums);
  if (!(value > 0)) return { down: 0, up: (noneCountedUpper(level) * episode) / sums[1]! };
  const t = studentQuantile((1 + level) / 2, Math.max(2, Math.floor(Math.min(degrees, daysThatCount(columns[0]!)))));
  return around(value, t * Math.sqrt(variance), scale);
}

/** As many days as would hold the same sum if it were spread evenly (Kish 1965): two, where two days hold nearly all. */
export function daysThatCount(perDay: Float64Array): number {
  let squares = 0;
  for (let day = 0; day < perDay.length; day++) squares += square(perDay[day]!);
  return square(total(perDay)) / squares;
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
