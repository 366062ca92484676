import { mealHint } from './evidence/mealHints.ts';
import { count } from './evidence/quantities.ts';
import type { Finding } from './finding.ts';

/** Meals with more carbohydrate than the middle amount of that part of the day beside the others. */
export const largerMeals: Finding<'larger-meals'> = {
  id: 'larger-meals',
  source: 'ours; guard against many comparisons: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => mealHint(measures, 'carb-amount', { more: ({ grams }) => ({ grams: count(grams ?? 0) }) }),
};
