import type { MgPerDl } from '../model/glucose.ts';
import type { WeekParts } from '../model/readingOrders.ts';
import { quantile } from '../stats/quantile.ts';
import { mgPerDl } from '../units.ts';
import type { Context } from './context.ts';
import type { Measure } from './measure.ts';

const SATURDAY = 6;
const LEAST_DAYS = 3;

/** The usual day from Monday to Friday and at the weekend, by clock hour. Three days a side (ours); no verdict. */
export const weekParts: Measure<'weekParts'> = {
  id: 'weekParts',
  source: 'Daybands',
  needs: { days: LEAST_DAYS * 2 },
  definition: { leastDays: LEAST_DAYS },
  compute(shared) {
    const { days } = shared.timeline;
    const seen = days.map(({ weekday, from, to }, day) => ({ day, weekend: weekday >= SATURDAY, any: to > from }));
    const of = (weekend: boolean) => seen.filter((one) => one.any && one.weekend === weekend).map(({ day }) => day);
    const [weekdays, weekends] = [of(false), of(true)];
    if (weekdays.length < LEAST_DAYS || weekends.length < LEAST_DAYS) return { ok: false, why: 'too-few-days' };
    const value: WeekParts = {
      weekdays: weekdays.length,
      weekends: weekends.length,
      hours: Array.from({ length: 24 }, (_, hour) => ({
        hour,
        weekday: inHour(shared, weekdays, hour),
        weekend: inHour(shared, weekends, hour),
      })),
    };
    return { ok: true, value, n: weekdays.length + weekends.length, of: 'days' };
  },
};

function inHour({ timeline, heights }: Context, days: readonly number[], hour: number): MgPerDl | null {
  const { minute } = timeline.readings;
  const values: number[] = [];
  let held = 0;
  for (const day of days) {
    const before = values.length;
    const { from, to } = timeline.days[day]!;
    for (let i = from; i < to; i++) if (Math.floor(minute[i]! / 60) === hour) values.push(heights[i]!);
    if (values.length > before) held++;
  }
  return held < LEAST_DAYS ? null : mgPerDl(quantile(Float64Array.from(values).sort(), 0.5));
}
