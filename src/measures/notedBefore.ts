import { FALSE_STORIES, FOLLOWS } from '../occasions/notedBefore.ts';
import { LEAST_DAYS } from '../occasions/sides.ts';
import type { Measure } from './measure.ts';

/** What was noted before lows, highs and unsteady days, and how often the same stands without them. */
export const notedBefore: Measure<'notedBefore'> = {
  id: 'notedBefore',
  source:
    'Fisher 1934; {many-at-once}: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300; McMahon 2007, J Clin Endocrinol Metab 92:963-968; Daybands',
  needs: { readings: 1 },
  definition: {
    falseStories: FALSE_STORIES,
    leastDays: LEAST_DAYS,
    hoursAfterExercise: FOLLOWS.exercise,
    hoursAfterFood: FOLLOWS.food,
    hoursAfterBedtimeFood: FOLLOWS['bedtime-food'],
  },
  compute(shared) {
    const value = shared.occasions().before;
    return { ok: true, value, n: Math.max(...value.map(({ days }) => days)), of: 'days' };
  },
};
