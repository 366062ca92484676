import type { FindingId } from '../../../src/findings/index.ts';
import type { Look } from '../../../src/model/look.ts';
import type { Measures } from '../../../src/model/measures.ts';
import type { TargetSet } from '../../../src/model/targets.ts';
import { change } from './change.ts';
import { days } from './days.ts';
import { lows } from './lows.ts';
import { notes } from './notes.ts';
import { trust } from './trust.ts';

/** A few measures, what the finding makes of them, and the target set when it is not the adult one. */
export type Example = readonly [
  name: string,
  measures: Partial<Measures>,
  expected: Look['case'],
  targets?: TargetSet['id'],
];
export type Examples = Record<FindingId, readonly Example[]>;

/** Of every finding, with the boundary between holding and absent. The tests run them, docs/findings.md prints them. */
export const examples: Examples = { ...lows, ...days, ...trust, ...change, ...notes };
