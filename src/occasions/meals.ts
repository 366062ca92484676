import type { Slot } from '../model/logbook.ts';
import type { Meal, Unusable } from '../model/occasions.ts';
import type { Note } from '../model/timeline.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mealCourse } from './mealCourse.ts';
import { between, glucoseAt, type Signal, stretch } from './signal.ts';
import type { LogReader } from './words.ts';

/** Food notes this close together are one meal (ours). */
export const ONE_MEAL = 15;
/** Under so many grams a note is a coffee rather than a meal (ours). */
export const SMALL_GRAMS = 10;
/** Another meal so soon after hides what came of the first. */
export const ALONE = 120;
/** How far from the meal its insulin may be noted, and how near counts as together (ours; logs are rounded). */
export const INSULIN_WITHIN = 60;
const INSULIN_WITH = 10;
/** A rise of this much in the half hour before a note says that it was written late (ours). */
const LATE_RISE = 25;
/** So far back the beginning of that rise is looked for (ours). */
const RISE_WITHIN = 60;

/** From minute `from` of the day on; before the first and after the last it is night (ours). */
const SLOTS: readonly [from: number, slot: Slot][] = [
  [0, 'night'],
  [240, 'morning'],
  [630, 'midday'],
  [900, 'afternoon'],
  [1020, 'evening'],
  [1320, 'night'],
];

/** Food notes as meals, in order of time. */
export function findMeals(signal: Signal, read: LogReader): Meal[] {
  const { notes } = signal.timeline;
  const groups: Note[][] = [];
  for (const note of notes) {
    if (note.kind !== 'meal' || !note.timed) continue;
    const last = groups[groups.length - 1];
    if (last && note.at - last[0]!.at <= ONE_MEAL * MINUTE_MS) last.push(note);
    else groups.push([note]);
  }
  const doses = mealtimeInsulin(notes, read);
  const eaten = groups.map((group) => ({ group, carbs: carbsOf(group) }));
  return eaten.map(({ group, carbs }, i) => {
    const first = group[0]!;
    const next = nextMeal(eaten, i);
    const course = mealCourse(signal, first.at);
    const unusable: Unusable[] = [];
    if (course === null) unusable.push('gap');
    if (next && next.at - first.at <= ALONE * MINUTE_MS) unusable.push('overlap');
    if (lowAtStart(signal, first.at) || group.some(({ label }) => label !== undefined && read.treatsLow(label)))
      unusable.push('low-at-start');
    if (carbs !== null && carbs < SMALL_GRAMS) unusable.push('small');
    const day = signal.timeline.days[first.day]!;
    const late = risingBefore(signal, first.at);
    return {
      at: first.at,
      date: day.date,
      weekday: day.weekday,
      minute: first.minute,
      slot: slotOf(group, read),
      foods: [...new Set(group.flatMap(({ label }) => (label === undefined ? [] : (read.food(label) ?? []))))],
      carbs,
      insulin: insulinAround(doses, first.at),
      late,
      riseBefore: late ? sinceLowest(signal, first.at) : null,
      inferred: false,
      unusable,
      course,
      nearby: [],
    };
  });
}

function nextMeal(eaten: readonly { group: Note[]; carbs: number | null }[], after: number): Note | undefined {
  for (let i = after + 1; i < eaten.length; i++) {
    const { carbs, group } = eaten[i]!;
    if (carbs === null || carbs >= SMALL_GRAMS) return group[0];
  }
  return undefined;
}

/** Insulin that may belong to a meal. */
export function mealtimeInsulin(notes: readonly Note[], read: LogReader): Note[] {
  return notes.filter(
    ({ kind, timed, label }) => kind === 'insulin' && timed && !(label !== undefined && read.longActing(label)),
  );
}

/** Grams noted; null when none were. A part without grams leaves the sum a least amount. */
function carbsOf(group: readonly Note[]): number | null {
  const noted = group.flatMap(({ amount, unit }) =>
    amount === undefined || (unit !== undefined && unit !== 'g') ? [] : [amount],
  );
  return noted.length === 0 ? null : noted.reduce((sum, one) => sum + one, 0);
}

/** What was written wins over the clock. */
function slotOf(group: readonly Note[], read: LogReader): Slot {
  for (const { text, label } of group) {
    const written = read.slot(text ?? '') ?? read.slot(label ?? '');
    if (written !== null) return written;
  }
  return slotAt(group[0]!.minute);
}

export function slotAt(minute: number): Slot {
  let slot: Slot = 'night';
  for (const [from, name] of SLOTS) if (minute >= from) slot = name;
  return slot;
}

function insulinAround(doses: readonly Note[], at: number): Meal['insulin'] {
  let best: number | null = null;
  for (const dose of between(doses, at - INSULIN_WITHIN * MINUTE_MS, at + INSULIN_WITHIN * MINUTE_MS)) {
    const minutes = (dose.at - at) / MINUTE_MS;
    if (best === null || Math.abs(minutes) < Math.abs(best)) best = minutes;
  }
  if (best === null) return { when: 'none-noted' };
  return { when: best <= -INSULIN_WITH ? 'before' : best >= INSULIN_WITH ? 'after' : 'with', minutes: best };
}

const lowAtStart = (signal: Signal, at: number): boolean =>
  stretch(signal, at - 15 * MINUTE_MS, at + MINUTE_MS).low === true;

function risingBefore(signal: Signal, at: number): boolean {
  const earlier = glucoseAt(signal, at - 30 * MINUTE_MS);
  const then = glucoseAt(signal, at);
  return earlier !== null && then !== null && then - earlier >= LATE_RISE;
}

/** Minutes from the last of the lowest readings of the hour before. */
function sinceLowest(signal: Signal, at: number): number {
  const { heights, timeline } = signal;
  const { first, end } = stretch(signal, at - RISE_WITHIN * MINUTE_MS, at + 1);
  let lowest = first;
  for (let i = first; i < end; i++) if (heights[i]! <= heights[lowest]!) lowest = i;
  return (at - timeline.readings.at[lowest]!) / MINUTE_MS;
}
