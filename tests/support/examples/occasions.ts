import type { Instant } from '../../../src/model/glucose.ts';
import type { Measured } from '../../../src/model/measured.ts';
import type { NoteBefore, OutcomeNotes } from '../../../src/model/notedBefore.ts';
import type { Comparison, Correction, Meal, MealCourse, NoteLog, Session, Side } from '../../../src/model/occasions.ts';
import { MINUTE_MS, midnightOf } from '../../../src/time/calendar.ts';
import { exampleDate, listed, mg } from './measures.ts';

const at = (day: number, minute: number) => (midnightOf(exampleDate(day)) + minute * MINUTE_MS) as Instant;
const occasions = <T>(value: T[]): Measured<T[]> => ({ ok: true, value, n: value.length, of: 'occasions' });

/** One comparison of four occasions with nine; `difference` is what the first side has more. */
export function comparisonsLike(given: {
  id: Comparison['id'];
  verdict: Comparison['verdict'];
  difference: number;
  slot?: Comparison['slot'];
  aLow?: number;
  bLow?: number;
  alsoDiffers?: Comparison['alsoDiffers'];
}): Measured<Comparison[]> {
  const few = given.verdict === 'too-few';
  const side = (name: string, n: number, median: number, lows: number): Side => ({
    name,
    n,
    median,
    low: median - 10,
    high: median + 10,
    occasions: listed(n, (day) => ({ date: exampleDate(day), minute: 1140, value: median, low: day < lows })),
    lows,
    lowsOf: n,
    leftOut: 1,
  });
  const base = given.id.startsWith('food') || given.difference > 0 ? 60 : 60 - given.difference;
  const value: Comparison = {
    id: given.id,
    slot: given.slot ?? null,
    grams: given.id === 'carb-amount' ? 55 : null,
    of: 'high-minutes',
    a: side('rice', few ? 2 : 4, Math.max(0, base + given.difference), given.aLow ?? 0),
    b: side(given.id === 'exercise-kind' ? 'cycling' : '', 9, base, given.bLow ?? 0),
    verdict: given.verdict,
    difference: few ? null : { value: given.difference, low: given.difference - 25, high: given.difference + 25 },
    p: few ? null : 0.004,
    fromMinute: given.id === 'exercise-or-rest' ? 1110 : null,
    alsoDiffers: given.alsoDiffers ?? null,
  };
  return { ok: true, value: [value], n: few ? 0 : 1, of: 'pairs' };
}

const course: MealCourse = {
  baseline: mg(120),
  oneHour: mg(180),
  twoHours: mg(160),
  peak: mg(195),
  peakLimit: false,
  increment: 75,
  minutesToPeak: 70,
  highMinutes: 40,
  highMinutes4h: 40,
  area: 6000,
  returnMinutes: 170,
  low: false,
};

/** One meal a day, each as given beyond the usual. */
export const mealsLike = (
  ...given: Partial<MealCourse & Pick<Meal, 'insulin' | 'unusable' | 'late' | 'riseBefore'>>[]
): Measured<Meal[]> =>
  occasions(
    given.map(
      (
        { insulin = { when: 'with', minutes: 0 }, unusable = [], late = false, riseBefore = null, ...more },
        day,
      ): Meal => ({
        at: at(day, 1110),
        date: exampleDate(day),
        weekday: (day % 7) + 1,
        minute: 1110,
        slot: 'evening',
        foods: ['rice'],
        carbs: 60,
        insulin,
        late,
        riseBefore,
        inferred: false,
        unusable,
        course: { ...course, ...more },
        nearby: [],
      }),
    ),
  );

/** One session a day; `low` says whether it went low by 6 in the morning. */
export const sessionsLike = (...given: (Partial<Session> & { low?: boolean | null })[]): Measured<Session[]> =>
  occasions(
    given.map(
      ({ low = false, ...more }, day): Session => ({
        at: at(day, 1100),
        date: exampleDate(day),
        minute: 1100,
        kind: 'running',
        minutes: 45,
        effort: 'not-noted',
        carbsFirst: 'none-noted',
        carbs: null,
        start: mg(140),
        steepest: 20,
        lowestDuring: mg(100),
        lowestSoon: mg(more.lowSoon ? 62 : 90),
        lowSoon: false,
        untilMorning: {
          minutes: 700,
          low,
          lowest: mg(low ? 58 : 95),
          lowestAfter: 460,
          lowMinutes: low ? 30 : 0,
        },
        ...more,
      }),
    ),
  );

export const correctionsLike = (...given: Partial<Correction>[]): Measured<Correction[]> =>
  occasions(
    given.map((one, day) => ({
      at: at(day, 930),
      date: exampleDate(day),
      minute: 930,
      start: mg(210),
      change2h: -50,
      change4h: -80,
      low: false,
      unusable: [],
      nearby: [],
      ...one,
    })),
  );

export const noteLogLike = (given: Partial<NoteLog>): Measured<NoteLog> => ({
  ok: true,
  value: {
    days: 14,
    noted: 14,
    byKind: [],
    byHour: [],
    mealDays: { evening: 12 },
    medication: [],
    meals: 40,
    withCarbs: 40,
    late: 0,
    sessions: 4,
    withMinutes: 4,
    shortBouts: 0,
    ...given,
  },
  n: given.noted ?? 14,
  of: 'days',
});

/** One outcome with exercise as the one note beside it. */
export function notedBeforeLike(of: OutcomeNotes['of'], note: Partial<NoteBefore>): Measured<OutcomeNotes[]> {
  const one: NoteBefore = {
    id: 'exercise',
    name: '',
    hours: 12,
    followed: { k: 0, n: 0 },
    withIt: { k: 0, n: 10 },
    without: { k: 0, n: 18 },
    p: 0.0001,
    verdict: 'hint',
    ...note,
  };
  const days = one.withIt.n + one.without.n;
  const dates = listed(one.withIt.k + one.without.k, exampleDate);
  const value = { of, days, dates, events: one.followed.n, leftOut: 0, notes: [one] };
  return { ok: true, value: [value], n: days, of: 'days' };
}
