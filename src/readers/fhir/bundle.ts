import { type JsonText, NO_ELEMENTS, walk } from '../json/elements.ts';
import { type Json, listIn, objectIn, textIn } from '../json/fields.ts';
import { isIntensity, observationKind } from './codes.ts';
import { addDeletion, asksDeletion, type Deletions } from './deletions.ts';
import { type Identities, identify, newIdentities } from './identity.ts';
import type { Resolve, Resource } from './reading.ts';

/** The resources of a file. Only those that others refer to are held; the rest are parsed when their turn comes. */
export interface Resources {
  /** Records, known or not, without the broken lines. */
  rows: number;
  /** Lines of NDJSON that are no JSON. */
  broken: number[];
  strange: { line: number; row: number }[];
  /** Undefined for a record that is no resource. */
  at(row: number): Resource | undefined;
  /** Those that others may refer to, by row. */
  held: Map<number, Resource>;
  identities: Identities;
  /** Records that entries of the file take back, and how many entries do. */
  deletions: Deletions;
  deleting: number;
  /** Some resource is marked as test data. */
  test: boolean;
}

/** Unpacks Bundles of any type, arrays and NDJSON into resources; every record gets a row, known or not. */
export function resourcesOf(text: JsonText): Resources | { brokenAt: number } {
  const whole = textIn(text.outer, 'resourceType') === 'Bundle' ? text.outer : undefined;
  const elements = whole ? (text.inside.get('entry') ?? NO_ELEMENTS) : text.elements;
  // Where the record of a row stands: the element, and the entry where that element is a Bundle itself.
  const elementOf: number[] = [];
  const entryOf: number[] = [];
  const found: Resources = {
    rows: 0,
    broken: [],
    strange: [],
    at(row) {
      const element = elementOf[row]!;
      const value = elements.value(element);
      const line = elements.line(element);
      if (whole) return resourceOf(objectIn(value, 'resource'), value, whole, line, row);
      const entry = listIn(value, 'entry')[entryOf[row]!];
      if (entryOf[row]! < 0) return resourceOf(objectIn(value), undefined, undefined, line, row);
      return resourceOf(objectIn(entry, 'resource'), entry, objectIn(value), line, row);
    },
    held: new Map(),
    identities: newIdentities(),
    deletions: new Map(),
    deleting: 0,
    test: false,
  };
  const add = (body: Json | undefined, entry: unknown, bundle: Json | undefined, element: number, place: number) => {
    const row = found.rows++;
    elementOf.push(element);
    entryOf.push(place);
    const line = elements.line(element);
    if (bundle && asksDeletion(entry, bundle) && addDeletion(found.deletions, entry, bundle)) {
      found.deleting++;
      return;
    }
    const resource = resourceOf(body, entry, bundle, line, row);
    if (resource) look(found, resource);
    else found.strange.push({ line, row });
  };
  const { brokenAt, broken } = walk(text, elements, (value, i) => {
    if (whole) add(objectIn(value, 'resource'), value, whole, i, -1);
    else if (textIn(value, 'resourceType') === 'Bundle') {
      const bundle = objectIn(value);
      listIn(value, 'entry').forEach((entry, k) => {
        add(objectIn(entry, 'resource'), entry, bundle, i, k);
      });
    } else add(objectIn(value), undefined, undefined, i, -1);
  });
  found.broken = broken;
  return brokenAt > 0 ? { brokenAt } : found;
}

/** A record as a resource; in a Bundle of versions one without a body says that it was deleted. */
function resourceOf(
  body: Json | undefined,
  entry: unknown,
  bundle: Json | undefined,
  line: number,
  row: number,
): Resource | undefined {
  if (bundle && asksDeletion(entry, bundle)) return undefined;
  const fullUrl = textIn(entry, 'fullUrl');
  const history = textIn(bundle, 'type') === 'history';
  const deletion = history && textIn(objectIn(entry, 'request'), 'method') === 'DELETE';
  if (textIn(body, 'resourceType') === '' && !(deletion && fullUrl !== '')) return undefined;
  const changed = history ? textIn(objectIn(entry, 'response'), 'lastModified') : '';
  return { body: body ?? {}, fullUrl, line, row, history, deletion, changed };
}

function look(found: Resources, resource: Resource): void {
  const { body, row } = resource;
  if (isReferredTo(body)) found.held.set(row, resource);
  if (listIn(objectIn(body, 'meta'), 'security').some((label) => textIn(label, 'code') === 'HTEST')) found.test = true;
  identify(found.identities, resource);
}

const REFERRED = new Set(['Patient', 'Device', 'Medication', 'Group', 'RelatedPerson']);

function isReferredTo(body: Json): boolean {
  const type = textIn(body, 'resourceType');
  if (type !== 'Observation') return REFERRED.has(type);
  const kind = observationKind(body.code);
  return kind === 'exercise' || kind === 'duration' || (kind === undefined && isIntensity(body.code));
}

const NAMED = /([A-Z][A-Za-z]+\/[A-Za-z0-9.-]{1,64})(?:\/_history\/.*)?$/;

/** Finds what references point at: by full URL, by `Type/id`, or inside the referring resource. */
export function referenceTable(resources: Iterable<Resource>, elsewhere?: Resolve): Resolve {
  const known = new Map<string, Json>();
  for (const { body, fullUrl } of resources) {
    if (fullUrl !== '') known.set(fullUrl, body);
    const id = textIn(body, 'id');
    if (id !== '') known.set(`${textIn(body, 'resourceType')}/${id}`, body);
    const tail = /([A-Z][A-Za-z]+\/[A-Za-z0-9.-]{1,64})$/.exec(fullUrl);
    if (tail) known.set(tail[1]!, body);
  }
  return (reference, from) => {
    if (reference.startsWith('#')) {
      return objectIn(listIn(from, 'contained').find((part) => `#${textIn(part, 'id')}` === reference));
    }
    const tail = NAMED.exec(reference);
    return known.get(reference) ?? (tail ? known.get(tail[1]!) : undefined) ?? elsewhere?.(reference, from);
  };
}

/** One code for a person: an official identifier, else any identifier, else the reference as written. Never the name. */
export function personCode(reference: string, patient: Json | undefined): string {
  const identifiers = listIn(patient, 'identifier');
  const official = identifiers.find((identifier) => textIn(identifier, 'use') === 'official') ?? identifiers[0];
  return textIn(official, 'value') || reference;
}

/** Codes of the Patients that stand in a file themselves, whether or not anything is said of them. */
export function patientCodes(held: Iterable<Resource>): Set<string> {
  const codes = new Set<string>();
  for (const { body, fullUrl } of held) {
    if (textIn(body, 'resourceType') !== 'Patient') continue;
    const id = textIn(body, 'id');
    codes.add(personCode(id === '' ? fullUrl : `Patient/${id}`, body));
  }
  return codes;
}
