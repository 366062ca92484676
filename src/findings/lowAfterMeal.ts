import { stretchFrom } from './evidence.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { mealsLike } from './occasionExamples.ts';
import { isRepeated } from './pattern.ts';
import { count, limit } from './quantities.ts';

const LEAST = 3;
const NONE = { when: 'none-noted' } as const;

/** Readings below the low limit within four hours of meals for which insulin was noted. */
export const lowAfterMeal: Finding = {
  id: 'low-after-meal',
  source: 'ours',
  look({ meals }) {
    if (!meals.ok) return untold(meals.why);
    const told = meals.value.filter(
      ({ insulin, unusable, course }) => insulin.when !== 'none-noted' && unusable.length === 0 && course?.low != null,
    );
    if (told.length < LEAST) return untold('too-few-occasions');
    const low = told.filter(({ course }) => course?.low === true);
    if (!isRepeated(low.length, told.length)) return absent;
    return holds(
      { limit: limit('low'), count: count(low.length), of: count(told.length) },
      low.map((meal) => stretchFrom(meal, 240)),
    );
  },
  examples: [
    ['3 of 9 meals', { meals: mealsLike(...low(3), ...fine(6)) }, 'holds'],
    ['3 of 10 meals', { meals: mealsLike(...low(3), ...fine(7)) }, 'absent'],
    ['2 of 3 meals', { meals: mealsLike(...low(2), ...fine(1)) }, 'absent'],
    ['2 meals', { meals: mealsLike(...low(2)) }, 'untold'],
    ['no insulin noted', { meals: mealsLike(...low(4).map((one) => ({ ...one, insulin: NONE }))) }, 'untold'],
  ],
};

function low(n: number) {
  return Array.from({ length: n }, () => ({ low: true }));
}

function fine(n: number) {
  return Array.from({ length: n }, () => ({ low: false }));
}
