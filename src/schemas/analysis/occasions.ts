import * as z from 'zod';
import '../jitless.ts';
import { interval, noted, noteKind, outcome, slot, times } from '../parts.ts';

const medicineNoted = z.strictObject({
  name: z.string(),
  days: z.number(),
  notes: z.array(z.strictObject({ date: z.iso.date(), minute: z.number().nullable() })),
});

export const noteLog = z.strictObject({
  days: z.number(),
  noted: z.number(),
  byKind: z.array(z.strictObject({ kind: noteKind, days: z.number(), notes: z.number() })),
  byHour: z.array(z.strictObject({ kind: noteKind, hours: z.array(z.number()) })),
  mealDays: z.partialRecord(slot, z.number()),
  medication: z.array(medicineNoted),
  meals: z.number(),
  withCarbs: z.number(),
  late: z.number(),
  sessions: z.number(),
  withMinutes: z.number(),
  shortBouts: z.number(),
});

const unusable = z.enum(['gap', 'overlap', 'low-at-start', 'small', 'exercise']);

const mealCourse = z.strictObject({
  baselineMgPerDl: z.number(),
  oneHourMgPerDl: z.number().nullable(),
  twoHoursMgPerDl: z.number().nullable(),
  peakMgPerDl: z.number(),
  peakLimit: z.boolean(),
  incrementMgPerDl: z.number(),
  minutesToPeak: z.number(),
  highMinutes: z.number(),
  highMinutes4h: z.number().nullable(),
  areaMgPerDlMinutes: z.number(),
  returnMinutes: z.number().nullable(),
  low: z.boolean().nullable(),
});

export const meal = z.strictObject({
  atEpochMs: z.number(),
  date: z.iso.date(),
  weekday: z.number(),
  minute: z.number(),
  slot,
  foods: z.array(z.string()),
  carbsGrams: z.number().nullable(),
  insulin: z.union([
    z.strictObject({ when: z.enum(['before', 'with', 'after']), minutes: z.number() }),
    z.strictObject({ when: z.literal('none-noted') }),
  ]),
  late: z.boolean(),
  riseBeforeMinutes: z.number().nullable(),
  inferred: z.boolean(),
  unusable: z.array(unusable),
  course: mealCourse.nullable(),
  nearby: z.array(noted),
});

const untilMorning = z.strictObject({
  minutes: z.number(),
  low: z.boolean().nullable(),
  lowMinutes: z.number(),
  lowestMgPerDl: z.number().nullable(),
  lowestAfterMinutes: z.number().nullable(),
});

export const session = z.strictObject({
  atEpochMs: z.number(),
  date: z.iso.date(),
  minute: z.number(),
  kind: z.string().nullable(),
  minutes: z.number().nullable(),
  effort: z.enum(['light', 'hard', 'not-noted']),
  carbsFirst: z.enum(['extra', 'meal', 'none-noted']),
  carbsGrams: z.number().nullable(),
  startMgPerDl: z.number().nullable(),
  steepestFallMgPerDl: z.number().nullable(),
  lowestDuringMgPerDl: z.number().nullable(),
  lowestSoonMgPerDl: z.number().nullable(),
  lowSoon: z.boolean().nullable(),
  untilMorning,
});

export const correction = z.strictObject({
  atEpochMs: z.number(),
  date: z.iso.date(),
  minute: z.number(),
  startMgPerDl: z.number().nullable(),
  change2hMgPerDl: z.number().nullable(),
  change4hMgPerDl: z.number().nullable(),
  low: z.boolean().nullable(),
  unusable: z.array(z.enum(['gap', 'overlap', 'low-at-start'])),
  nearby: z.array(noted),
});

const comparisonId = z.enum([
  'extra-carbs',
  'exercise-or-rest',
  'exercise-kind',
  'food',
  'insulin-after',
  'carb-amount',
  'weekend',
]);

const side = z.strictObject({
  name: z.string(),
  n: z.number(),
  median: z.number().nullable(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  occasions: z.array(
    z.strictObject({ date: z.iso.date(), minute: z.number(), value: z.number(), low: z.boolean().nullable() }),
  ),
  lows: z.number(),
  lowsOf: z.number(),
  leftOut: z.number(),
});

const alsoDiffers = noted.extend({ a: times, b: times });

export const comparison = z.strictObject({
  id: comparisonId,
  slot: slot.nullable(),
  grams: z.number().nullable(),
  fromMinute: z.number().nullable(),
  of: z.enum(['high-minutes', 'lowest', 'fall']),
  a: side,
  b: side,
  verdict: z.enum(['too-few', 'not-told-apart', 'hint']),
  difference: interval.nullable(),
  p: z.number().nullable(),
  alsoDiffers: alsoDiffers.nullable(),
});

const noteBefore = noted.extend({
  hours: z.number(),
  followed: times,
  withIt: times,
  without: times,
  p: z.number().nullable(),
  verdict: z.enum(['too-few', 'follows', 'not-told-apart', 'hint']),
});

export const outcomeNotes = z.strictObject({
  of: outcome,
  days: z.number(),
  dates: z.array(z.iso.date()),
  events: z.number(),
  leftOut: z.number(),
  notes: z.array(noteBefore),
});
