import type { Slot } from '../model/logbook.ts';
import type { ComparisonId, Meal } from '../model/occasions.ts';
import { median } from '../stats/quantile.ts';
import { daysIn, type Question, type Seen } from './sides.ts';

/** Foods noted once are not even listed as too few. */
const LISTED = 2;

/** Food by food, insulin after or not, more or less carbohydrate, weekend or weekday: always within one part of the day. */
export function mealQuestions(meals: readonly Meal[]): Question[] {
  const usable = meals.filter(({ unusable, inferred }) => unusable.length === 0 && !inferred);
  if (usable.length === 0) return [];
  return [
    ...foods(usable),
    ...fullest(usable, 'insulin-after', ({ insulin }) =>
      insulin.when === 'none-noted' ? null : insulin.when === 'after',
    ),
    ...carbAmount(usable),
    ...fullest(usable, 'weekend', ({ weekday }) => weekday >= 6),
  ];
}

const seen = (meals: readonly Meal[]): Seen[] =>
  meals.flatMap(({ date, minute, course }) =>
    course === null ? [] : [{ date, minute, value: course.highMinutes, low: course.low }],
  );

function bySlot(meals: readonly Meal[]): Map<Slot, Meal[]> {
  const slots = new Map<Slot, Meal[]>();
  for (const meal of meals) {
    const some = slots.get(meal.slot);
    if (some) some.push(meal);
    else slots.set(meal.slot, [meal]);
  }
  return slots;
}

/** Each food against the other meals of the part of the day in which it stands most; a meal without a name is neither. */
function foods(usable: readonly Meal[]): Question[] {
  const slots = bySlot(usable.filter((meal) => meal.foods.length > 0));
  const best = new Map<string, { slot: Slot; n: number }>();
  for (const [slot, meals] of slots) {
    const counts = new Map<string, number>();
    for (const meal of meals) for (const food of meal.foods) counts.set(food, (counts.get(food) ?? 0) + 1);
    for (const [food, n] of counts) if (n > (best.get(food)?.n ?? 0)) best.set(food, { slot, n });
  }
  return [...best]
    .filter(([, { n }]) => n >= LISTED)
    .sort(([one, a], [other, b]) => b.n - a.n || (one < other ? -1 : 1))
    .map(([food, { slot }]): Question => {
      const all = slots.get(slot) ?? [];
      return {
        id: 'food',
        slot,
        grams: null,
        of: 'high-minutes',
        names: [food, ''],
        a: seen(all.filter((meal) => meal.foods.includes(food))),
        b: seen(all.filter((meal) => !meal.foods.includes(food))),
      };
    });
}

/** Two kinds of meals within the part of the day that holds most of both; `inFirst` is null for a meal of neither. */
function fullest(
  usable: readonly Meal[],
  id: ComparisonId,
  inFirst: (meal: Meal) => boolean | null,
  grams: number | null = null,
): Question[] {
  let best: { question: Question; least: number; n: number } | null = null;
  for (const [slot, meals] of bySlot(usable)) {
    const a = seen(meals.filter((meal) => inFirst(meal) === true));
    const b = seen(meals.filter((meal) => inFirst(meal) === false));
    const least = Math.min(daysIn(a), daysIn(b));
    const n = a.length + b.length;
    if (n === 0 || (best !== null && (least < best.least || (least === best.least && n <= best.n)))) continue;
    best = { question: { id, slot, grams, of: 'high-minutes', names: ['', ''], a, b }, least, n };
  }
  return best === null ? [] : [best.question];
}

/** More than the middle amount of the part of the day with most meals whose grams were noted, against no more. */
function carbAmount(usable: readonly Meal[]): Question[] {
  const slots = [...bySlot(usable.filter(({ carbs }) => carbs !== null)).values()];
  const most = slots.reduce<Meal[]>((best, meals) => (meals.length > best.length ? meals : best), []);
  if (most.length === 0) return [];
  const grams = median(most.map(({ carbs }) => carbs!));
  return fullest(most, 'carb-amount', ({ carbs }) => carbs! > grams, grams);
}
