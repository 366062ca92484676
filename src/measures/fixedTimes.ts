import type { MgPerDl } from '../model/glucose.ts';
import type { AtTime, FixedTimes } from '../model/readingOrders.ts';
import { median } from '../stats/quantile.ts';
import { mgPerDl } from '../units.ts';
import type { Context } from './context.ts';
import type { Measure } from './measure.ts';

const BEFORE = 15;
const MEAL_FROM = 300;
const MEAL_TO = 660;
const MORNING = 360;
const BEDTIME = 1380;
/** Fewer days have no middle worth telling (ours). */
const LEAST_DAYS = 3;

/**
 * Fasting and bedtime values, two of the places where published reading orders look (ADA gives goals for both): the mean of the
 * 15 minutes before the first meal noted between 5 and 11, without one before 6; and before 23:00 (times ours).
 */
export const fixedTimes: Measure<'fixedTimes'> = {
  id: 'fixedTimes',
  source: 'Daybands',
  needs: { days: 1 },
  definition: {
    before: BEFORE,
    mealFrom: MEAL_FROM,
    mealTo: MEAL_TO,
    morning: MORNING,
    bedtime: BEDTIME,
    leastDays: LEAST_DAYS,
  },
  compute(shared) {
    const { days } = shared.timeline;
    const fasting = days.flatMap((_, day) => at(shared, day, breakfast(shared, day)) ?? []);
    const bedtime = days.flatMap((_, day) => at(shared, day, BEDTIME) ?? []);
    if (fasting.length + bedtime.length === 0) return { ok: false, why: 'too-few-readings' };
    const value: FixedTimes = {
      fasting,
      bedtime,
      fastingMedian: middleOfDays(fasting),
      bedtimeMedian: middleOfDays(bedtime),
    };
    return { ok: true, value, n: fasting.length + bedtime.length, of: 'readings' };
  },
};

const middleOfDays = (values: readonly AtTime[]): MgPerDl | null =>
  values.length < LEAST_DAYS ? null : middle(values);

export const middle = (values: readonly { mgdl: MgPerDl }[]): MgPerDl | null =>
  values.length === 0 ? null : mgPerDl(median(values.map(({ mgdl }) => mgdl)));

/** Food earlier in the night ends the fast: then there is no fasting value. */
function breakfast({ timeline }: Context, day: number): number | null {
  const meals = timeline.notes.filter((note) => note.day === day && note.kind === 'meal' && note.timed);
  if (meals.some(({ minute }) => minute < MEAL_FROM)) return null;
  return meals.find(({ minute }) => minute < MEAL_TO)?.minute ?? MORNING;
}

function at({ timeline, heights }: Context, day: number, minute: number | null): AtTime | null {
  if (minute === null) return null;
  const { from, to, date } = timeline.days[day]!;
  const { minute: clock, weight } = timeline.readings;
  let sum = 0;
  let seen = 0;
  for (let i = from; i < to; i++) {
    if (clock[i]! < minute - BEFORE || clock[i]! >= minute) continue;
    sum += heights[i]! * weight[i]!;
    seen += weight[i]!;
  }
  return seen === 0 ? null : { date, mgdl: mgPerDl(sum / seen) };
}
