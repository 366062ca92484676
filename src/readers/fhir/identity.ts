import { fingerprint } from '../../bytes/hash.ts';
import { type Json, listIn, objectIn, textIn } from '../json/fields.ts';
import type { Resource } from './reading.ts';

/** Rows by identity; those that say a resource was deleted. */
export interface Identities {
  rows: Map<string, number | number[]>;
  deletions: Set<number>;
}

/** What became of resources that are versions or copies of others, by row. */
export interface Versions {
  /** An older version, or a copy word for word. */
  repeats: Set<number>;
  /** The newest version says that the resource was taken back. */
  deleted: Set<number>;
  /** The same identity twice with different contents and nothing that tells which is newer. */
  contradict: Set<number>;
}

/** Longer keys are held as their SHA-256, so that a year of records without ids stays small. */
const LONGEST = 120;

export const newIdentities = (): Identities => ({ rows: new Map(), deletions: new Set() });

/**
 * Keeps a resource under its identity: the full URL in a history, else an equal business identifier, else type and id,
 * else the same subject, code, time and value.
 */
export function identify({ rows, deletions }: Identities, resource: Resource): void {
  const key = short(identityOf(resource));
  if (key === '') return;
  const { row } = resource;
  if (resource.deletion) deletions.add(row);
  const others = rows.get(key);
  if (others === undefined) rows.set(key, row);
  else if (typeof others === 'number') rows.set(key, [others, row]);
  else others.push(row);
}

/** Of several versions the newest counts, by version number, then by date, and in a history by place (newest first, FHIR R4). */
export function versionsOf(identities: Identities, at: (row: number) => Resource | undefined): Versions {
  const found: Versions = { repeats: new Set(), deleted: new Set(), contradict: new Set() };
  for (const rows of identities.rows.values()) {
    if (typeof rows === 'number') {
      if (identities.deletions.has(rows)) found.deleted.add(rows);
      continue;
    }
    const group = rows.flatMap((row) => versionOf(at(row)));
    const [newest, ...older] = group.toSorted(byAge) as [Version, ...Version[]];
    if (newest.deletion) for (const { row } of group) found.deleted.add(row);
    else if (older.some((other) => byAge(newest, other) === 0 && other.saying !== newest.saying))
      for (const { row } of group) found.contradict.add(row);
    else for (const { row } of older) found.repeats.add(row);
  }
  return found;
}

interface Version {
  row: number;
  /** Version number; NaN when there is none. */
  number: number;
  /** Date of the change in ms; NaN when there is none. */
  updated: number;
  history: boolean;
  deletion: boolean;
  saying: string;
}

function versionOf(resource: Resource | undefined): Version[] {
  if (!resource) return [];
  const { body, row, changed, history, deletion } = resource;
  const meta = objectIn(body, 'meta');
  return [
    {
      row,
      number: Number(textIn(meta, 'versionId') || Number.NaN),
      updated: Date.parse(textIn(meta, 'lastUpdated') || changed),
      history,
      deletion,
      saying: short(saying(body)),
    },
  ];
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
function byAge(a: Version, b: Version): number {
  const numbers = b.number - a.number;
  if (numbers) return numbers;
  const dates = b.updated - a.updated;
  if (dates) return dates;
  return a.history && b.history ? a.row - b.row : 0;
}

/** What a resource says, whatever stands about it: everything but its identity and its history. */
function saying(body: Json): string {
  const { id: _, meta: __, identifier: ___, text: ____, issued: _____, ...rest } = body;
  const fields = Object.entries(rest).sort(([a], [b]) => (a < b ? -1 : 1));
  return written(fields) ?? fields.map(([name, value]) => `${name}:${written(value) ?? ''}`).join();
}

/** Undefined for a value nested too deep to be written, which no standard asks for but a text may hold. */
function written(value: unknown): string | undefined {
  try {
    return JSON.stringify(value);
  } catch {
    return undefined;
  }
}

function short(text: string): string {
  return text.length <= LONGEST ? text : fingerprint(text);
}
