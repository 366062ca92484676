import { DRAWS, LEVEL, NEEDED_EVEN } from '../comparing/thenAndNow.ts';
import type { Times } from '../model/occasions.ts';
import type { DaySums } from '../model/thenAndNow.ts';
import type { CountThenAndNow } from '../model/visits.ts';
import { changeInterval, daysThatCount, drawPeriod } from '../stats/change.ts';
import type { DayStatistic } from '../stats/dayStatistic.ts';
import { total } from '../stats/dayStatistic.ts';
import { exactTable } from '../stats/exactTable.ts';
import { LOGIT } from '../stats/scales.ts';
import { DAY_MS, midnightOf } from '../time/calendar.ts';

const SEEDS = { before: 20260412, now: 20260917 };
/** A change that would come by chance once in so many. */
const CHANCE = 0.05;

/** Occasions apart from one another, such as days with a note: Fisher's exact test of the two shares. */
export function occasionsThenAndNow(then: Times, now: Times | null): CountThenAndNow {
  if (now === null || now.n === 0) return { before: then, now, verdict: 'cannot-tell', why: 'none' };
  const { p } = exactTable(then.k, then.n, now.k, now.n);
  const likeliest = [0, now.n].map((k) => exactTable(then.k, then.n, k, now.n).p);
  if (p >= CHANCE && Math.min(...likeliest) >= CHANCE) return { before: then, now, verdict: 'cannot-tell', why: 'few' };
  return { before: then, now, verdict: p < CHANCE ? 'more-than-noise' : 'not-told-apart' };
}

/**
 * Nights one after another, which resemble their neighbours: the interval of a rare share's change, as for time low. Days of
 * both periods count in the later one.
 */
export function nightsThenAndNow(before: readonly DaySums[], now: readonly DaySums[], then: Times): CountThenAndNow {
  const dates = new Set(now.map(({ date }) => date));
  const canTell = ({ nightLow }: DaySums) => nightLow !== null;
  const [first, second] = [before.filter((day) => canTell(day) && !dates.has(day.date)), now.filter(canTell)];
  const low = (days: readonly DaySums[]): number => days.filter(({ nightLow }) => nightLow).length;
  if (second.length === 0) return { before: then, now: null, verdict: 'cannot-tell', why: 'none' };
  const found = { before: then, now: { k: low(second), n: second.length } };
  const [a, b] = [statistic(first), statistic(second)];
  const nights = [a, b].reduce(
    (sum, { columns }) => sum + (total(columns[0]!) > 0 ? daysThatCount(columns[0]!) : 0),
    0,
  );
  if (first.length === 0 || nights < NEEDED_EVEN) return { ...found, verdict: 'cannot-tell', why: 'few' };
  const drawn = { before: draw(first, SEEDS.before), now: draw(second, SEEDS.now) };
  const interval = changeInterval(a, b, drawn, LEVEL, { scale: LOGIT, rare: 1 });
  const sure = interval !== null && (interval.low > 0 || interval.high < 0);
  return { ...found, verdict: sure ? 'more-than-noise' : 'not-told-apart' };
}

const statistic = (days: readonly DaySums[]): DayStatistic => ({
  columns: [Float64Array.from(days, ({ nightLow }) => (nightLow ? 1 : 0)), new Float64Array(days.length).fill(1)],
  of: (sums) => sums[0]! / sums[1]!,
});

const draw = (days: readonly DaySums[], seed: number) =>
  drawPeriod(
    Int32Array.from(days, ({ date }) => midnightOf(date) / DAY_MS),
    DRAWS,
    seed,
  );
