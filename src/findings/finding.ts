import type { Also, Evidence, Look } from '../model/look.ts';
import type { Why } from '../model/measured.ts';
import type { Measures } from '../model/measures.ts';
import type { Params } from '../model/quantity.ts';
import type { TargetSet } from '../model/targets.ts';
import type { FindingParams, FindingWithWords } from '../model/words.ts';

/** One statement about the data. It reads measures, never readings, and advises nothing. */
export interface Finding<Id extends FindingWithWords, P = FindingParams<Id>> {
  id: Id;
  /** Where the rule was published, or that it is ours. */
  source: string;
  /** Holds with all that its sentences ask for, or does not compile. */
  look(measures: Measures, targets: TargetSet): Look<P>;
}

export const absent = { case: 'absent' } as const;

export const untold = (why: Why) => ({ case: 'untold', why }) as const;

export function holds<P extends Params>(params: P, where: Evidence[], variant?: string, also?: Also): Look<P> {
  return {
    case: 'holds',
    params,
    where,
    ...(variant === undefined ? {} : { variant }),
    ...(also === undefined ? {} : { also }),
  };
}

/** A measure of something nobody noted or asked for is no gap to report: there is nothing to say. */
export const quiet = (why: Why) => (why === 'not-asked' || why === 'none-noted' ? absent : untold(why));
