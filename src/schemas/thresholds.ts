import * as z from 'zod';
import './jitless.ts';
import { MOST_TOLD } from './problems.ts';

/**
 * When a person is put into a tier of the worklist. `goals`: the goal of the person's own target set decides. `null`:
 * this rule is off.
 */
export interface Thresholds {
  veryLow: {
    /** So many events below the very low limit, of 15 minutes and more, are enough. */
    events: number | null;
    /** Share of time below the very low limit, 0 to 1. */
    share: number | 'goals' | null;
  };
  lows: {
    /** Share of time below the low limit, the very low included. */
    share: number | 'goals' | null;
    /** Lows that began between midnight and 06:00. */
    nightEvents: number | null;
  };
  veryHigh: {
    /** Share of time above the very high limit. */
    share: number | 'goals' | null;
    /** Minutes on end above the very high limit. */
    minutes: number | null;
  };
  data: {
    /** Fewer calendar days than this are not enough. */
    days: number | null;
    /** A smaller share of them with readings is not enough. */
    share: number | null;
  };
}

const count = z.int().min(1).nullable();
const share = z.union([z.literal('goals'), z.number().gt(0).lt(1)]).nullable();

export const thresholds = z.strictObject({
  veryLow: z.strictObject({ events: count, share }).partial().optional(),
  lows: z.strictObject({ share, nightEvents: count }).partial().optional(),
  veryHigh: z.strictObject({ share, minutes: count }).partial().optional(),
  data: z
    .strictObject({ days: count, share: z.number().gt(0).max(1).nullable() })
    .partial()
    .optional(),
});

/** What may stand in a thresholds file: any part of the whole; the rest stays as usual. */
export type SomeThresholds = z.infer<typeof thresholds>;

/** So many letters of one mistake are told. */
const LETTERS = 200;

/** Checks a parsed thresholds file. Unknown names are refused: a misspelt one would switch a rule off unseen. */
export function parseThresholds(
  json: unknown,
): { ok: true; thresholds: SomeThresholds } | { ok: false; problems: string[] } {
  const checked = thresholds.safeParse(json);
  if (checked.success) return { ok: true, thresholds: checked.data };
  return {
    ok: false,
    problems: checked.error.issues.slice(0, MOST_TOLD).map((issue) => {
      const path = issue.path.join('.');
      const names = issue.code === 'unrecognized_keys' ? issue.keys.join(', ') : '';
      return [path, names].filter(Boolean).join(': ').slice(0, LETTERS) || '{ }';
    }),
  };
}
