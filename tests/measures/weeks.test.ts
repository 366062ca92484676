import { expect, test } from 'vitest';
import { wholeWeeks } from '../../src/measures/weeks.ts';
import { analysisOf } from '../support/story.ts';

test('the last whole week of a fortnight is what is measured of those seven days alone', async () => {
  const whole = await analysisOf('steady-fortnight');
  const last = await analysisOf('steady-fortnight', { days: 7 });
  const { daily } = whole.measures;
  const { timeInBands, mean, coverage } = last.measures;
  if (!daily.ok || !timeInBands.ok || !mean.ok || !coverage.ok) throw new Error('not measured');
  const weeks = wholeWeeks(daily.value);
  expect(weeks).toHaveLength(Math.floor(daily.value.length / 7));
  const week = weeks.at(-1)!;
  expect(week.inRange).toBeCloseTo(timeInBands.value.exclusive['in-range'].value, 10);
  expect(week.low).toBeCloseTo(timeInBands.value.cumulative.low.value, 10);
  expect(week.mean).toBeCloseTo(mean.value.mgdl.value, 8);
  expect(week.minutes / 60).toBeCloseTo(coverage.value.hours, 8);
});

test('a week that was hardly seen has hours, and no number made of them', async () => {
  const { daily } = (await analysisOf('steady-fortnight')).measures;
  if (!daily.ok) throw new Error(daily.why);
  const few = daily.value.slice(0, 7).map((day) => ({
    ...day,
    minutes: { ...day.minutes, 'in-range': 100, high: 0, 'very-high': 0, low: 0, 'very-low': 0 },
  }));
  expect(wholeWeeks(few)).toMatchObject([{ minutes: 700, inRange: null, low: null, mean: null }]);
  expect(wholeWeeks(few.slice(1))).toEqual([]);
});
