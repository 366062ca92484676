import { expect, test } from 'vitest';
import { NOTHING_ASKED } from '../../src/measures/context.ts';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { timelineOf } from '../support/timeline.ts';
import { logWords } from './logs.ts';

/** Three rises of 80 a day, at 08:00, 13:00 and 19:00, and one of 40 at 16:00; only breakfast is written down. */
const HOURS = [480, 780, 1140];
const value = (minute: number): number => {
  const bump = (at: number, size: number) => size * Math.max(0, 1 - Math.abs(minute - at - 50) / 50);
  return 100 + HOURS.reduce((sum, at) => sum + bump(at, 80), 0) + bump(960, 40);
};
const days = 3;
const notes = Array.from({ length: days }, (_, day) => ({
  day,
  minute: 480,
  kind: 'meal' as const,
  amount: 40,
  unit: 'g',
}));
const timeline = timelineOf({ days, value, notes });

test('rises without a note are listed when asked for, and marked', () => {
  const asked = { ...NOTHING_ASKED, inferMeals: true };
  const meals = measuredValue(measure(timeline, targetSets.adult, logWords, asked).meals);
  const inferred = meals.filter((meal) => meal.inferred);
  expect(inferred.map(({ minute }) => minute)).toEqual([780, 1140, 780, 1140, 780, 1140]);
  expect(inferred.every(({ carbs, foods }) => carbs === null && foods.length === 0)).toBe(true);
  expect(meals.filter((meal) => !meal.inferred)).toHaveLength(days);
});

test('not asked for, nothing is inferred; asked for, nothing inferred is compared', () => {
  const plain = measure(timeline, targetSets.adult, logWords);
  const asked = measure(timeline, targetSets.adult, logWords, { ...NOTHING_ASKED, inferMeals: true });
  expect(measuredValue(plain.meals).some(({ inferred }) => inferred)).toBe(false);
  expect(asked.comparisons).toEqual(plain.comparisons);
});
