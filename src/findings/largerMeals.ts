import { type Finding, holds } from './finding.ts';
import { mealHint, mealHintExamples } from './mealHints.ts';
import { count } from './quantities.ts';

/** Meals with more carbohydrate than the middle amount of that part of the day beside the others. */
export const largerMeals: Finding = {
  id: 'larger-meals',
  source: 'ours; guard against many comparisons: Benjamini & Hochberg 1995, J R Stat Soc B 57:289-300',
  look(measures) {
    const look = mealHint(measures, 'carb-amount');
    if (look.case !== 'holds' || !measures.comparisons.ok) return look;
    const grams = measures.comparisons.value.find(({ id }) => id === 'carb-amount')?.grams ?? 0;
    return holds({ ...look.params, grams: count(grams) }, look.where);
  },
  examples: mealHintExamples('carb-amount', 'holds'),
};
