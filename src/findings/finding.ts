import type { Evidence, Look } from '../model/look.ts';
import type { Why } from '../model/measured.ts';
import type { Measures } from '../model/measures.ts';
import type { Params } from '../model/quantity.ts';
import type { TargetSet } from '../model/targets.ts';
import type { ParamsOf, WordKey } from '../model/words.ts';

/** All that the sentences of a finding ask for: what holds without one of them does not compile. */
export type AskedBy<Id extends string> = ParamsOf<Extract<WordKey, `findings.${Id}.${string}`>>;

/** One statement about the data. It reads measures, never readings, and advises nothing. */
export interface Finding<Id extends string, P = AskedBy<Id>> {
  id: Id;
  /** Where the rule was published, or that it is ours. */
  source: string;
  look(measures: Measures, targets: TargetSet): Look<P>;
}

export const absent = { case: 'absent' } as const;

export const untold = (why: Why) => ({ case: 'untold', why }) as const;

export function holds<P extends Params>(params: P, where: Evidence[], variant?: string): Look<P> {
  return variant === undefined ? { case: 'holds', params, where } : { case: 'holds', params, where, variant };
}

/** A measure of something nobody noted or asked for is no gap to report: there is nothing to say. */
export const quiet = (why: Why) => (why === 'not-asked' || why === 'none-noted' ? absent : untold(why));
