import { type DayStatistic, influence } from './dayStatistic.ts';
import { aroundPositive, type Interval } from './interval.ts';
import { type Draws, drawnQuantiles, drawnSums } from './resample.ts';

/**
 * Interval of a positive number made of sums over days, such as a coefficient of variation: at each end the wider of
 * whole days drawn again (expanded percentile) and the day-to-day error (linearised, Student's t, log scale). Null when
 * the days do not differ.
 */
export function statisticInterval(statistic: DayStatistic, draws: Draws): Interval | null {
  const { value, perDay } = influence(statistic);
  const days = perDay.length;
  const error = Math.sqrt((perDay.reduce((sum, pull) => sum + pull * pull, 0) * days) / (days - 1));
  if (!(value > 0) || error <= 1e-9 * value) return null;
  const columns = statistic.columns.map((column) => drawnSums(draws, column));
  const values = new Float64Array(draws.count);
  const sums = new Array<number>(columns.length).fill(0);
  for (let draw = 0; draw < draws.count; draw++) {
    for (let k = 0; k < columns.length; k++) sums[k] = columns[k]![draw]!;
    values[draw] = statistic.of(sums);
  }
  const again = drawnQuantiles(draws, values);
  const around = aroundPositive(value, draws.reach * error);
  return { low: Math.min(again.low, around.low), high: Math.max(again.high, around.high) };
}
