import { WINDOW } from '../occasions/mealCourse.ts';
import { ALONE, INSULIN_WITHIN, ONE_MEAL, SMALL_GRAMS } from '../occasions/meals.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import type { Measure } from './measure.ts';

/** Food notes with the three to four hours after each, and why some are not compared. */
export const meals: Measure<'meals'> = {
  id: 'meals',
  source:
    '{time-to-peak}: Daenen 2010, Diabetes Metab 36:165-169; {incremental-area}: Wolever 2004, Br J Nutr 91:295-301; Daybands',
  needs: { readings: 1 },
  definition: {
    windowMinutes: WINDOW,
    seenShare: SEEN_SHARE,
    aloneMinutes: ALONE,
    oneMealMinutes: ONE_MEAL,
    smallGrams: SMALL_GRAMS,
    insulinWithinMinutes: INSULIN_WITHIN,
  },
  compute(shared) {
    const value = shared.occasions().meals;
    return {
      ok: true,
      value,
      n: value.filter(({ unusable, inferred }) => unusable.length === 0 && !inferred).length,
      of: 'occasions',
    };
  },
};
