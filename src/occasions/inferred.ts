import type { Meal } from '../model/occasions.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mealCourse } from './mealCourse.ts';
import { slotAt } from './meals.ts';
import { between, readingFrom, type Signal, stretch } from './signal.ts';

/** A rise of so much in an hour, with no low before it, may be a meal nobody wrote down (ours). */
const RISE = 50;
const WITHIN = 60;
/** No food note from so long before the rise to so long after its start. */
const BEFORE = 120;
const AFTER = 60;
/** Rises at night are more often a sensor, a dawn or a treated low (ours). */
const FROM_MINUTE = 300;

/** Rises that look like meals without a note. Asked for by hand and marked as inferred: a rise is not a meal. */
export function inferMeals(signal: Signal, noted: readonly Meal[]): Meal[] {
  const { heights, timeline } = signal;
  const { at, minute, day, count } = timeline.readings;
  const found: Meal[] = [];
  for (let i = 0; i < count; i++) {
    const until = readingFrom(signal, at[i]! + WITHIN * MINUTE_MS);
    let peak = i;
    for (let j = i + 1; j < until; j++) if (heights[j]! > heights[peak]!) peak = j;
    if (minute[i]! < FROM_MINUTE || heights[peak]! - heights[i]! < RISE) continue;
    // The rise starts at its lowest reading.
    let start = i;
    for (let j = i + 1; j < peak; j++) if (heights[j]! <= heights[start]!) start = j;
    const instant = at[start]!;
    const free = between(noted, instant - BEFORE * MINUTE_MS, instant + AFTER * MINUTE_MS).length === 0;
    const low = stretch(signal, instant - 30 * MINUTE_MS, instant + 1).low === true;
    if (free && !low) found.push(mealAt(signal, start, day[start]!));
    i = Math.max(i, readingFrom(signal, instant + BEFORE * MINUTE_MS) - 1);
  }
  return found;
}

function mealAt(signal: Signal, reading: number, day: number): Meal {
  const { readings, days } = signal.timeline;
  const at = readings.at[reading]! as Meal['at'];
  const minute = readings.minute[reading]!;
  const course = mealCourse(signal, at);
  const { date, weekday } = days[day]!;
  return {
    at,
    date,
    weekday,
    minute,
    slot: slotAt(minute),
    foods: [],
    carbs: null,
    insulin: { when: 'none-noted' },
    late: false,
    riseBefore: null,
    inferred: true,
    unusable: course === null ? ['gap'] : [],
    course,
    nearby: [],
  };
}
