import type { Resolve, Resource } from './fhir-reading.ts';
import { type Element, type Json, type JsonText, listIn, objectIn, textIn } from './json.ts';

/** Unpacks Bundles of any type, arrays and NDJSON into resources; every record gets a row, known or not. */
export function resourcesOf(text: JsonText): {
  resources: Resource[];
  rows: number;
  strange: { line: number; row: number }[];
} {
  const resources: Resource[] = [];
  const strange: { line: number; row: number }[] = [];
  let rows = 0;
  const add = ({ value, line }: Element, fullUrl: string, entry?: unknown): void => {
    const body = objectIn(value);
    const row = rows++;
    const deletion = textIn(objectIn(entry, 'request'), 'method') === 'DELETE';
    if ((body && textIn(body, 'resourceType') !== '') || (deletion && fullUrl !== '')) {
      const changed = textIn(objectIn(entry, 'response'), 'lastModified');
      resources.push({ body: body ?? {}, fullUrl, line, row, history: entry !== undefined, deletion, changed });
    } else strange.push({ line, row });
  };
  for (const element of text.elements) {
    if (textIn(element.value, 'resourceType') !== 'Bundle') {
      add(element, '');
      continue;
    }
    const history = textIn(element.value, 'type') === 'history';
    const lines = text.form === 'object' ? (text.inside.get('entry') ?? []) : [];
    listIn(element.value, 'entry').forEach((entry, i) => {
      const resource = { value: objectIn(entry, 'resource'), line: lines[i] ?? element.line };
      add(resource, textIn(entry, 'fullUrl'), history ? entry : undefined);
    });
  }
  return { resources, rows, strange };
}

/** Finds what references point at: by full URL, by `Type/id`, or inside the referring resource. */
export function referenceTable(resources: Resource[], beside?: Resolve): Resolve {
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
    const tail = /([A-Z][A-Za-z]+\/[A-Za-z0-9.-]{1,64})(?:\/_history\/.*)?$/.exec(reference);
    return known.get(reference) ?? (tail ? known.get(tail[1]!) : undefined) ?? beside?.(reference, from);
  };
}

/** One code for a person: an official identifier, else any identifier, else the reference as written. Never the name. */
export function personCode(reference: string, patient: Json | undefined): string {
  const identifiers = listIn(patient, 'identifier');
  const official = identifiers.find((identifier) => textIn(identifier, 'use') === 'official') ?? identifiers[0];
  return textIn(official, 'value') || reference;
}
