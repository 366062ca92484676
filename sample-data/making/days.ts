import type { Clock } from './clock.ts';
import type { Food } from './foods.ts';
import type { Bout, Meal, Plan } from './person.ts';
import type { Random } from './random.ts';

export interface MealHabit {
  foods: readonly Food[];
  /** Wall minute, and how far it wanders. */
  minute: number;
  wander: number;
  /** Chance of eating it at all. */
  eaten: number;
  /** Minutes from eating to the dose: early (negative) or late. */
  doseAfter: number;
  /** Chance that the dose is forgotten, and that it comes half an hour late. */
  forgotten: number;
  late: number;
}

export interface Routine {
  meals: MealHabit[];
  /** Wall minute and units of the long-acting dose; `skip` lists days without it. */
  longActing: { minute: number; units: number; wander: number; skip: number[] };
  /** Days on which the first meal is later, by minutes. */
  lateMornings: { days: number[]; by: number };
}

/** What a routine makes of a number of days. Bouts of exercise are planned by each story. */
export function planDays(routine: Routine, clock: Clock, bouts: Bout[], extra: Meal[], random: Random): Plan {
  const meals: Meal[] = [...extra];
  const longActing: Plan['longActing'] = [];
  for (let day = 0; day < clock.days; day++) {
    for (const [i, habit] of routine.meals.entries()) {
      const shift = i === 0 && routine.lateMornings.days.includes(day) ? routine.lateMornings.by : 0;
      const minute = Math.round(habit.minute + shift + habit.wander * random.normal());
      const food = random.pick(habit.foods);
      const size = random.between(0.85, 1.15);
      const eaten = random.chance(habit.eaten);
      const forgotten = random.chance(habit.forgotten);
      const late = random.chance(habit.late) ? 35 : 0;
      if (!eaten) continue;
      meals.push({
        at: clock.at(day, minute),
        grams: Math.round((food.grams * size) / 5) * 5,
        food: food.name,
        minutes: food.minutes,
        doseAfter: forgotten ? null : habit.doseAfter + late,
        doseShare: 1,
        why: 'meal',
      });
    }
    const wander = Math.round(routine.longActing.wander * random.normal());
    const units = routine.longActing.skip.includes(day) ? 0 : routine.longActing.units;
    longActing.push({ at: clock.at(day, routine.longActing.minute + wander), units });
  }
  return { meals, bouts, longActing };
}
