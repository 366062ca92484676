import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import type { Comparison, Meal } from '../../src/model/occasions.ts';
import { excerpt, held, inputsIn } from '../samples/stories.ts';
import { measuredValue } from '../support/measuredValue.ts';
import { logWords } from './logs.ts';

/**
 * Open data: Alsuhaymi et al. 2025, Sci Data 12:1379, doi 10.1038/s41597-025-05695-1 (CC BY 4.0), an excerpt. Every
 * meal was read by eye beside the file: 177 notes of three people. What is expected here was counted in the files.
 */
const person = (id: string) =>
  held(
    analyse(
      inputsIn(excerpt, new RegExp(`-${id}\\.csv$`)),
      {
        targets: 'adult',
        unit: 'mmol/L',
        zone: 'Europe/London',
        today: '2024-05-01',
        period: { days: 15 },
        person: {},
        logWords,
      },
      'test',
    ),
  ).measures;

const mealsOf = (id: string): Meal[] => measuredValue(person(id).meals);
const named = (meals: Meal[], food: string): Meal[] => meals.filter(({ foods }) => foods.includes(food));

describe('foods as people write them', () => {
  test('2314: a standard breakfast is one food, toast by the round and by (x2) another', () => {
    const meals = mealsOf('2314');
    expect(named(meals, 'standard breakfast').length).toBeGreaterThanOrEqual(12);
    expect(named(meals, 'toast').length).toBeGreaterThanOrEqual(5);
    expect(named(meals, 'weetabix').length).toBeGreaterThanOrEqual(6);
  });

  test('2404: porridge with something is not porridge', () => {
    const meals = mealsOf('2404');
    expect(named(meals, 'porridge').every(({ carbs }) => carbs === 34)).toBe(true);
    expect(named(meals, 'granola, yoghurt').length).toBeGreaterThanOrEqual(5);
  });

  test('2320: a coffee of 1.7 g is no meal to compare, nor hides one', () => {
    const coffees = named(mealsOf('2320'), 'coffee').filter(({ carbs }) => carbs !== null && carbs < 3);
    expect(coffees.length).toBeGreaterThan(5);
    for (const { unusable } of coffees) expect(unusable).toContain('small');
  });

  test('2314: glucose tablets tell of a low', () => {
    for (const meal of named(mealsOf('2314'), 'glucose tablets')) expect(meal.unusable).toContain('low-at-start');
  });
});

test('2314: long-acting insulin of 22:58 stands beside no supper', () => {
  const { corrections } = person('2314');
  // 15 nights of long-acting insulin would otherwise be 15 corrections at bedtime.
  expect(measuredValue(corrections).filter(({ minute }) => minute > 1320).length).toBeLessThan(5);
});

test.each(['2314', '2320', '2404'])(
  '%s: every comparison shows its occasions, and nothing stands out of a fortnight',
  (id) => {
    const comparisons: Comparison[] = measuredValue(person(id).comparisons);
    expect(comparisons.length).toBeGreaterThan(0);
    for (const { a, b, verdict } of comparisons) {
      expect([a.occasions.length, b.occasions.length]).toEqual([a.n, b.n]);
      expect(verdict).not.toBe('hint');
    }
  },
);
