import type { Measured } from '../model/measured.ts';
import type { TargetSet } from '../model/targets.ts';
import type { Timeline } from '../model/timeline.ts';
import { areas } from './areas.ts';
import { clockBlocks, weekParts } from './clockBlocks.ts';
import { gri } from './gri.ts';
import type { Index } from './indexOf.ts';
import { adrr, lbgiHbgi } from './kovatchev.ts';
import { lability } from './lability.ts';
import { mage } from './mage.ts';
import { conga, modd } from './pairs.ts';
import { gvp, mag } from './paths.ts';
import { grade, jIndex, mValue } from './quality.ts';
import { spreads } from './spreads.ts';
import { tightRange } from './tightRange.ts';
import { type Trace, traceOf } from './trace.ts';

export type { Index } from './indexOf.ts';

/** Every further index by id. None of them is needed for a report, so none is worked out unless asked for. */
export const indices = {
  tightRange,
  clockBlocks,
  weekParts,
  areas,
  gri,
  spreads,
  mage,
  modd,
  conga,
  mag,
  gvp,
  lability,
  lbgiHbgi,
  adrr,
  jIndex,
  mValue,
  grade,
};

export type Indices = { [Id in keyof typeof indices]: ReturnType<(typeof indices)[Id]['compute']> };

/** Works out every index. Never throws: one that does is reported as failed. */
export function indicesOf(timeline: Timeline, targets: TargetSet): Indices {
  const trace = traceOf(timeline, targets);
  const every: Index<unknown>[] = Object.values(indices);
  return Object.fromEntries(every.map((index) => [index.id, guarded(index, trace)])) as Indices;
}

function guarded<T>(index: Index<T>, trace: Trace): Measured<T> {
  try {
    return index.compute(trace);
  } catch {
    return { ok: false, why: 'failed' };
  }
}
