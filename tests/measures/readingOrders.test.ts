import { describe, expect, test } from 'vitest';
import { measure, NOTHING_ASKED } from '../../src/measures/index.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import type { Measured } from '../../src/model/measured.ts';
import type { TargetSet } from '../../src/model/targets.ts';
import { NO_LOG_WORDS } from '../../src/occasions/words.ts';
import { targetSets } from '../../src/targets/index.ts';
import { mgPerDl, toMgPerDl } from '../../src/units.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

/** Where published reading orders look too. Clock times, stretches and three days a side are ours. */
function found<T>(found: Measured<T>): T {
  if (!found.ok) throw new Error(found.why);
  return found.value;
}
const of = (days: DaysOf, set: TargetSet['id'] = 'adult', dueDate: LocalDate | null = null) =>
  measure(timelineOf(days), targetSets[set], undefined, { ...NOTHING_ASKED, dueDate });

/** A value that grows by one each minute, so that a mean tells its minutes: 15 minutes before m are m - 15, m - 10, m - 5. */
const clock = (minute: number) => 50 + minute / 10;
const meal = (day: number, minute: number) => ({ day, minute, kind: 'meal' as const, label: 'bread' });

describe('fasting and bedtime', () => {
  test('before the first meal from 5 to 11, or before 6; none where food is noted before 5', () => {
    const notes = [meal(0, 480), meal(0, 700), meal(1, 299), meal(1, 480), meal(2, 660), meal(3, 300)];
    const { fasting, bedtime } = found(of({ days: 4, value: clock, notes }).fixedTimes);
    // By hand: the mean of 465, 470 and 475 is 470; of 345, 350 and 355 is 350; of 285, 290 and 295 is 290.
    expect(fasting.map(({ date, mgdl }) => [date, mgdl])).toEqual([
      ['2026-03-02', 97],
      ['2026-03-04', 85],
      ['2026-03-05', 79],
    ]);
    expect(bedtime.map(({ mgdl }) => mgdl)).toEqual([187, 187, 187, 187]);
  });

  test('under three days there is no middle', () => {
    const medians = (days: number) => {
      const { fastingMedian, bedtimeMedian } = found(of({ days, value: () => 100 }).fixedTimes);
      return [fastingMedian, bedtimeMedian];
    };
    expect([medians(2), medians(3)]).toEqual([
      [null, null],
      [100, 100],
    ]);
  });

  test('the median of days with a reading in those minutes', () => {
    const value = (minute: number, day: number) => (day === 2 && minute >= 300 ? null : 100 + 10 * day);
    const { fastingMedian, bedtimeMedian } = found(of({ days: 4, value }).fixedTimes);
    expect([fastingMedian, bedtimeMedian]).toEqual([110, 110]);
  });
});

test('insulin as noted: units a day, the median of days with any, notes without an amount apart', () => {
  const dose = (day: number, amount?: number) =>
    ({ day, minute: 480, kind: 'insulin', ...(amount === undefined ? {} : { amount, unit: 'IU' }) }) as const;
  const notes = [dose(0, 4), dose(0, 2.5), dose(2, 10), dose(3), dose(4, 0)];
  expect(found(of({ days: 5, value: () => 100, notes }).insulinNoted)).toMatchObject({
    days: 5,
    noted: 3,
    median: 6.5,
    withoutAmount: 1,
    perDay: [{ units: 6.5, notes: 2 }, { units: 10 }, { units: 0 }],
    longActing: null,
    others: { noted: 3, median: 6.5 },
    rates: false,
  });
  const named = { day: 1, minute: 1320, kind: 'insulin', amount: 18, unit: 'IU', label: 'Long-acting' } as const;
  const rate = { day: 1, minute: 0, kind: 'insulin-rate', amount: 0.8, unit: 'IU/h' } as const;
  const timeline = timelineOf({ days: 5, value: () => 100, notes: [...notes, named, rate] });
  const words = { ...NO_LOG_WORDS, longActing: ['long-acting'] };
  expect(found(measure(timeline, targetSets.adult, words).insulinNoted)).toMatchObject({
    noted: 4,
    median: 8.25,
    longActing: { noted: 1, median: 18 },
    others: { noted: 3, median: 6.5 },
    rates: true,
  });
  expect(of({ days: 2, value: () => 100, notes: [dose(0)] }).insulinNoted).toEqual({ ok: false, why: 'none-noted' });
});

describe('weekdays and weekend', () => {
  // 2 March 2026 is a Monday.
  const value = (_: number, day: number) => (day % 7 >= 5 ? 160 : 120);

  test('the median of each clock hour, three days a side', () => {
    const { weekdays, weekends, hours } = found(of({ days: 14, value }).weekParts);
    expect([weekdays, weekends]).toEqual([10, 4]);
    expect(hours[7]).toEqual({ hour: 7, weekday: 120, weekend: 160 });
    expect(of({ days: 7, value }).weekParts).toEqual({ ok: false, why: 'too-few-days' });
  });

  test('an hour seen on two days of a side has no value', () => {
    const gap = (minute: number, day: number) =>
      [5, 6].includes(day) && minute >= 420 && minute < 480 ? null : value(minute, day);
    expect(found(of({ days: 14, value: gap }).weekParts).hours[7]).toMatchObject({ weekday: 120, weekend: null });
  });
});

