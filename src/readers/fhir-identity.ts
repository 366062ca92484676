import type { Resource } from './fhir-reading.ts';
import { type Json, listIn, objectIn, textIn } from './json.ts';

/** What became of resources that are versions or copies of others, by row. */
export interface Versions {
  /** An older version, or a copy word for word. */
  repeats: Set<number>;
  /** The newest version says that the resource was taken back. */
  deleted: Set<number>;
  /** The same identity twice with different contents and nothing that tells which is newer. */
  contradict: Set<number>;
}

/**
 * Versions and copies by identity: the full URL in a history, else an equal business identifier, else type and id, else
 * the same subject, code, time and value. Of several versions the newest counts, by version number, then by date, and
 * in a history by place (newest first, FHIR R4).
 */
export function versionsOf(resources: Resource[]): Versions {
  const found: Versions = { repeats: new Set(), deleted: new Set(), contradict: new Set() };
  const groups = new Map<string, Resource[]>();
  for (const resource of resources) {
    const key = identityOf(resource);
    if (key === '') continue;
    const group = groups.get(key);
    if (group) group.push(resource);
    else groups.set(key, [resource]);
  }
  for (const group of groups.values()) {
    if (group.length === 1 && !group[0]!.deletion) continue;
    const [newest, ...older] = group.toSorted(byAge) as [Resource, ...Resource[]];
    if (newest.deletion) for (const { row } of group) found.deleted.add(row);
    else if (older.some((other) => byAge(newest, other) === 0 && saying(other.body) !== saying(newest.body)))
      for (const { row } of group) found.contradict.add(row);
    else for (const { row } of older) found.repeats.add(row);
  }
  return found;
}

function identityOf({ body, fullUrl, history }: Resource): string {
  const type = textIn(body, 'resourceType');
  if (history && fullUrl !== '') return fullUrl.replace(/\/_history\/.*$/, '');
  const identifier = listIn(body, 'identifier').find((one) => textIn(one, 'value') !== '');
  if (identifier) return `${type}|${textIn(identifier, 'system')}|${textIn(identifier, 'value')}`;
  const id = textIn(body, 'id');
  if (id !== '') return `${type}/${id}`;
  return type === 'Observation' || type.startsWith('Medication') ? `${type} ${saying(body)}` : '';
}

/** Newest first; 0 where nothing tells. */
function byAge(a: Resource, b: Resource): number {
  const version = (resource: Resource) => Number(textIn(objectIn(resource.body, 'meta'), 'versionId') || Number.NaN);
  const numbers = version(b) - version(a);
  if (numbers) return numbers;
  const dates = updated(b) - updated(a);
  if (dates) return dates;
  return a.history && b.history ? a.row - b.row : 0;
}

function updated({ body, changed }: Resource): number {
  return Date.parse(textIn(objectIn(body, 'meta'), 'lastUpdated') || changed);
}

/** What a resource says, whatever stands about it: everything but its identity and its history. */
function saying(body: Json): string {
  const { id: _, meta: __, identifier: ___, text: ____, issued: _____, ...rest } = body;
  return JSON.stringify(Object.entries(rest).sort(([a], [b]) => (a < b ? -1 : 1)));
}
