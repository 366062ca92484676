import type { Meal, Noted } from '../model/occasions.ts';
import { median } from '../stats/quantile.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { WINDOW } from './mealCourse.ts';
import { type NotedAt, notedBetween, ofTheDay } from './noted.ts';

/** Movement and insulin from so long before a meal to the end of its window stand beside it (ours). */
const BEFORE = 240;

const BESIDE_FOOD: readonly Noted['id'][] = ['exercise', 'insulin-only', 'first-sensor-day'];

export const isUsable = ({ unusable }: Meal): boolean => unusable.length === 0;

/** Meals with what stands beside each; more carbohydrate than the middle of their part of the day is a note like others. */
export function besideMeals(meals: readonly Meal[], noted: readonly NotedAt[]): Meal[] {
  const slots = [...new Set(meals.map(({ slot }) => slot))];
  const middles = new Map(
    slots.map((slot) => [slot, middleGrams(meals.filter((one) => one.slot === slot && isUsable(one)))]),
  );
  return meals.map((meal) => ({ ...meal, nearby: besideMeal(meal, middles.get(meal.slot) ?? null, noted) }));
}

function besideMeal(meal: Meal, grams: number | null, noted: readonly NotedAt[]): Noted[] {
  const near = notedBetween(noted, meal.at - BEFORE * MINUTE_MS, meal.at + WINDOW * MINUTE_MS);
  return [
    ...near.filter(({ id }) => BESIDE_FOOD.includes(id)).map(({ id, name }) => ({ id, name })),
    ...ofTheDay(meal.date),
    ...(meal.insulin.when === 'none-noted' ? [] : [{ id: 'insulin' as const, name: '' }]),
    ...(meal.insulin.when === 'after' ? [{ id: 'insulin-after' as const, name: '' }] : []),
    ...(grams !== null && meal.carbs !== null && meal.carbs > grams ? [{ id: 'more-carbs' as const, name: '' }] : []),
    ...meal.foods.map((name) => ({ id: 'food' as const, name })),
  ];
}

/** The middle amount of carbohydrate among meals whose grams were noted; null where none were. */
export function middleGrams(meals: readonly Meal[]): number | null {
  const grams = meals.flatMap(({ carbs }) => (carbs === null ? [] : [carbs]));
  return grams.length === 0 ? null : median(grams);
}
