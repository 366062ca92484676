import { untold } from '../findings/finding.ts';
import { type Found, findings } from '../findings/index.ts';
import type { Measures } from '../model/measures.ts';
import type { TargetSet } from '../model/targets.ts';
import { settled } from './contradictions.ts';

/** What every finding saw, in the order of print. Never throws: a finding that does is told as failed. */
export function lookAll(measures: Measures, targets: TargetSet): Found[] {
  const found = findings.map(({ id, look }) => {
    try {
      return { id, look: look(measures, targets) };
    } catch {
      return { id, look: untold('failed') };
    }
  });
  return settled(found);
}
