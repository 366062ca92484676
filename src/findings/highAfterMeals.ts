import type { Slot } from '../model/logbook.ts';
import type { Meal } from '../model/occasions.ts';
import { WINDOW } from '../occasions/mealCourse.ts';
import { median } from '../stats/quantile.ts';
import { PATTERN_DAYS } from './evidence/pattern.ts';
import { stretchFrom } from './evidence/places.ts';
import { count, glucose, limit, minutes, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LONG = 60;
/** A rise after a meal is nothing to tell: most meals of that part of the day must stay high (ours). */
const MOST = 2 / 3;

/** The part of the day whose noted meals were most often followed by more than an hour above range. */
export const highAfterMeals: Finding<'high-after-meals'> = {
  id: 'high-after-meals',
  source: 'Peak 1 to 2 hours after the start of a meal: ADA Standards of Care, section 6; how often: ours',
  look({ meals }) {
    if (!meals.ok) return untold(meals.why);
    const slots = new Map<Slot, Meal[]>();
    for (const meal of meals.value) {
      if (meal.unusable.length === 0 && meal.course && !meal.inferred)
        slots.set(meal.slot, [...(slots.get(meal.slot) ?? []), meal]);
    }
    const seen = [...slots].filter(([, list]) => list.length >= PATTERN_DAYS);
    if (seen.length === 0) return untold('too-few-occasions');
    const counted = seen.map(([slot, list]) => ({ slot, list, high: list.filter(isLong) }));
    const most = counted.reduce((a, b) => (b.high.length / b.list.length > a.high.length / a.list.length ? b : a));
    if (most.high.length / most.list.length < MOST) return absent;
    const of = (value: (meal: Meal) => number) => median(most.list.map(value));
    return holds(
      {
        slot: word(most.slot),
        count: count(most.high.length),
        of: count(most.list.length),
        length: minutes(LONG),
        limit: limit('high'),
        peak: glucose(of(({ course }) => course!.peak) as never),
        toPeak: minutes(of(({ course }) => course!.minutesToPeak)),
      },
      most.high.map((meal) => stretchFrom(meal, WINDOW)),
    );
  },
};

const isLong = ({ course }: Meal): boolean => course!.highMinutes > LONG;
