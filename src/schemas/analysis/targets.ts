import * as z from 'zod';
import '../jitless.ts';
import { glucoseUnit, goal, targetId } from '../parts.ts';

const limits = z.strictObject({
  veryLow: z.number(),
  low: z.number(),
  high: z.number(),
  veryHigh: z.number().nullable(),
});

export const targetSet = z.strictObject({
  id: targetId,
  source: z.string(),
  limits: z.record(glucoseUnit, limits),
  goals: z.array(goal),
  cvLimitPercent: z.number().nullable(),
  gmi: z.boolean(),
});
