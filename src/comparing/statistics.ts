import type { Compared, DaySums } from '../model/thenAndNow.ts';
import type { DayStatistic } from '../stats/dayStatistic.ts';
import { square } from '../stats/elementary.ts';
import { type BoundedScale, LOG, LOGIT } from '../stats/scales.ts';
import { DAY_MINUTES } from '../time/calendar.ts';

/** Minutes of a week. */
export const WEEK = 7 * DAY_MINUTES;

type Column = (day: DaySums) => number;

const minutes: Column = (day) => day.minutes;
const bands =
  (...wanted: number[]): Column =>
  (day) =>
    wanted.reduce((sum, band) => sum + day.bands[band]!, 0);

/** What is compared, as sums over days; shares of low and high include the outer level. */
const STATISTICS: Record<Compared, { columns: Column[]; of: DayStatistic['of'] }> = {
  'in-range': { columns: [bands(2), minutes], of: ratio },
  low: { columns: [bands(0, 1), minutes], of: ratio },
  'very-low': { columns: [bands(0), minutes], of: ratio },
  high: { columns: [bands(3, 4), minutes], of: ratio },
  'very-high': { columns: [bands(4), minutes], of: ratio },
  mean: { columns: [(day) => day.sum, (day) => day.known], of: ratio },
  cv: { columns: [(day) => day.sum, (day) => day.known, (day) => day.squares], of: variation },
  lows: { columns: [(day) => day.lows * WEEK, minutes], of: ratio },
  'very-lows': { columns: [(day) => day.veryLows * WEEK, minutes], of: ratio },
  highs: { columns: [(day) => day.highs * WEEK, minutes], of: ratio },
};

/** Shares of the time are compared by their odds; everything else only knows that it is not below nothing. */
export const scaleOf = (of: Compared): BoundedScale => (SHARES.includes(of) ? LOGIT : LOG);

const SHARES: readonly Compared[] = ['in-range', 'low', 'very-low', 'high', 'very-high'];

export const COMPARED = Object.keys(STATISTICS) as Compared[];

/** How many minutes an episode is taken to last where none was seen (ours). */
export const UNSEEN_MINUTES = { low: 60, high: 120 };

/** What a few days make up and most days lack, with what one episode adds to its first column. */
export const RARE: Partial<Record<Compared, number>> = {
  low: UNSEEN_MINUTES.low,
  'very-low': UNSEEN_MINUTES.low,
  'very-high': UNSEEN_MINUTES.high,
  lows: WEEK,
  'very-lows': WEEK,
};

/** The columns of one compared number over days that hold readings. */
export function statisticOf(of: Compared, days: readonly DaySums[]): DayStatistic {
  const { columns, of: value } = STATISTICS[of];
  return { columns: columns.map((column) => Float64Array.from(days, column)), of: value };
}

// Read by place: taking a list apart costs more than the arithmetic, and this runs for every draw.
function ratio(sums: readonly number[]): number {
  return sums[0]! / sums[1]!;
}

/** Coefficient of variation, percent, of values given by their sum, count and sum of squares. */
function variation(sums: readonly number[]): number {
  const known = sums[1]!;
  const mean = sums[0]! / known;
  return (100 * Math.sqrt(Math.max(0, sums[2]! / known - square(mean)))) / mean;
}
