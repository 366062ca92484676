import type { Slot } from '../model/logbook.ts';
import type { ComparisonId, Meal } from '../model/occasions.ts';
import { isUsable, middleGrams } from './besideMeals.ts';
import { daysIn, LEAST_DAYS, type Question, type Seen } from './sides.ts';

/** Foods noted once are not even listed as too few. */
const LISTED = 2;

/** Food by food, insulin after or not, more or less carbohydrate, weekend or weekday: always within one part of the day. */
export function mealQuestions(meals: readonly Meal[]): Question[] {
  const all = meals.filter(({ inferred }) => !inferred);
  if (!all.some(isUsable)) return [];
  return [
    ...foods(all),
    ...inSlots(all, 'insulin-after', ['insulin', 'insulin-after', 'insulin-only'], ({ insulin }) =>
      insulin.when === 'none-noted' ? null : insulin.when === 'after',
    ),
    ...carbAmount(all),
    ...inSlots(all, 'weekend', ['weekend'], ({ weekday }) => weekday >= 6),
  ];
}

function bySlot(meals: readonly Meal[]): Map<Slot, Meal[]> {
  const slots = new Map<Slot, Meal[]>();
  for (const meal of meals) {
    const some = slots.get(meal.slot);
    if (some) some.push(meal);
    else slots.set(meal.slot, [meal]);
  }
  return slots;
}

/**
 * Each food against the other meals of the same part of the day, in every part that holds enough of both; where none
 * does, in the one in which it stands most, so that its count is told. A meal without a name is neither.
 */
function foods(all: readonly Meal[]): Question[] {
  const slots = bySlot(all.filter((meal) => meal.foods.length > 0));
  const counts = new Map<string, Map<Slot, number>>();
  for (const [slot, meals] of slots) {
    for (const food of meals.filter(isUsable).flatMap((meal) => meal.foods)) {
      const some = counts.get(food) ?? new Map<Slot, number>();
      counts.set(food, some.set(slot, (some.get(slot) ?? 0) + 1));
    }
  }
  const most = (some: Map<Slot, number>): number => Math.max(...some.values());
  return [...counts]
    .filter(([, some]) => most(some) >= LISTED)
    .sort(([one, a], [other, b]) => most(b) - most(a) || (one < other ? -1 : 1))
    .flatMap(([food, some]) => {
      const asked = [...some]
        .filter(([, n]) => n >= LISTED)
        .map(([slot]) => ask('food', slot, slots.get(slot) ?? [], ['food'], (meal) => meal.foods.includes(food), food));
      return everyFull(asked);
    });
}

/** Two kinds of meals within each part of the day; `inFirst` is null for a meal of neither. */
function inSlots(
  all: readonly Meal[],
  id: ComparisonId,
  given: Question['given'],
  inFirst: (meal: Meal) => boolean | null,
): Question[] {
  return everyFull([...bySlot(all)].map(([slot, meals]) => ask(id, slot, meals, given, inFirst)));
}

/** More than the middle amount of each part of the day, among meals whose grams were noted, against no more. */
function carbAmount(all: readonly Meal[]): Question[] {
  const asked = [...bySlot(all.filter(({ carbs }) => carbs !== null))].flatMap(([slot, meals]): Question[] => {
    const grams = middleGrams(meals.filter(isUsable));
    if (grams === null) return [];
    return [{ ...ask('carb-amount', slot, meals, ['more-carbs'], ({ carbs }) => carbs! > grams), grams }];
  });
  return everyFull(asked);
}

function ask(
  id: ComparisonId,
  slot: Slot,
  meals: readonly Meal[],
  given: Question['given'],
  inFirst: (meal: Meal) => boolean | null,
  name = '',
): Question {
  const side = (first: boolean) => {
    const all = meals.filter((meal) => inFirst(meal) === first);
    const seen = all.filter(isUsable).flatMap((meal): Seen[] => {
      const { date, minute, course, nearby } = meal;
      return course === null
        ? []
        : [{ date, minute, value: course.highMinutes, low: course.low, nearby: () => nearby }];
    });
    return { seen, leftOut: all.length - seen.length };
  };
  const [a, b] = [side(true), side(false)];
  return {
    id,
    slot,
    grams: null,
    fromMinute: null,
    of: 'high-minutes',
    names: [name, ''],
    a: a.seen,
    b: b.seen,
    leftOut: [a.leftOut, b.leftOut],
    given,
  };
}

/** Those with enough days on both sides; where none has, the one nearest to it, so that the paper says how few there were. */
function everyFull(asked: readonly Question[]): Question[] {
  const sized = asked
    .map((question) => ({
      question,
      least: Math.min(daysIn(question.a), daysIn(question.b)),
      n: question.a.length + question.b.length,
    }))
    .filter(({ n }) => n > 0)
    .sort((one, other) => other.least - one.least || other.n - one.n);
  const full = sized.filter(({ least }) => least >= LEAST_DAYS);
  return (full.length > 0 ? full : sized.slice(0, 1)).map(({ question }) => question);
}
