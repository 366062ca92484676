import type { Measured } from '../model/measured.ts';
import type { Goal } from '../model/targets.ts';
import type {
  Change,
  Compared,
  DaySums,
  GoalThenAndNow,
  PeriodFacts,
  PeriodSums,
  ThenAndNow,
} from '../model/thenAndNow.ts';
import { changeInterval, type DrawnPeriod, daysThatCount, drawPeriod } from '../stats/change.ts';
import { type DayStatistic, total } from '../stats/dayStatistic.ts';
import { ENOUGH_DAYS, SEEN_SHARE } from '../targets/consensus.ts';
import { targetSets } from '../targets/index.ts';
import { DAY_MS, midnightOf } from '../time/calendar.ts';
import { COMPARED, RARE, scaleOf, statisticOf } from './statistics.ts';

export const LEVEL = 0.95;
export const DRAWS = 1000;
/** Days with 70 % of their minutes that each side asks for. */
export const NEEDED_DAYS = 10;
const SEEDS = { before: 20190608, now: 20170912 };

/**
 * Changes below these are not called one. 5 points of time in range: Battelino 2019, Diabetes Care 42:1593-1603, said
 * of type 1 (for adults from memory). All others are ours.
 */
export const SMALLEST: Record<Compared, number> = {
  'in-range': 0.05,
  low: 0.01,
  'very-low': 0.005,
  high: 0.05,
  'very-high': 0.025,
  mean: 9,
  cv: 3,
  lows: 1,
  'very-lows': 0.5,
  highs: 2,
};

const BANDED: readonly Compared[] = ['in-range', 'low', 'very-low', 'high', 'very-high', 'lows', 'very-lows', 'highs'];
const COUNTED: readonly Compared[] = ['lows', 'very-lows', 'highs'];
/** As many days as would hold a rare thing evenly (Kish 1965), of both periods together, before its change is looked at (ours). */
export const NEEDED_EVEN = 6;

export type Comparison = Measured<Omit<ThenAndNow, 'with' | 'text'>>;

/** Puts two periods side by side. Days in both count in "now" only. */
export function compare(earlier: PeriodSums, now: PeriodSums): Comparison {
  const dates = new Set(now.days.map(({ date }) => date));
  const before = { ...earlier, days: earlier.days.filter(({ date }) => !dates.has(date)) };
  const days = { before: seen(before.days), now: seen(now.days) };
  if (days.before.length === 0) return { ok: false, why: 'no-earlier-readings' };
  if (days.now.length === 0) return { ok: false, why: 'no-readings' };
  const sides = { before: { sums: before, days: days.before }, now: { sums: now, days: days.now } };
  const drawn = { before: draw(days.before, SEEDS.before), now: draw(days.now, SEEDS.now) };
  const facts = { before: factsOf(before), now: factsOf(now) };
  const changes = COMPARED.filter((of) => hasBand(of, now)).map((of) => changeIn(of, sides, drawn, facts));
  const value = {
    ...facts,
    differs: differences(facts.before, facts.now, before, now),
    sharedDays: earlier.days.length - before.days.length,
    changes,
    goals: goalsOf(now.targets === before.targets ? targetSets[now.targets].goals : [], changes, facts),
  };
  return { ok: true, value, n: days.before.length + days.now.length, of: 'days' };
}

const LOWS_FIRST: readonly Goal['of'][] = ['low', 'very-low', 'in-range', 'high', 'very-high'];

function goalsOf(
  goals: readonly Goal[],
  changes: readonly Change[],
  facts: { before: PeriodFacts; now: PeriodFacts },
): GoalThenAndNow[] {
  const judged = Object.values(facts).every(({ days, share }) => days >= ENOUGH_DAYS && share >= SEEN_SHARE);
  if (!judged) return [];
  const met = ({ op, share }: Goal, value: number) => (op === '<' ? value < share : value > share);
  return LOWS_FIRST.flatMap((of): GoalThenAndNow[] => {
    const goal = goals.find((each) => each.of === of);
    const change = changes.find((each) => each.of === of);
    if (!goal || !change) return [];
    const { before, now } = change;
    return [{ of, share: goal.share, before, now, metBefore: met(goal, before), metNow: met(goal, now) }];
  });
}

