import type { Facts, Outcome, Said } from '../model/clinic.ts';
import { parseOutcome } from '../schemas/outcome.ts';

/** In the folder of a person's results: what a run left of them. */
export const RECORD = 'record.json';

/** An outcome that a run left, or null when it does not have its shape or there are no words for what it says (`sayable`). */
export function asOutcome(content: unknown, sayable: (said: Said) => boolean): Outcome | null {
  const outcome = parseOutcome(content);
  return outcome?.refusals.every(sayable) ? outcome : null;
}

/** What the last run left of somebody, and the one before it. */
export const visitsBefore = (last: Outcome | null): Facts[] =>
  last?.facts ? [last.facts, ...(last.before ?? [])].slice(0, 2) : [];
