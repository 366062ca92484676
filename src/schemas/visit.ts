import * as z from 'zod';
import { band, glucoseUnit, noted, outcome, targetId } from './parts.ts';
import './jitless.ts';
import { LONGEST } from './plainLine.ts';

const finite = z.number();
const amount = finite.min(0);
const whole = z.int().min(0).max(1000);
const share = finite.min(0).max(1);
const date = z.iso.date();

/** A person's own words, on one line: no control and no direction characters, so that they can be shown anywhere. */
const line = (most: number) =>
  z
    .string()
    .min(1)
    .max(most)
    .regex(/^[^\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]*$/u);
const words = line(300);
/** The same on lines that each end with \n. */
const lines = (most: number) =>
  z
    .string()
    .min(1)
    .max(most)
    .regex(/^(?:[^\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]|\n)*$/u);

const bounded = (value: z.ZodNumber) =>
  z.strictObject({ value, low: finite.nullable(), high: finite.nullable() }).nullable();
export const counted = z.strictObject({ k: whole, n: whole }).refine(({ k, n }) => k <= n, 'k of n');

/** A day as sums. `nightLow`: whether a reading from midnight to 6 was low; null where that cannot be told. */
const day = z.strictObject({
  date,
  lengthMinutes: finite.min(1).max(3000),
  minutes: amount,
  knownMinutes: amount,
  sumMgPerDlMinutes: amount,
  squaresMgPerDl2Minutes: amount,
  bandMinutes: z.tuple([amount, amount, amount, amount, amount]),
  lows: whole,
  veryLows: whole,
  highs: whole,
  nightLow: z.boolean().nullable(),
});

export const VISIT_FORMAT = 'daybands-visit';
/** Grows when an older program could no longer read the file rightly. 1 was the snapshot, under a format of its own. */
export const VISIT_VERSION = 2;

/** Each with its 95 % interval; null where too few days allow one. */
export const numbers = z.strictObject({
  inRangeShare: bounded(finite),
  lowShare: bounded(finite),
  highShare: bounded(finite),
  meanMgPerDl: bounded(finite),
  nightsLowShare: bounded(finite),
});

/** What was agreed at the visit and written about it, as it was typed in. */
export const agreed = z.strictObject({
  goal: words.optional(),
  step: words.optional(),
  helper: words.optional(),
  nextVisit: date.optional(),
  /** How sure the person was of the step, 0 to 10. */
  sure: z.int().min(0).max(10).optional(),
  /** What the person wanted to ask or to talk about. */
  question: words.optional(),
  remarks: lines(1000).optional(),
  /** A clinician's own words on what the papers show. */
  interpretation: lines(3000).optional(),
  by: line(80).optional(),
  on: date.optional(),
});

export type AgreedJson = z.infer<typeof agreed>;

/** What sums of days give. */
export const summedMeasure = z.enum(['low', 'very-low', 'high', 'very-high', 'in-range', 'cv']);

/** `count`: on how many nights, or days with the note, it came, of those on which it could be told. */
const topicMeasure = z.union([
  z.strictObject({ of: summedMeasure }),
  z.strictObject({ of: z.literal('nights-low'), count: counted }),
  z.strictObject({
    of: z.literal('after-note'),
    outcome,
    note: noted.extend({ name: z.union([z.literal(''), line(LONGEST.note)]) }),
    count: counted,
  }),
]);

const topic = z.strictObject({ id: line(60), rule: line(60) });

export const person = z.strictObject({
  code: line(LONGEST.line).optional(),
  clinic: line(LONGEST.line).optional(),
});
export const changed = z.array(z.strictObject({ on: date, what: line(LONGEST.line) })).max(20);

/** The file that one visit leaves for the next: sums of days, no reading, no note and no name. */
export const visit = z.strictObject({
  format: z.literal(VISIT_FORMAT),
  version: z.literal(VISIT_VERSION),
  origin: z.strictObject({ by: line(40), hash: line(40), on: date }),
  person,
  period: z.strictObject({ from: date, to: date }),
  targets: targetId,
  goals: z.array(z.strictObject({ of: band, op: z.enum(['<', '>']), share })).max(10),
  unit: glucoseUnit,
  intervalMinutes: finite.min(0.5).max(120),
  sensors: whole,
  numbers,
  topic: topic.nullable(),
  /** What the rules gave where another topic was chosen. */
  topicByRule: topic.nullable().optional(),
  topicMeasure: topicMeasure.nullable(),
  /** Ids of the findings that held. */
  held: z.array(line(60)).max(200),
  agreed: agreed.nullable(),
  /** What was changed within the period, as it was told. */
  changed,
  days: z.array(day).min(1).max(400),
});

export type VisitJson = z.infer<typeof visit>;