const seen = (days: readonly DaySums[]): DaySums[] => days.filter(({ minutes, known }) => minutes > 0 && known > 0);

const draw = (days: readonly DaySums[], seed: number): DrawnPeriod =>
  drawPeriod(
    Int32Array.from(days, ({ date }) => midnightOf(date) / DAY_MS),
    DRAWS,
    seed,
  );

/** Sets without a second high level have nothing very high. */
const hasBand = (of: Compared, { targets }: PeriodSums): boolean =>
  of !== 'very-high' || !targets.startsWith('pregnancy');

interface Sides {
  before: { sums: PeriodSums; days: DaySums[] };
  now: { sums: PeriodSums; days: DaySums[] };
}

function changeIn(
  of: Compared,
  { before, now }: Sides,
  drawn: { before: DrawnPeriod; now: DrawnPeriod },
  facts: { before: PeriodFacts; now: PeriodFacts },
): Change {
  const [a, b] = [statisticOf(of, before.days), statisticOf(of, now.days)];
  const summed = ({ columns, of: statistic }: typeof a) => statistic(columns.map(total));
  const values = { before: summed(a), now: summed(b) };
  const smallest = SMALLEST[of];
  const known = { of, ...values, change: values.now - values.before, smallest };
  const untold = (why: NonNullable<Change['why']>): Change => ({
    ...known,
    low: null,
    high: null,
    verdict: 'cannot-tell',
    why,
  });
  if (BANDED.includes(of) && before.sums.targets !== now.sums.targets) return untold('other-targets');
  if (COUNTED.includes(of) && before.sums.interval !== now.sums.interval) return untold('other-interval');
  if (facts.before.fullDays < NEEDED_DAYS || facts.now.fullDays < NEEDED_DAYS) return untold('few-days');
  const rare = RARE[of] ?? null;
  const even = evenDays(a) + evenDays(b);
  if (rare !== null && even > 0 && even < NEEDED_EVEN) return untold('few-seen');
  const interval = changeInterval(a, b, drawn, LEVEL, { scale: scaleOf(of), rare });
  if (interval === null) return untold('none-seen');
  const { low, high } = interval;
  const sure = low > 0 || high < 0;
  const large = Math.abs(known.change) >= smallest;
  return { ...known, low, high, verdict: sure && large ? 'more-than-noise' : 'not-told-apart' };
}

const evenDays = ({ columns }: DayStatistic): number => (total(columns[0]!) > 0 ? daysThatCount(columns[0]!) : 0);

/** Whether 70 % of a day was seen. */
export const isFull = ({ minutes, length }: DaySums): boolean => minutes >= SEEN_SHARE * length;

/** A period's days and how much of them was seen. */
export function factsOf({ days, interval, sensors }: PeriodSums): PeriodFacts {
  const length = days.reduce((sum, day) => sum + day.length, 0);
  return {
    from: days[0]!.date,
    to: days.at(-1)!.date,
    days: days.length,
    fullDays: days.filter(isFull).length,
    share: days.reduce((sum, day) => sum + Math.min(day.length, day.minutes), 0) / length,
    interval,
    sensors,
  };
}

function differences(a: PeriodFacts, b: PeriodFacts, before: PeriodSums, now: PeriodSums): ThenAndNow['differs'] {
  const found: ThenAndNow['differs'] = [];
  if (a.days !== b.days) found.push('lengths');
  if (before.interval !== now.interval) found.push('interval');
  if (before.targets !== now.targets) found.push('targets');
  if (before.unit !== now.unit) found.push('unit');
  return found;
}
