import type { Choice, Input, ReadFile, ReadSettings } from '../model/input.ts';
import { openBook } from './book.ts';
import { isSparse, medianOf } from './density.ts';
import { newEntries } from './entries.ts';
import { personCode, referenceTable, resourcesOf } from './fhir-bundle.ts';
import { joinAtOneTime, membersOf } from './fhir-exercise.ts';
import { versionsOf } from './fhir-identity.ts';
import { isManifest, manifestIn, tellManifest } from './fhir-manifest.ts';
import { readMedication } from './fhir-medication.ts';
import { readObservation } from './fhir-observation.ts';
import type { FhirReading, GlucoseValue, Resource } from './fhir-reading.ts';
import { readWear } from './fhir-wear.ts';
import { fingerprint } from './fingerprint.ts';
import type { Hints } from './hints.ts';
import { minutesBetween } from './instant.ts';
import { type Json, listIn, objectIn, openJson, textIn } from './json.ts';
import { bothUnits } from './unit.ts';

const IN_XML = 'http://hl7.org/fhir';

/** HL7 FHIR in JSON says so in every resource, a bulk export's manifest by its fields; in XML it is known and refused. */
export function recogniseFhir(head: Uint8Array): number {
  const text = Buffer.from(head.subarray(0, 8192)).toString('latin1');
  if (/^\W{0,8}</.test(text)) return text.includes(IN_XML) ? 0.95 : 0;
  if (!/^\W{0,8}[[{]/.test(text)) return 0;
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
  const choices: Choice[] = [{ id: 'encoding', value: 'utf-8', by: 'file', evidence: 'JSON' }];
  const opened = openJson(input.bytes);
  const done = (entries: ReturnType<typeof newEntries>, persons: string[]): ReadFile => ({
    name: input.name,
    kind: 'fhir',
    hash: fingerprint(input.bytes),
    choices,
    issues: book.list(),
    faults: book.faults(),
    readings: entries.readings(),
    notes: entries.notes,
    fates: entries.fates,
    persons,
  });
  if (startsLikeXml(input.bytes)) {
    book.add('fhir-xml', 'refusal');
    return done(newEntries(0, 0), []);
  }
  if ('brokenAt' in opened) {
    book.add('json-broken', 'refusal', opened.brokenAt);
    return done(newEntries(0, 0), []);
  }
  const manifest = manifestIn(opened);
  if (manifest) {
    tellManifest(manifest, book);
    return done(newEntries(manifest.outputs.length, 0), []);
  }
  const { resources, rows, strange } = resourcesOf(opened);
  const entries = newEntries(rows + opened.broken.length, resources.length);
  const ignored = new Map<string, number>();
  const persons = new Map<string, string>();
  const units = new Set<string>();
  const resolve = referenceTable(resources, hints.resolve);
  const versions = versionsOf(resources);
  const unsure: { resource: Resource; wall: number; offset: number; value: GlucoseValue }[] = [];
  const place = (resource: Resource, wall: number, offset: number, { value, unit, limit }: GlucoseValue): void => {
    units.add(unit);
    entries.reading(wall, offset, value, unit === 'mg/dL' ? 0 : 1, limit, resource.line, resource.row);
  };
  const reading: FhirReading = {
    file: input.name,
    today: settings.today,
    unit: settings.unit,
    coded: undefined,
    bare: { count: 0, line: 0, low: Number.POSITIVE_INFINITY, high: 0 },
    often: new Map(),
    byText: false,
    zones: new Set(),
    parts: new Set(),
    resolve,
    reading: (resource, wall, offset, value, isUnsure) => {
      if (isUnsure) unsure.push({ resource, wall, offset, value });
      else place(resource, wall, offset, value);
    },
    note: (entry) => {
      entries.notes.push(entry);
      entries.fate(entry.row, 'note');
    },
    setAside: (resource, code, actual, expected) => {
      book.add(code, 'warning', resource.line, expected === undefined ? { actual } : { actual, expected });
      entries.fate(resource.row, 'set-aside');
    },
    repeats: (resource) => entries.fate(resource.row, 'duplicate'),
    remark: (code, line, count) => book.add(code, 'note', line, { count }),
    ignore: (what) => ignored.set(what, (ignored.get(what) ?? 0) + 1),
    minutesOf: (period) =>
      period ? minutesBetween(textIn(period, 'start'), textIn(period, 'end'), settings.today) : undefined,
  };
  for (const { body } of resources) for (const part of membersOf(reading, body)) reading.parts.add(part);
  for (const resource of resources) {
    if (versions.deleted.has(resource.row)) {
      reading.setAside(resource, 'taken-back', resource.fullUrl);
      continue;
    }
    if (versions.contradict.has(resource.row)) {
      reading.setAside(resource, 'versions-contradict', textIn(resource.body, 'id'));
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
    else if (!COMPANIONS.has(type)) reading.ignore(type === 'DiagnosticReport' ? 'summary' : type);
    const reference = textIn(objectIn(resource.body, 'subject'), 'reference');
    const gave = entries.fates[resource.row] !== before || unsure.at(-1)?.resource === resource;
    if (reference !== '' && gave) persons.set(personCode(reference, resolve(reference, resource.body)), reference);
  }
  settleUnsure(unsure, place, reading, choices);
  const { notes, joined } = joinAtOneTime(entries.notes);
  entries.notes = notes;
  for (const row of joined) entries.fates[row] = 'duplicate';
  for (const { line, row } of strange) {
    book.add('element-unknown', 'warning', line);
    entries.fate(row, 'set-aside');
  }
  opened.broken.forEach((line, i) => {
    book.add('json-line-broken', 'warning', line);
    entries.fate(rows + i, 'set-aside');
  });
  if (units.size > 0)
    choices.push({
      id: 'unit',
      value: [...units].join(', '),
      by: 'file',
      evidence: reading.byText ? 'unit text' : 'UCUM',
    });
  if (reading.coded && settings.unit) {
    book.add('unit-coded', 'refusal', reading.coded.line, {
      actual: reading.coded.unit,
      expected: settings.unit,
      option: '--unit',
    });
  }
  const { bare } = reading;
  if (bare.count > 0 && units.size === 0) {
    const actual = `${bare.count} values from ${bare.low} to ${bare.high}`;
    book.add('unit-unclear', 'refusal', bare.line, {
      actual,
      expected: bothUnits(bare.high, bare.line),
      option: '--unit mg/dL',
    });
  }
  for (const [code, count] of reading.often) book.add(code, 'note', 0, { count });
  for (const [what, count] of ignored)
    if (what !== 'summary') book.add('resource-ignored', 'note', 0, { actual: what, count });
    else if (units.size > 0) book.add('results-ignored', 'note', 0, { count });
  if (ignored.has('summary') && units.size === 0) book.add('results-only', 'warning');
  const file = done(entries, [...persons.keys()]);
  const [zone] = reading.zones;
  if (settings.zone) choices.push({ id: 'zone', value: settings.zone, by: 'user' });
  else if (zone && reading.zones.size === 1) {
    choices.push({ id: 'zone', value: zone, by: 'file', evidence: 'tz-code' });
    file.zone = zone;
  }
  if (reading.zones.size > 1)
    book.add('zones-in-file', 'warning', 0, { actual: [...reading.zones].join(', '), option: '--zone' });
  if (resources.some(({ body }) => isTest(body))) book.add('test-data', 'note');
  file.issues = book.list();
  return file;
}

/** Sensor values under codes that meters share: readings when they come often enough, else finger sticks. */
function settleUnsure(
  unsure: { resource: Resource; wall: number; offset: number; value: GlucoseValue }[],
  place: (resource: Resource, wall: number, offset: number, value: GlucoseValue) => void,
  reading: FhirReading,
  choices: Choice[],
): void {
  if (unsure.length === 0) return;
  const times = unsure.map(({ wall }) => wall).sort((a, b) => a - b);
  const step = medianOf(times.slice(1).map((t, i) => (t - times[i]!) / 60_000));
  const sensor = !Number.isNaN(step) && !isSparse(step);
  choices.push({
    id: 'glucose-kind',
    value: sensor ? 'sensor' : 'finger stick',
    by: 'file',
    evidence: `${step} min between values`,
  });
  for (const { resource, wall, offset, value } of unsure) {
    if (sensor) place(resource, wall, offset, value);
    else {
      const amount = Number.isNaN(value.value) || value.limit !== 0 ? {} : { amount: value.value };
      const origin = { file: reading.file, line: resource.line };
      reading.note({
        wall,
        offset,
        timed: true,
        kind: 'fingerstick',
        ...amount,
        unit: value.unit,
        origin,
        row: resource.row,
      });
    }
  }
}

function startsLikeXml(bytes: Uint8Array): boolean {
  return /^\W{0,8}</.test(Buffer.from(bytes.subarray(0, 16)).toString('latin1'));
}

function isTest(body: Json): boolean {
  return listIn(objectIn(body, 'meta'), 'security').some((label) => textIn(label, 'code') === 'HTEST');
}
