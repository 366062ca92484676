import type { SomeThresholds, Thresholds } from '../schemas/thresholds.ts';

/**
 * The usual thresholds. Events of level 2 and the goals for time low: Battelino 2019, Diabetes Care 42:1593-1603. More
 * than 15 % above 250 mg/dL: Crossen 2022, Front Endocrinol 13:1063290 (contact rule of a remote review programme).
 * 14 days and 70 %: Battelino 2019. Two lows at night, and 6 hours on end above the very high limit (as where
 * ketones are a question): ours.
 */
export const USUAL: Thresholds = {
  veryLow: { events: 1, share: 'goals' },
  lows: { share: 'goals', nightEvents: 2 },
  veryHigh: { share: 0.15, minutes: 360 },
  data: { days: 14, share: 0.7 },
};

/** Other published rules, for comparing how much work each would make. */
export const PUBLISHED: Record<'usual' | 'consensus' | 'contact', Thresholds> = {
  usual: USUAL,
  /** The consensus goals alone. Battelino 2019. */
  consensus: {
    veryLow: { events: null, share: 'goals' },
    lows: { share: 'goals', nightEvents: null },
    veryHigh: { share: 'goals', minutes: null },
    data: { days: 14, share: 0.7 },
  },
  /** Contact when more than 5 % below 70 or more than 15 % above 250 mg/dL. Crossen 2022. */
  contact: {
    veryLow: { events: null, share: null },
    lows: { share: 0.05, nightEvents: null },
    veryHigh: { share: 0.15, minutes: null },
    data: { days: null, share: null },
  },
};

/** The usual, with what a clinic wants otherwise. */
export function withUsual(some: SomeThresholds): Thresholds {
  const over = <T extends object>(usual: T, own: { [K in keyof T]?: T[K] | undefined } | undefined): T => ({
    ...usual,
    ...(own as T | undefined),
  });
  return {
    veryLow: over(USUAL.veryLow, some.veryLow),
    lows: over(USUAL.lows, some.lows),
    veryHigh: over(USUAL.veryHigh, some.veryHigh),
    data: over(USUAL.data, some.data),
  };
}
