import * as z from 'zod';
import '../jitless.ts';
import { band, compared, glucoseUnit, targetId } from '../parts.ts';
import { visit } from '../visit.ts';

const periodFacts = z.strictObject({
  from: z.iso.date(),
  to: z.iso.date(),
  days: z.number(),
  fullDays: z.number(),
  share: z.number(),
  intervalMinutes: z.number(),
  sensors: z.number(),
});

export const verdict = z.enum(['more-than-noise', 'not-told-apart', 'cannot-tell']);

export const change = z.strictObject({
  of: compared,
  before: z.number(),
  now: z.number(),
  change: z.number(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  smallest: z.number(),
  verdict,
  why: z.enum(['few-days', 'other-interval', 'other-targets', 'none-seen', 'few-seen']).optional(),
});

const goalThenAndNow = z.strictObject({
  of: band,
  share: z.number(),
  before: z.number(),
  now: z.number(),
  metBefore: z.boolean(),
  metNow: z.boolean(),
});

export const thenAndNow = z.strictObject({
  with: z.enum(['previous', 'dates', 'visit', 'change']),
  text: z.string(),
  before: periodFacts,
  now: periodFacts,
  differs: z.array(z.enum(['lengths', 'interval', 'targets', 'unit'])),
  sharedDays: z.number(),
  changes: z.array(change),
  goals: z.array(goalThenAndNow),
});

const daySums = z.strictObject({
  date: z.iso.date(),
  lengthMinutes: z.number(),
  minutes: z.number(),
  knownMinutes: z.number(),
  sumMgPerDlMinutes: z.number(),
  squaresMgPerDl2Minutes: z.number(),
  bandMinutes: z.tuple([z.number(), z.number(), z.number(), z.number(), z.number()]),
  lows: z.number(),
  veryLows: z.number(),
  highs: z.number(),
  nightLow: z.boolean().nullable(),
});

const periodSums = z.strictObject({
  targets: targetId,
  unit: glucoseUnit,
  intervalMinutes: z.number(),
  sensors: z.number(),
  days: z.array(daySums),
});

/** A visit file as it was read, with the name of the file. */
const earlierVisit = visit
  .omit({
    format: true,
    version: true,
    period: true,
    targets: true,
    unit: true,
    intervalMinutes: true,
    sensors: true,
    days: true,
  })
  .extend({ file: z.string(), sums: periodSums });

export const periodChoice = z.union([
  z.strictObject({ days: z.number() }),
  z.strictObject({ from: z.string().optional(), to: z.string().optional() }),
]);

const marked = { date: z.iso.date(), text: z.string() };

export const compareChoice = z.union([
  z.strictObject({ with: z.literal('previous') }),
  z.strictObject({ with: z.literal('dates'), from: z.iso.date(), to: z.iso.date() }),
  z.strictObject({
    with: z.literal('visits'),
    visits: z.array(earlierVisit),
    changed: z.strictObject(marked).optional(),
  }),
  z.strictObject({ with: z.literal('change'), ...marked }),
]);
