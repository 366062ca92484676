import type { MealHabit } from './days.ts';
import { BREAKFASTS, DINNERS, LUNCHES, SNACKS } from './foods.ts';
import type { Habits } from './person.ts';

/** One folder of sample-data: the files a generator writes there. Settings and README are written by hand. */
export interface Story {
  folder: string;
  /** File name -> bytes. */
  files(): Record<string, Uint8Array>;
}

/** Runs of one minute that people write as such: they round the time to five minutes. */
export const toFive = (at: number): number => Math.round(at / 5) * 5;

export const ADULT_HABITS: Habits = {
  ratio: 11,
  lowersBy: 40,
  aimsAt: 120,
  penStep: 1,
  correctsAbove: 240,
  treatsLow: { awake: 0.5, asleep: 0.06 },
  treatsBelow: 68,
  sleep: { from: 1380, to: 405 },
  rapid: 'rapid',
  long: 'long-acting',
  guess: 0.33,
  varies: { spread: 0.34, lasts: 0.78 },
  startsAt: 140,
};

const meal = (foods: MealHabit['foods'], minute: number, more: Partial<MealHabit> = {}): MealHabit => ({
  foods,
  minute,
  wander: 12,
  eaten: 0.97,
  doseAfter: -8,
  forgotten: 0.02,
  late: 0.1,
  ...more,
});

export const FOUR_MEALS: MealHabit[] = [
  meal(BREAKFASTS, 440),
  meal(LUNCHES, 745),
  meal(SNACKS, 960, { eaten: 0.4, forgotten: 0.8, doseAfter: 0 }),
  meal(DINNERS, 1125),
];

/** Readings at the sensor's limits, as words; the rest as numbers. */
export function limited(value: number, from: number, to: number, below: string, above: string): string {
  if (value < from) return below;
  return value > to ? above : String(value);
}
