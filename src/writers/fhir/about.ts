import type { Analysis } from '../../analyse.ts';
import { OWN } from './codes.ts';
import { type Entry, entry, type Identifier, type Resource, urn, uuid } from './entries.ts';

/** What all entries of one bundle share. */
export interface About {
  analysis: Analysis;
  /** The person among all people of all clinics; undefined where no clinic says whose code it is. */
  known: Identifier | undefined;
  /** First of the ids of what rests on the person alone. */
  person: string;
  /** First of the ids of what rests on the whole analysis as well. */
  seed: string;
  subject: { reference: string };
}

/** `system` is the clinic's own system of identifiers; without it, or without a code, nothing sent has an identifier. */
export function aboutOf(analysis: Analysis, system: string | undefined): About {
  const { settings, hash } = analysis;
  const { code } = settings.person;
  const known = system === undefined || code === undefined ? undefined : { system, value: code };
  const person = known ? JSON.stringify([known.system, known.value]) : JSON.stringify([code ?? '', hash]);
  const subject = { reference: urn(uuid(person, 'person')) };
  return { analysis, known, person, seed: `${person} ${hash}`, subject };
}

/** Something about the person; known again by its id where the person is. */
export const entryOf = ({ known }: About, id: string, resource: Resource): Entry =>
  entry(id, resource, known && { system: OWN, value: id });
