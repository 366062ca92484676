import type { LocalDate, MgPerDl } from '../model/glucose.ts';
import type { BesideGoal, Pregnancy, PregnancyWeek } from '../model/readingOrders.ts';
import { IN_RANGE, LOW } from '../targets/bands.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import { DAY_MS, midnightOf } from '../time/calendar.ts';
import { mgPerDl, toMgPerDl } from '../units.ts';
import type { Context } from './context.ts';
import { fixedTimes, middle } from './fixedTimes.ts';
import type { Measure } from './measure.ts';

/** From the first day of the last period to the due date. */
const TERM = 280;
/** mg/dL and mmol/L, below which: American Diabetes Association, Standards of Care, section 15. */
const GOALS = { fasting: [95, 5.3], oneHour: [140, 7.8], twoHours: [120, 6.7] } as const;

/**
 * A pregnancy week by week, and fasting, one-hour and two-hour values beside published goals. Those goals are for
 * fingersticks; the clinic's own stand before them. Weeks begin where a week of the pregnancy does when a due date is given.
 */
export const pregnancy: Measure<'pregnancy'> = {
  id: 'pregnancy',
  source: 'American Diabetes Association, Standards of Care, section 15 (95, 140, 120 mg/dL); Daybands',
  needs: { readings: 1 },
  definition: { term: TERM, fasting: GOALS.fasting[0], oneHour: GOALS.oneHour[0], twoHours: GOALS.twoHours[0] },
  compute(shared) {
    if (!shared.targets.id.startsWith('pregnancy')) return { ok: false, why: 'not-asked' };
    const fixed = fixedTimes.compute(shared);
    const meals = shared.occasions().meals.filter(({ unusable, inferred }) => unusable.length === 0 && !inferred);
    const after = (hour: 'oneHour' | 'twoHours') =>
      meals.flatMap(({ course }) => (course === null || course[hour] === null ? [] : [{ mgdl: course[hour] }]));
    const value: Pregnancy = {
      weeks: weeksOf(shared),
      fasting: againstGoal(shared, 'fasting', fixed.ok ? fixed.value.fasting : []),
      oneHour: againstGoal(shared, 'oneHour', after('oneHour')),
      twoHours: againstGoal(shared, 'twoHours', after('twoHours')),
    };
    return { ok: true, value, n: shared.timeline.days.length, of: 'days' };
  },
};

function againstGoal(shared: Context, of: keyof typeof GOALS, values: readonly { mgdl: MgPerDl }[]): BesideGoal {
  const [mgdl, mmol] = GOALS[of];
  const own = shared.pregnancyGoals?.[of] ?? null;
  const limit = own ?? (shared.timeline.unit === 'mg/dL' ? mgdl : toMgPerDl(mmol, 'mmol/L'));
  return {
    n: values.length,
    median: middle(values),
    below: values.filter((one) => one.mgdl < limit).length,
    goal: mgPerDl(limit),
    of: own === null ? 'published' : 'clinic',
  };
}

/** Whole days since the last period began; null without a due date. */
const daysIn = (date: LocalDate, due: LocalDate | null): number | null =>
  due === null ? null : TERM - (midnightOf(due) - midnightOf(date)) / DAY_MS;

function weeksOf(shared: Context): PregnancyWeek[] {
  const { days } = shared.timeline;
  const starts: number[] = [];
  days.forEach(({ date }, day) => {
    const into = daysIn(date, shared.dueDate);
    if (day === 0 || (into === null ? day % 7 === 0 : into % 7 === 0)) starts.push(day);
  });
  return starts.map((from, i) => weekOf(shared, from, starts[i + 1] ?? days.length));
}

function weekOf(shared: Context, from: number, to: number): PregnancyWeek {
  const { days, readings } = shared.timeline;
  const minutes = days.slice(from, to).reduce((sum, day) => sum + day.minutes, 0);
  let seen = 0;
  let low = 0;
  let inRange = 0;
  let sum = 0;
  let known = 0;
  for (let i = days[from]!.from; i < days[to - 1]!.to; i++) {
    const weight = readings.weight[i]!;
    seen += weight;
    if (shared.bands[i]! <= LOW) low += weight;
    if (shared.bands[i]! === IN_RANGE) inRange += weight;
    if (Number.isNaN(readings.mgdl[i]!)) continue;
    sum += readings.mgdl[i]! * weight;
    known += weight;
  }
  const share = Math.min(1, seen / minutes);
  const enough = share >= SEEN_SHARE && known > 0;
  const into = daysIn(days[from]!.date, shared.dueDate);
  return {
    from: days[from]!.date,
    days: to - from,
    share,
    inRange: enough ? inRange / seen : null,
    low: enough ? low / seen : null,
    mean: enough ? mgPerDl(sum / known) : null,
    week: into === null || into < 0 ? null : Math.floor(into / 7),
  };
}
