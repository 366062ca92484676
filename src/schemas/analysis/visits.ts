import * as z from 'zod';
import '../jitless.ts';
import { noted, outcome } from '../parts.ts';
import { agreed, changed, counted, numbers, person, summedMeasure } from '../visit.ts';
import { change, verdict } from './thenAndNow.ts';

const count = z.strictObject({
  before: counted,
  now: counted.nullable(),
  verdict,
  why: z.enum(['few', 'none']).optional(),
});

const measure = z.union([
  z.strictObject({ of: summedMeasure, change }),
  count.extend({ of: z.literal('nights-low') }),
  count.extend({ of: z.literal('after-note'), outcome, note: noted }),
]);

export const lastTime = z.strictObject({
  from: z.iso.date(),
  to: z.iso.date(),
  person,
  proved: z.boolean(),
  topic: z.string().nullable(),
  agreed: agreed.nullable(),
  changed,
  measure: measure.nullable(),
});

const row = z.strictObject({
  from: z.iso.date(),
  to: z.iso.date(),
  days: z.number(),
  fullDays: z.number(),
  share: z.number(),
  pauseDays: z.number().nullable(),
  differs: z.array(z.enum(['interval', 'targets', 'unit'])),
  numbers,
  agreed: agreed.nullable(),
});

/** `per30Days` is a change of the share of time in range, 0 to 1, over 30 days. */
const trend = z.discriminatedUnion('case', [
  z.strictObject({
    case: z.literal('line'),
    per30Days: z.number(),
    low: z.number(),
    high: z.number(),
    visits: z.number(),
    verdict: z.enum(['more-than-noise', 'not-told-apart']),
  }),
  z.strictObject({ case: z.literal('none'), why: z.enum(['two-visits', 'few-days', 'all-alike']) }),
]);

export const visitByVisit = z.strictObject({ rows: z.array(row), trend });
