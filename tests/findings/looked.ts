import { type FindingId, findings } from '../../src/findings/index.ts';
import type { Measured } from '../../src/model/measured.ts';
import type { Measures } from '../../src/model/measures.ts';
import type { TargetSet } from '../../src/model/targets.ts';
import { targetSets } from '../../src/targets/index.ts';
import { measuresWith } from '../support/measures.ts';

/** What a finding says of a calm fortnight in which the measures given stand out. */
export function looked(id: FindingId, given: Partial<Measures>, targets: TargetSet['id'] = 'adult') {
  const look = findings.find((finding) => finding.id === id)!.look(measuresWith(given), targetSets[targets]);
  if (look.case === 'untold') return { case: look.case, why: look.why };
  if (look.case !== 'holds') return { case: look.case };
  const values = Object.entries(look.params).map(([name, value]) => [name, 'value' in value ? value.value : value]);
  return { case: look.case, variant: look.variant, where: look.where, ...Object.fromEntries(values) };
}

/** The same measure with another value. */
export function changed<T>(measured: Measured<T>, change: (value: T) => T): Measured<T> {
  if (!measured.ok) throw new Error(measured.why);
  return { ...measured, value: change(measured.value) };
}
