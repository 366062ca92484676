import { mealHint, starts } from './evidence/mealHints.ts';
import type { Finding } from './finding.ts';

/** The food after which glucose stayed above range for less time than after other meals of the same part of the day. */
export const foodShorterHigh: Finding<'food-shorter-high'> = {
  id: 'food-shorter-high',
  source: 'ours; guard against many comparisons: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => mealHint(measures, 'food', { sign: -1, more: starts(measures) }),
};
