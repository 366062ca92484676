import * as z from 'zod';
import '../jitless.ts';

export const why = z.enum([
  'no-readings',
  'too-few-readings',
  'too-few-days',
  'too-few-nights',
  'too-few-occasions',
  'not-for-these-targets',
  'bound-unknown',
  'not-asked',
  'none-noted',
  'no-pairs',
  'no-earlier-readings',
  'failed',
]);

/** A measure with what it rests on, or why there is none. */
export const measured = <T extends z.ZodType>(value: T) =>
  z.discriminatedUnion('ok', [
    z.strictObject({
      ok: z.literal(true),
      value,
      n: z.number(),
      of: z.enum(['readings', 'days', 'nights', 'episodes', 'pairs', 'occasions', 'notes']),
    }),
    z.strictObject({ ok: z.literal(false), why }),
  ]);
