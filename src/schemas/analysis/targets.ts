import * as z from 'zod';
import '../jitless.ts';
import { goal } from './parts.ts';

const limits = z.strictObject({
  veryLow: z.number(),
  low: z.number(),
  high: z.number(),
  veryHigh: z.number().nullable(),
});

export const targetSet = z.strictObject({
  id: z.enum(['adult', 'older', 'pregnancy-type-1', 'pregnancy-other']),
  source: z.string(),
  limits: z.record(z.enum(['mg/dL', 'mmol/L']), limits),
  goals: z.array(goal),
  cvLimitPercent: z.number().nullable(),
  gmi: z.boolean(),
});
