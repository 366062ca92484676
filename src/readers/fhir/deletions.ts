import { type Json, objectIn, textIn } from '../json/fields.ts';

/** Records taken back, by `Type/id`: when, in ms since 1970, NaN where it is not told. */
export type Deletions = Map<string, number>;

const NAME = /([A-Z][A-Za-z]+\/[A-Za-z0-9.-]{1,64})$/;

/** Whether an entry asks for a record to be deleted: a bulk export tells so what was taken back since the last one. */
export function asksDeletion(entry: unknown, bundle: Json): boolean {
  const type = textIn(bundle, 'type');
  const method = textIn(objectIn(entry, 'request'), 'method');
  return (type === 'transaction' || type === 'batch') && method === 'DELETE';
}

/** Keeps what an entry asks to delete; false when it names no single record. */
export function addDeletion(deletions: Deletions, entry: unknown, bundle: Json): boolean {
  const name = NAME.exec(textIn(objectIn(entry, 'request'), 'url'))?.[1];
  if (name === undefined) return false;
  addAll(deletions, new Map([[name, Date.parse(textIn(objectIn(bundle, 'meta'), 'lastUpdated'))]]));
  return true;
}

/** Of two deletions of one record the later counts. */
export function addAll(deletions: Deletions, more: Deletions): void {
  for (const [name, at] of more) {
    const known = deletions.get(name);
    if (known === undefined || at > known) deletions.set(name, at);
  }
}

/** Whether a record is among those taken back. One that was written again later is not. */
export function isDeleted(deletions: Deletions | undefined, body: Json): boolean {
  if (!deletions || deletions.size === 0) return false;
  const at = deletions.get(`${textIn(body, 'resourceType')}/${textIn(body, 'id')}`);
  return at !== undefined && !(Date.parse(textIn(objectIn(body, 'meta'), 'lastUpdated')) > at);
}
