import type { Outcome } from '../../model/clinic.ts';
import { EXIT } from '../exits.ts';

/** 0: papers for everyone. 1: for nobody. 2: for some, or with a part that could not be worked out. */
export function exitOf(outcomes: readonly Outcome[]): number {
  const read = outcomes.filter(({ facts }) => facts !== null);
  if (read.length === 0 && outcomes.length > 0) return EXIT.refused;
  return read.length < outcomes.length || read.some(({ facts }) => facts!.failed.length > 0) ? EXIT.partly : EXIT.done;
}
