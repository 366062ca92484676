import type { LongHigh, LongHighs } from '../model/highs.ts';
import type { Note } from '../model/timeline.ts';
import { basalOf } from '../occasions/insulin.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl } from '../units.ts';
import type { Context } from './context.ts';
import type { Course } from './course.ts';
import { episode } from './episodes.ts';
import type { Measure } from './measure.ts';

/** Minutes beyond the level in one high (ours; the consensus counts 90 minutes inside 2 hours). */
export const LONG = 120;
/** In pregnancy, as the sets have no second high level (from memory: ketones are looked for from about there on). */
const PREGNANCY = [200, 11.1] as const;
const NOTES_BEFORE = 180;
const TOP_DAYS = 4;
const TOP_LEAST = 60;

/** Highs with 2 hours or more beyond the very high limit, one by one, and what was noted on the days with most of it. */
export const longHighs: Measure<'longHighs'> = {
  id: 'longHighs',
  source: 'Daybands',
  needs: { readings: 1 },
  definition: { minutes: LONG, notesBefore: NOTES_BEFORE, topDays: TOP_DAYS, topLeast: TOP_LEAST },
  compute(shared) {
    const { timeline, targets } = shared;
    const { readings, days } = timeline;
    const levels = [
      targets.limits['mg/dL'].veryHigh ?? PREGNANCY[0],
      targets.limits['mmol/L'].veryHigh ?? PREGNANCY[1],
    ];
    const beyond = beyondIn(shared, levels as [number, number]);
    const perDay = new Float64Array(days.length);
    let all = 0;
    let total = 0;
    for (let i = 0; i < readings.count; i++) {
      all += readings.weight[i]!;
      if (!beyond[i]) continue;
      total += readings.weight[i]!;
      perDay[readings.day[i]!] = perDay[readings.day[i]!]! + readings.weight[i]!;
    }
    const list = shared.highs().flatMap((course) => longHigh(shared, course, beyond) ?? []);
    const notes = shared.occasions().insulin;
    const insulin = daysOf(notes.filter(({ is }) => is === 'dose'));
    const basal = daysOf(notes.filter(({ is }) => is !== 'dose'));
    const food = daysOf(mealsOf(shared));
    const top = days
      .map(({ date }, day) => ({
        date,
        minutes: perDay[day]!,
        insulin: insulin.has(day),
        basal: basal.has(day),
        food: food.has(day),
      }))
      .filter(({ minutes }) => minutes >= TOP_LEAST)
      .sort((a, b) => b.minutes - a.minutes || (a.date < b.date ? -1 : 1))
      .slice(0, TOP_DAYS);
    const value: LongHighs = {
      level: mgPerDl(levels[0]!),
      list,
      share: all > 0 ? total / all : 0,
      unbroken: Math.max(0, ...shared.highs().map((course) => longestRun(shared, course, beyond))),
      mostInDay: perDay.reduce((most, minutes) => Math.max(most, minutes), 0),
      days: days.length,
      insulinDays: insulin.size,
      basalDays: basal.size,
      foodDays: food.size,
      basal: basalOf(notes),
      top,
    };
    return { ok: true, value, n: list.length, of: 'episodes' };
  },
};

/** Which readings lie beyond the level, each in its own unit; one at the sensor's upper limit does, whatever the limit. */
function beyondIn({ timeline }: Context, levels: readonly [number, number]): Uint8Array {
  const { native, unit, limit, count } = timeline.readings;
  const beyond = new Uint8Array(count);
  for (let i = 0; i < count; i++) if (limit[i]! > 0 || native[i]! > levels[unit[i] === 0 ? 0 : 1]) beyond[i] = 1;
  return beyond;
}

function longHigh(shared: Context, course: Course, beyond: Uint8Array): LongHigh | null {
  const { weight } = shared.timeline.readings;
  let minutes = 0;
  for (let i = course.first; i <= course.last; i++) if (beyond[i]) minutes += weight[i]!;
  if (minutes < LONG) return null;
  const near = (some: readonly { note: Note }[]) =>
    some.filter(({ note }) => note.timed && note.at >= course.start - NOTES_BEFORE * MINUTE_MS && note.at <= course.end)
      .length;
  const notes = shared.occasions().insulin;
  return {
    high: episode(shared, 'high', course),
    minutes,
    unbroken: longestRun(shared, course, beyond),
    insulin: near(notes.filter(({ is }) => is === 'dose')),
    basal: near(notes.filter(({ is }) => is !== 'dose')),
    food: near(mealsOf(shared)),
  };
}

/** Minutes of the longest run of readings beyond the level. */
function longestRun({ timeline }: Context, course: Course, beyond: Uint8Array): number {
  let run = 0;
  let longest = 0;
  for (let i = course.first; i <= course.last; i++) {
    run = beyond[i] ? run + timeline.readings.weight[i]! : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

const mealsOf = ({ timeline }: Context): { note: Note }[] =>
  timeline.notes.filter(({ kind, amount }) => kind === 'meal' && amount !== 0).map((note) => ({ note }));

const daysOf = (notes: readonly { note: Note }[]): Set<number> => new Set(notes.map(({ note }) => note.day));
