import { type Element, type Json, type JsonText, listIn, objectIn, textIn } from './json.ts';

/** One resource of a file, in file order, with the URL under which others refer to it. */
export interface Resource {
  body: Json;
  fullUrl: string;
  line: number;
  row: number;
}

/** Unpacks Bundles of any type, arrays and NDJSON into resources; every record gets a row, known or not. */
export function resourcesOf(text: JsonText): {
  resources: Resource[];
  rows: number;
  strange: { line: number; row: number }[];
} {
  const resources: Resource[] = [];
  const strange: { line: number; row: number }[] = [];
  let rows = 0;
  const add = ({ value, line }: Element, fullUrl: string): void => {
    const body = objectIn(value);
    const row = rows++;
    if (body && textIn(body, 'resourceType') !== '') resources.push({ body, fullUrl, line, row });
    else strange.push({ line, row });
  };
  for (const element of text.elements) {
    if (textIn(element.value, 'resourceType') !== 'Bundle') {
      add(element, '');
      continue;
    }
    const lines = text.form === 'object' ? (text.inside.get('entry') ?? []) : [];
    listIn(element.value, 'entry').forEach((entry, i) => {
      add({ value: objectIn(entry, 'resource'), line: lines[i] ?? element.line }, textIn(entry, 'fullUrl'));
    });
  }
  return { resources, rows, strange };
}

/** Finds what references point at: by full URL, by `Type/id`, or inside the referring resource. */
export function referenceTable(resources: Resource[]): (reference: string, from: Json) => Json | undefined {
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
    return known.get(reference) ?? (tail ? known.get(tail[1]!) : undefined);
  };
}

/** One code for a person: an official identifier, else any identifier, else the reference as written. Never the name. */
export function personCode(reference: string, patient: Json | undefined): string {
  const identifiers = listIn(patient, 'identifier');
  const official = identifiers.find((identifier) => textIn(identifier, 'use') === 'official') ?? identifiers[0];
  return textIn(official, 'value') || reference;
}
