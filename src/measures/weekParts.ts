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
    const [weekday, weekend] = [byHour(shared, weekdays), byHour(shared, weekends)];
    const value: WeekParts = {
      weekdays: weekdays.length,
      weekends: weekends.length,
      hours: weekday.map((middle, hour) => ({ hour, weekday: middle, weekend: weekend[hour]! })),
    };
    return { ok: true, value, n: weekdays.length + weekends.length, of: 'days' };
  },
};

/** The middle of each clock hour's readings on these days; null where fewer than three of them have any. */
function byHour({ timeline, heights }: Context, days: readonly number[]): (MgPerDl | null)[] {
  const { minute } = timeline.readings;
  const values = Array.from({ length: 24 }, (): number[] => []);
  const held = new Uint16Array(24);
  for (const day of days) {
    const { from, to } = timeline.days[day]!;
    let seen = 0;
    for (let i = from; i < to; i++) {
      const hour = Math.floor(minute[i]! / 60);
      values[hour]!.push(heights[i]!);
      seen |= 1 << hour;
    }
    for (let hour = 0; hour < 24; hour++) held[hour] = held[hour]! + ((seen >> hour) & 1);
  }
  return values.map((all, hour) =>
    held[hour]! < LEAST_DAYS ? null : mgPerDl(quantile(Float64Array.from(all).sort(), 0.5)),
  );
}
