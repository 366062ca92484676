import type { Outcome } from '../model/clinic.ts';
import { findMixUps } from './mixups.ts';
import { mixedUp } from './outcome.ts';

/**
 * Papers that may show someone else's days are worse than none: such people are refused, and both told. Whoever stays is the same
 * object as before.
 */
export function withheld(outcomes: readonly Outcome[]): Outcome[] {
  const found = findMixUps(outcomes);
  return outcomes.map((outcome) => {
    const mixUp = found.get(outcome.stem);
    return mixUp ? mixedUp(outcome, mixUp) : outcome;
  });
}
