import type { DaySums, PeriodSums } from '../model/thenAndNow.ts';
import type { Context } from './context.ts';
import { type Course, lastsLong } from './course.ts';
import { nightStates } from './nights.ts';

/** The period as sums of its days: all that a later comparison needs, and nothing about who it was. */
export function periodSums(shared: Context): PeriodSums {
  const { timeline, targets } = shared;
  return {
    targets: targets.id,
    unit: timeline.unit,
    interval: timeline.interval,
    sensors: timeline.spells.length,
    days: daySums(shared),
  };
}

export function daySums(shared: Context): DaySums[] {
  const { timeline, dayBands, dayMinutes } = shared;
  const { day, mgdl, weight, count } = timeline.readings;
  const size = timeline.days.length;
  const known = new Float64Array(size);
  const sum = new Float64Array(size);
  const squares = new Float64Array(size);
  for (let i = 0; i < count; i++) {
    const value = mgdl[i]!;
    if (Number.isNaN(value)) continue;
    const d = day[i]!;
    const minutes = weight[i]!;
    known[d] = known[d]! + minutes;
    sum[d] = sum[d]! + value * minutes;
    squares[d] = squares[d]! + value * value * minutes;
  }
  const begun = (courses: Course[]): Float64Array => {
    const perDay = new Float64Array(size);
    for (const { first } of courses) perDay[day[first]!] = perDay[day[first]!]! + 1;
    return perDay;
  };
  const lows = begun(shared.lows());
  const veryLows = begun(shared.lows().filter(({ longestOuter }) => lastsLong(longestOuter)));
  const highs = begun(shared.highs());
  const nights = nightStates(shared);
  return timeline.days.map(({ date, minutes: length }, d) => ({
    date,
    length,
    minutes: dayMinutes[d]!,
    known: known[d]!,
    sum: sum[d]!,
    squares: squares[d]!,
    bands: Array.from(dayBands.subarray(d * 5, d * 5 + 5)) as DaySums['bands'],
    lows: lows[d]!,
    veryLows: veryLows[d]!,
    highs: highs[d]!,
    nightLow: nights[d] === 'unknown' ? null : nights[d] !== 'none-seen',
  }));
}
