import { alsoBeside } from './evidence/hint.ts';
import { isRepeated } from './evidence/pattern.ts';
import { stretchFrom } from './evidence/places.ts';
import { count, limit } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LEAST = 3;

/** Readings below the low limit within four hours of meals for which insulin was noted. */
export const lowAfterMeal: Finding<'low-after-meal'> = {
  id: 'low-after-meal',
  source: 'ours',
  look({ meals }) {
    if (!meals.ok) return untold(meals.why);
    const usable = meals.value.filter(
      ({ insulin, unusable, course }) => insulin.when !== 'none-noted' && unusable.length === 0 && course?.low != null,
    );
    if (usable.length < LEAST) return untold('too-few-occasions');
    const low = usable.filter(({ course }) => course?.low === true);
    if (!isRepeated(low.length, usable.length)) return absent;
    return holds(
      { limit: limit('low'), count: count(low.length), of: count(usable.length) },
      low.map((meal) => stretchFrom(meal, 240)),
      undefined,
      alsoBeside(
        low,
        usable.filter((each) => !low.includes(each)),
      ),
    );
  },
};
