import type { LocalDate } from '../model/glucose.ts';
import type { Comparison, Noted, Side } from '../model/occasions.ts';
import { compareGroups } from '../stats/permutation.ts';
import { quantile } from '../stats/quantile.ts';
import { WINDOW } from './mealCourse.ts';

/** Days on each side before anything is compared. */
export const LEAST_DAYS = 3;
const SEED = 20_250_611;

/** What is compared of one occasion. */
export interface Seen {
  date: LocalDate;
  minute: number;
  value: number;
  low: boolean | null;
  /** What was noted beside it. */
  nearby: () => readonly Noted[];
}

/** The sides of one comparison before the guard has looked at it. */
export type Question = Pick<Comparison, 'id' | 'slot' | 'grams' | 'fromMinute' | 'of'> & {
  names: [a: string, b: string];
  a: readonly Seen[];
  b: readonly Seen[];
  /** Occasions of each side that are not among them. */
  leftOut: [a: number, b: number];
  /** Notes that part the two sides by themselves, or follow from what does. */
  given: readonly Noted['id'][];
};

export type Tried = Omit<Comparison, 'verdict' | 'alsoDiffers'> & { least: number | null };

/** Two meals differ by no more minutes above range than a meal is followed for. */
const most = (of: Comparison['of']): number => (of === 'high-minutes' ? WINDOW : Number.POSITIVE_INFINITY);

/** One value a day and side, so that a day with three snacks counts once. */
export function tryOut({ names, a, b, leftOut, given: _, ...question }: Question): Tried {
  const shown = { ...question, a: side(names[0], a, leftOut[0]), b: side(names[1], b, leftOut[1]) };
  const first = perDay(a);
  const second = perDay(b);
  if (Math.min(first.length, second.length) < LEAST_DAYS) return { ...shown, difference: null, p: null, least: null };
  const { difference, low, high, p, least } = compareGroups(first, second, SEED);
  // Between few days the interval reaches past what can be; it ends there.
  const end = most(question.of);
  return { ...shown, difference: { value: difference, low: Math.max(low, -end), high: Math.min(high, end) }, p, least };
}

function side(name: string, seen: readonly Seen[], leftOut: number): Side {
  const sorted = Float64Array.from(seen, ({ value }) => value).sort();
  const at = (p: number) => (sorted.length === 0 ? null : quantile(sorted, p));
  return {
    name,
    n: seen.length,
    median: at(0.5),
    low: at(0.25),
    high: at(0.75),
    occasions: seen.map(({ date, minute, value, low }) => ({ date, minute, value, low })),
    lows: seen.filter(({ low }) => low === true).length,
    lowsOf: seen.filter(({ low }) => low !== null).length,
    leftOut,
  };
}

function perDay(seen: readonly Seen[]): number[] {
  const days = new Map<LocalDate, { sum: number; n: number }>();
  for (const { date, value } of seen) {
    const day = days.get(date);
    if (day) {
      day.sum += value;
      day.n++;
    } else days.set(date, { sum: value, n: 1 });
  }
  return [...days.values()].map(({ sum, n }) => sum / n);
}

export const daysIn = (seen: readonly Seen[]): number => new Set(seen.map(({ date }) => date)).size;
