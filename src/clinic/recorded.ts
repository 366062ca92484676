import type { Outcome, Said } from '../model/clinic.ts';
import { parseOutcome } from '../schemas/outcome.ts';

/** An outcome that a run left, or null when it does not have its shape or there are no words for what it says (`sayable`). */
export function asOutcome(content: unknown, sayable: (said: Said) => boolean): Outcome | null {
  const outcome = parseOutcome(content);
  return outcome?.refusals.every(sayable) ? outcome : null;
}
