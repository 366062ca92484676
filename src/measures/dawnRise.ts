import type { DawnRise } from '../model/measures.ts';
import type { Timeline } from '../model/timeline.ts';
import { median } from '../stats/quantile.ts';
import { LOW } from '../targets/bands.ts';
import { NIGHT_END, SEEN_SHARE } from '../targets/consensus.ts';
import { mgPerDl } from '../units.ts';
import { type Context, heightAt } from './context.ts';
import { nightMinutes } from './hourMinutes.ts';
import type { Measure } from './measure.ts';

const MIN_NIGHTS = 5;
const MEAL_FROM = 300;
const MEAL_TO = 660;
const BEFORE_MEAL = 15;
const QUIET_TO = 480;

/**
 * Before breakfast minus the night's lowest value. Before breakfast: the mean of the 15 minutes before the first meal
 * noted between 05:00 and 11:00; without such a note the mean of 06:00-08:00. A night with a low, a meal noted before
 * 05:00 or under 70 % of its readings is left out.
 */
export const dawnRise: Measure<'dawnRise'> = {
  id: 'dawnRise',
  source: 'Monnier 2013, Diabetes Care 36:4057-4062; Daybands',
  needs: { nights: MIN_NIGHTS },
  definition: { mealFrom: MEAL_FROM, mealTo: MEAL_TO, beforeMeal: BEFORE_MEAL, quietTo: QUIET_TO, nights: MIN_NIGHTS },
  compute(shared) {
    const { days } = shared.timeline;
    const nights = days.flatMap((_, day) => oneNight(shared, day) ?? []);
    if (nights.length < MIN_NIGHTS) return { ok: false, why: 'too-few-nights' };
    const value: DawnRise = {
      nights,
      median: median(nights.map((night) => night.rise)),
      leftOut: days.length - nights.length,
    };
    return { ok: true, value, n: nights.length, of: 'nights' };
  },
};

function oneNight(shared: Context, index: number): DawnRise['nights'][number] | null {
  const { timeline, bands, heights } = shared;
  const { readings } = timeline;
  const day = timeline.days[index]!;
  const meal = firstMeal(timeline, index);
  if (meal !== null && meal < MEAL_FROM) return null;
  const until = meal ?? QUIET_TO;
  const from = meal === null ? NIGHT_END : meal - BEFORE_MEAL;
  let seen = 0;
  let nadir = -1;
  let sum = 0;
  let minutes = 0;
  for (let i = day.from; i < day.to; i++) {
    // No break: a clock that went back over midnight shows the evening again before the rest of the night.
    if (readings.minute[i]! >= until) continue;
    if (bands[i]! <= LOW) return null;
    const minute = readings.minute[i]!;
    if (minute < NIGHT_END) {
      seen += readings.weight[i]!;
      if (nadir < 0 || heights[i]! < heights[nadir]!) nadir = i;
    }
    if (minute >= from) {
      sum += heights[i]! * readings.weight[i]!;
      minutes += readings.weight[i]!;
    }
  }
  const fullNight = nightMinutes(timeline, day);
  if (nadir < 0 || seen < SEEN_SHARE * nightUntil(fullNight, until) || minutes === 0) return null;
  const before = mgPerDl(sum / minutes);
  const lowest = heightAt(shared, nadir);
  return { date: day.date, nadir: lowest, nadirMinute: readings.minute[nadir]!, before, rise: before - lowest };
}

/** An early breakfast ends the night it stands in. */
function nightUntil(minutes: number, until: number): number {
  return until < NIGHT_END ? minutes - (NIGHT_END - until) : minutes;
}

/** Minute of the first meal noted after midnight and before 11:00; notes stand in order of time. */
function firstMeal(timeline: Timeline, day: number): number | null {
  const meal = timeline.notes.find(
    (note) => note.day === day && note.kind === 'meal' && note.timed && note.minute < MEAL_TO,
  );
  return meal?.minute ?? null;
}
