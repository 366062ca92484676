import { settled, stepMinute } from './body.ts';
import type { Clock } from './clock.ts';
import type { Habits, Happening, Person, Plan } from './person.ts';
import type { Random } from './random.ts';
import { STEP_MINUTES, sensor, type Wear } from './sensor.ts';

export interface SensorValue {
  at: number;
  /** mg/dL, not yet cut at the sensor's limits. */
  value: number;
}

export interface Lived {
  readings: SensorValue[];
  happenings: Happening[];
}

/** Days of one person: the body, the sensor, and somebody who eats, doses, moves and answers what the sensor says. */
export function live(person: Person, plan: Plan, wear: Wear, clock: Clock, random: Random): Lived {
  const { body, habits } = person;
  const state = settled(body, habits.startsAt);
  const worn = sensor(wear, random);
  const factors = sensitivities(clock.days, habits, random);
  const readings: SensorValue[] = [];
  const happenings: Happening[] = [];
  const eat = (grams: number, minutes: number) => state.meals.push({ gut1: grams, gut2: 0, minutes });
  const dose = (at: number, units: number, why: Happening['why']): void => {
    state.rapid1 += units;
    lastDose = at;
    happenings.push({ at, kind: 'insulin', amount: units, label: habits.rapid, why });
  };
  const rounded = (units: number) => Math.max(0, Math.round(units / habits.penStep) * habits.penStep);

  let seen = habits.startsAt;
  let lastDose = Number.NEGATIVE_INFINITY;
  let lastTreated = Number.NEGATIVE_INFINITY;
  let alarmed = false;
  const end = clock.at(clock.days, 0);
  for (let at = 0; at < end; at++) {
    const minute = clock.minute(at);
    const asleep = minute >= habits.sleep.from || minute < habits.sleep.to;
    for (const meal of plan.meals) {
      if (meal.at === at) {
        eat(meal.grams * Math.max(0.4, 1 + habits.guess * random.normal()), meal.minutes);
        happenings.push({ at, kind: 'meal', amount: meal.grams, label: meal.food, why: meal.why });
      }
      if (meal.doseAfter !== null && meal.at + meal.doseAfter === at) {
        // A correction only when the last dose has mostly been used up.
        const over = at - lastDose > 180 ? Math.max(-1, (seen - habits.aimsAt) / habits.lowersBy) : 0;
        const units = rounded((meal.grams / habits.ratio + over) * meal.doseShare);
        if (units > 0) dose(at, units, 'meal');
      }
    }
    for (const { at: when, units } of plan.longActing) {
      if (when !== at || units === 0) continue;
      state.long1 += units;
      happenings.push({ at, kind: 'insulin', amount: units, label: habits.long, why: 'routine' });
    }
    let effort = 0;
    for (const bout of plan.bouts) {
      if (bout.at === at) happenings.push({ ...bout, kind: 'exercise', why: 'routine' });
      if (at >= bout.at && at < bout.at + bout.minutes) effort = bout.effort;
    }
    stepMinute(body, state, minute, factorAt(factors, at), effort);

    if (at % STEP_MINUTES !== 0) continue;
    const value = worn.read(at, state.tissue);
    if (value === null) continue;
    readings.push({ at, value });
    seen = value;
    if (value < 70 && !alarmed) happenings.push({ at, kind: 'alarm', label: 'low', why: 'low' });
    alarmed = value < 70 || (alarmed && value < 80);
    const acts = random.chance(asleep ? habits.treatsLow.asleep : habits.treatsLow.awake);
    if (value < habits.treatsBelow && acts && at - lastTreated > 20) {
      eat(16, 14);
      lastTreated = at;
      happenings.push({ at, kind: 'meal', amount: 16, label: 'glucose tablets', why: 'low' });
    }
    if (!asleep && value > habits.correctsAbove && at - lastDose > 180 && random.chance(0.15)) {
      const units = rounded((value - habits.aimsAt) / habits.lowersBy);
      if (units > 0) dose(at, units, 'high');
    }
  }
  happenings.sort((a, b) => a.at - b.at);
  return { readings, happenings };
}

/** Minutes between two knots of the changing sensitivity. */
const KNOT_MINUTES = 360;

/** Sensitivity as a factor, a knot every six hours: a first-order autoregression on the log scale. */
function sensitivities(days: number, { varies }: Habits, random: Random): number[] {
  const factors: number[] = [];
  let log = 0;
  for (let knot = 0; knot <= days * 4 + 4; knot++) {
    log = varies.lasts * log + varies.spread * Math.sqrt(1 - varies.lasts ** 2) * random.normal();
    factors.push(Math.exp(log));
  }
  return factors;
}

/** From one knot to the next in a straight line. */
function factorAt(factors: number[], at: number): number {
  const knot = Math.floor(at / KNOT_MINUTES);
  return factors[knot]! + (factors[knot + 1]! - factors[knot]!) * (at / KNOT_MINUTES - knot);
}