describe('lows lined up', () => {
  test('a low during exercise is not one without exercise', () => {
    const value = (minute: number, day: number) => (day === 1 && minute >= 500 && minute < 520 ? 60 : 110);
    const notes = [{ day: 1, minute: 480, kind: 'exercise', minutes: 60, amount: 60, unit: 'min' } as const];
    const { during, without, exercise } = found(of({ days: 2, value, notes }).lowsLined);
    expect(during).toEqual({ lows: 1, hours: 1 });
    expect([without.lows, without.hours, exercise.reduce((sum, { lows }) => sum + lows, 0)]).toEqual([0, 32, 0]);
  });

  test('on exercise noted last and on bedtime, each beside the hours seen', () => {
    const lowAt = [600, 900, 1400];
    const value = (minute: number, day: number) =>
      day === 1 && lowAt.some((at) => minute >= at && minute < at + 20) ? 60 : 110;
    // A session of an hour on the second day ends at 9.
    const notes = [
      { day: 1, minute: 480, kind: 'exercise', minutes: 60, amount: 60, unit: 'min', label: 'run' } as const,
    ];
    const { exercise, without, bedtime } = found(of({ days: 3, value, notes }).lowsLined);
    // By hand: lows 1 h, 6 h and 14 h 20 min after its end; 24 hours after it are seen, 24 + 8 and 15 h lie outside and one is the session's own.
    expect(exercise.map(({ lows, hours }) => [lows, hours])).toEqual([
      [1, 4],
      [1, 4],
      [0, 4],
      [1, 12],
    ]);
    expect(without).toEqual({ lows: 0, hours: 47 });
    expect(bedtime.map(({ lows, hours }) => [lows, hours])).toEqual([
      [1, 6],
      [0, 6],
      [0, 6],
      [0, 6],
    ]);
  });
});

describe('pregnancy (goals: American Diabetes Association, Standards of Care, section 15: fasting 95, 1 h 140, 2 h 120)', () => {
  const value = (_: number, day: number) => (day < 7 ? 100 : 150);

  test('week by week: time in range, low and mean; too little seen is no number', () => {
    const { weeks } = found(
      of({ days: 15, value, without: [{ day: 14, from: 0, to: 500 }] }, 'pregnancy-type-1').pregnancy,
    );
    expect(weeks.map(({ from, days, inRange, mean, week }) => [from, days, inRange, mean, week])).toEqual([
      ['2026-03-02', 7, 1, 100, null],
      ['2026-03-09', 7, 0, 150, null],
      ['2026-03-16', 1, null, null, null],
    ]);
  });

  test('weeks of the pregnancy where the due date is given: 40 weeks lie before it', () => {
    // By hand: 280 days before 12 October 2026 is 5 January 2026; 2 March is day 56 of it, the first of week 8.
    const { weeks } = found(of({ days: 14, value }, 'pregnancy-other', '2026-10-12' as LocalDate).pregnancy);
    expect(weeks.map(({ from, week }) => [from, week])).toEqual([
      ['2026-03-02', 8],
      ['2026-03-09', 9],
    ]);
    const shifted = found(of({ days: 14, value }, 'pregnancy-other', '2026-10-14' as LocalDate).pregnancy).weeks;
    expect(shifted.map(({ from, days, week }) => [from, days, week])).toEqual([
      ['2026-03-02', 2, 7],
      ['2026-03-04', 7, 8],
      ['2026-03-11', 5, 9],
    ]);
  });

  test('fasting and after noted meals: below the goal, not at it', () => {
    const fasting = (minute: number, day: number) =>
      minute < 480 ? [94, 95, 96][day]! : minute < 550 ? [139, 140, 141][day]! : [119, 120, 121][day]!;
    const notes = [0, 1, 2].map((day) => ({ ...meal(day, 480), amount: 40, unit: 'g' }));
    const { weeks: _, ...values } = found(of({ days: 3, value: fasting, notes }, 'pregnancy-type-1').pregnancy);
    expect(values).toEqual({
      fasting: { n: 3, median: 95, below: 1, goal: 95, of: 'published' },
      oneHour: { n: 3, median: 140, below: 1, goal: 140, of: 'published' },
      twoHours: { n: 3, median: 120, below: 1, goal: 120, of: 'published' },
    });
    // A clinic's own goals win, each by itself.
    const pregnancyGoals = { fasting: mgPerDl(96), oneHour: null, twoHours: mgPerDl(119) };
    const days = timelineOf({ days: 3, value: fasting, notes });
    const { pregnancy } = measure(days, targetSets['pregnancy-type-1'], undefined, {
      ...NOTHING_ASKED,
      pregnancyGoals,
    });
    expect(found(pregnancy)).toMatchObject({
      fasting: { below: 2, goal: 96, of: 'clinic' },
      oneHour: { below: 1, goal: 140, of: 'published' },
      twoHours: { below: 0, goal: 119, of: 'clinic' },
    });
    const mmol = found(of({ days: 3, unit: 'mmol/L', value: () => 5 }, 'pregnancy-type-1').pregnancy);
    expect(mmol.fasting).toMatchObject({ below: 3, goal: toMgPerDl(5.3, 'mmol/L') });
  });

  test('other target sets have none', () => {
    expect(of({ days: 3, value }).pregnancy).toEqual({ ok: false, why: 'not-asked' });
  });
});
