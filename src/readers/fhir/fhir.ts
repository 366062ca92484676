import { latin1 } from '../../bytes/text.ts';
import type { Choice, Input, ReadFile, ReadSettings } from '../../model/input.ts';
import { accountOf } from '../account.ts';
import { openBook } from '../book.ts';
import { type Entries, newEntries } from '../entries.ts';
import type { Hints } from '../hints.ts';
import { objectIn, textIn } from '../json/fields.ts';
import { openJson } from '../json/jsonText.ts';
import { patientCodes, personCode, referenceTable, resourcesOf } from './bundle.ts';
import { addAll, type Deletions, isDeleted } from './deletions.ts';
import { joinAtOneTime, membersOf } from './exercise.ts';
import { versionsOf } from './identity.ts';
import { isManifest, manifestIn, tellManifest } from './manifest.ts';
import { readMedication } from './medication.ts';
import { readObservation } from './observation.ts';
import { newReading, type Resource } from './reading.ts';
import { settleUnsure } from './unsure.ts';
import { readWear } from './wear.ts';
import { tellWhole } from './whole.ts';

const IN_XML = 'http://hl7.org/fhir';

/** HL7 FHIR in JSON says so in every resource, a bulk export's manifest by its fields; in XML it is known and refused. */
export function recogniseFhir(head: Uint8Array): number {
  const start = latin1(head, 0, 9);
  if (!/^\W{0,8}[<[{]/.test(start)) return 0;
  const text = latin1(head, 0, 8192);
  if (/^\W{0,8}</.test(start)) return text.includes(IN_XML) ? 0.95 : 0;
  return /"resourceType"\s*:\s*"[A-Z]/.test(text) || isManifest(text) ? 0.95 : 0;
}

/** Kinds of resource that hold nothing to put on a day and are expected beside those that do. */
const COMPANIONS = new Set([
  'Patient',
  'Device',
  'Medication',
  'Parameters',
  'Practitioner',
  'Organization',
  'Provenance',
]);

/** Reads HL7 FHIR R4: a Bundle of any type, a single resource, an array of resources, or NDJSON. */
export function readFhir(input: Input, settings: ReadSettings, hints: Hints = {}): ReadFile {
  const book = openBook(input.name);
  const choices: Choice[] = [{ id: 'encoding', value: 'utf-8', by: 'file', evidence: { is: 'json' } }];
  const opened = openJson(input.bytes);
  const account = (entries: Entries, persons: Iterable<string>): ReadFile =>
    accountOf(input, 'fhir', { book, choices, entries, persons });
  const refused = (code: 'fhir-xml' | 'json-broken', line = 0): ReadFile => {
    book.add(code, 'refusal', line);
    return account(newEntries(0, 0), []);
  };
  if (startsLikeXml(input.bytes)) return refused('fhir-xml');
  if ('brokenAt' in opened) return refused('json-broken', opened.brokenAt);
  const manifest = manifestIn(opened);
  if (manifest) {
    tellManifest(manifest, book);
    return account(newEntries(manifest.outputs.length, 0), []);
  }
  const resources = resourcesOf(opened);
  if ('brokenAt' in resources) return refused('json-broken', resources.brokenAt);
  const { rows, broken, strange, held } = resources;
  const entries = newEntries(rows + broken.length, rows);
  const persons = new Set<string>();
  const resolve = referenceTable(held.values(), hints.resolve);
  const known = new Map<string, string>();
  const personOf = (reference: string, { body }: Resource): string => {
    // What stands inside a resource is its own.
    const inside = reference.startsWith('#');
    const code = (inside ? undefined : known.get(reference)) ?? personCode(reference, resolve(reference, body));
    if (!inside) known.set(reference, code);
    return code;
  };
  const versions = versionsOf(resources.identities, (row) => held.get(row) ?? resources.at(row));
  const deletions: Deletions = new Map(hints.deleted);
  addAll(deletions, resources.deletions);
  const reading = newReading(input.name, settings, resolve, book, entries);
  for (const { body } of held.values()) for (const part of membersOf(reading, body)) reading.parts.add(part);
  for (let row = 0; row < rows; row++) {
    const resource = held.get(row) ?? resources.at(row);
    if (!resource) continue;
    if (versions.deleted.has(row) || isDeleted(deletions, resource.body)) {
      reading.setAside(resource, 'taken-back', { actual: resource.fullUrl || nameOf(resource) });
      continue;
    }
    if (versions.contradict.has(resource.row)) {
      reading.setAside(resource, 'versions-contradict', { actual: textIn(resource.body, 'id') });
      continue;
    }
    if (versions.repeats.has(resource.row)) {
      reading.repeats(resource);
      continue;
    }
    const type = textIn(resource.body, 'resourceType');
    const before = entries.fates[resource.row];
    if (type === 'Observation') readObservation(reading, resource);
    else if (type === 'MedicationAdministration' || type === 'MedicationStatement') readMedication(reading, resource);
    else if (type === 'DeviceUseStatement') readWear(reading, resource);
    else if (type === 'DiagnosticReport') reading.result(resource.body);
    else if (!COMPANIONS.has(type)) reading.ignore(type);
    const reference = textIn(objectIn(resource.body, 'subject'), 'reference');
    const gave = entries.fates[row] !== before || reading.unsure.at(-1)?.resource.row === row;
    if (reference !== '' && gave) persons.add(personOf(reference, resource));
  }
  // What names no subject could be either's, so two Patients are told even where one has no readings.
  const patients = new Set([...patientCodes(held.values()), ...(hints.patients ?? [])]);
  if (patients.size > 1) for (const code of patients) persons.add(code);
  settleUnsure(reading, choices);
  const { notes, joined } = joinAtOneTime(entries.notes);
  entries.notes = notes;
  for (const row of joined) entries.fates[row] = 'duplicate';
  for (const { line, row } of strange) {
    book.add('element-unknown', 'warning', line);
    entries.fate(row, 'set-aside');
  }
  broken.forEach((line, i) => {
    book.add('json-line-broken', 'warning', line);
    entries.fate(rows + i, 'set-aside');
  });
  const zone = tellWhole(reading, settings, book, choices);
  const file = account(entries, persons);
  if (zone !== undefined) file.zone = zone;
  if (resources.test) book.add('test-data', 'note');
  if (resources.deleting > 0) book.add('export-deletions', 'note', 0, { count: resources.deleting });
  return file;
}

function startsLikeXml(bytes: Uint8Array): boolean {
  return /^\W{0,8}</.test(latin1(bytes, 0, 16));
}

const nameOf = ({ body }: Resource): string => `${textIn(body, 'resourceType')}/${textIn(body, 'id')}`;
