import type { Outcome } from '../../model/clinic.ts';
import type { Door } from '../door.ts';

/** Says what the FHIR bundles of a run do not hold: who sends them would take them for whole. */
export function tellFhir({ tell, print }: Door, outcomes: readonly Outcome[]): void {
  const left = outcomes.flatMap(({ fhirLeft }) => fhirLeft ?? []);
  const sum = (of: 'readings' | 'notes'): number => left.reduce((total, one) => total + one[of], 0);
  const [readings, notes] = [sum('readings'), sum('notes')];
  const people = left.filter((one) => one.readings + one.notes > 0).length;
  if (people > 0) print(tell.say('cli.clinic.fhirLeft', { readings, notes, people }));
  const single = left.filter(({ results }) => results.length > 0).length;
  if (single > 0) print(tell.say('cli.clinic.fhirSingle', { people: single }));
  if (left.some(({ unidentified }) => unidentified)) print(tell.say('cli.clinic.fhirUnidentified'));
}
