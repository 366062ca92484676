import type { Measures } from '../model/measures.ts';
import type { TargetSet } from '../model/targets.ts';
import type { Timeline } from '../model/timeline.ts';
import { type Context, context } from './context.ts';
import { coverage } from './coverage.ts';
import { daily } from './daily.ts';
import { dawnRise } from './dawnRise.ts';
import { highs, lows } from './episodes.ts';
import { gmi } from './gmi.ts';
import { hourly } from './hourly.ts';
import { mean } from './mean.ts';
import type { Measure } from './measure.ts';
import { modalDay } from './modalDay.ts';
import { nights } from './nights.ts';
import { rebounds } from './rebounds.ts';
import { cv, sd } from './spread.ts';
import { timeInBands } from './timeInBands.ts';
import { windows } from './windows.ts';

export type { Measures } from '../model/measures.ts';
export type { Measure, Needs } from './measure.ts';

/** Every measure, in the order in which they are explained. */
export const measures: { readonly [Id in keyof Measures]: Measure<Id> } = {
  coverage,
  mean,
  sd,
  cv,
  gmi,
  timeInBands,
  modalDay,
  hourly,
  lows,
  highs,
  nights,
  daily,
  windows,
  dawnRise,
  rebounds,
};

/** Measures a timeline against a target set. Never throws: a measure that does is reported as failed. */
export function measure(timeline: Timeline, targets: TargetSet): Measures {
  const shared = context(timeline, targets);
  return Object.fromEntries(
    Object.values(measures).map((each) => [each.id, guarded(each, shared)]),
  ) as unknown as Measures;
}

function guarded<Id extends keyof Measures>(each: Measure<Id>, shared: Context) {
  try {
    return each.compute(shared);
  } catch {
    return { ok: false, why: 'failed' };
  }
}
