import type { Evidence, Look } from '../model/look.ts';
import type { Why } from '../model/measured.ts';
import type { Measures } from '../model/measures.ts';
import type { Params } from '../model/quantity.ts';
import type { TargetSet } from '../model/targets.ts';

/** One statement about the data. It reads measures, never readings, and advises nothing. */
export interface Finding<Id extends string = string> {
  id: Id;
  /** Where the rule was published, or that it is ours. */
  source: string;
  look(measures: Measures, targets: TargetSet): Look;
}

export const absent: Look = { case: 'absent' };

export const untold = (why: Why): Look => ({ case: 'untold', why });

export function holds(params: Params, where: Evidence[], variant?: string): Look {
  return variant === undefined ? { case: 'holds', params, where } : { case: 'holds', params, where, variant };
}

/** A measure of something nobody noted or asked for is no gap to report: there is nothing to say. */
export const quiet = (why: Why): Look =>
  why === 'not-asked' || why === 'none-noted' ? absent : { case: 'untold', why };
