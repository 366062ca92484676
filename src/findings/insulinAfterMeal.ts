import { mealHint } from './evidence/mealHints.ts';
import type { Finding } from './finding.ts';

/** Meals with insulin noted after the food note beside meals with insulin noted before or with it. */
export const insulinAfterMeal: Finding<'insulin-after-meal'> = {
  id: 'insulin-after-meal',
  source: 'ours; guard against many comparisons: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => mealHint(measures, 'insulin-after'),
};
