import { mealHint } from './evidence/mealHints.ts';
import type { Finding } from './finding.ts';

/** Meals of Saturday and Sunday beside those of the other days. */
export const weekendMeals: Finding<'weekend-meals'> = {
  id: 'weekend-meals',
  source: 'ours; guard against many comparisons: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look: (measures) => mealHint(measures, 'weekend'),
};
