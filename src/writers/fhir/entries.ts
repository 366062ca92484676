import { hex, sha1 } from '../../bytes/hash.ts';
import { bytesOf } from '../../bytes/text.ts';
import { OWN } from './codes.ts';

/** A FHIR resource as it is written; its names in the order of the R4 definition. */
export interface Resource {
  resourceType: string;
  [name: string]: unknown;
}

export interface Entry {
  fullUrl: string;
  resource: Resource;
  request: { method: 'POST'; url: string; ifNoneExist: string };
}

export interface Bundle {
  resourceType: 'Bundle';
  meta: { profile: string[] };
  type: 'transaction';
  timestamp: string;
  entry: Entry[];
}

const NAMESPACE = OWN.slice('urn:uuid:'.length)
  .replaceAll('-', '')
  .match(/../g)!
  .map((pair) => Number.parseInt(pair, 16));

/** A name-based UUID (RFC 9562, version 5): the same parts, the same id, in every run. */
export function uuid(...parts: (string | number)[]): string {
  const bytes = sha1(Uint8Array.of(...NAMESPACE, ...bytesOf(JSON.stringify(parts)))).subarray(0, 16);
  bytes[6] = (bytes[6]! & 0x0f) | 0x50;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const digits = hex(bytes);
  return [0, 8, 12, 16, 20].map((from, i, all) => digits.slice(from, all[i + 1])).join('-');
}

export const urn = (id: string): string => `urn:uuid:${id}`;

/** What each resource carries so that a server can tell it was sent before. */
export const identifier = (id: string): { system: string; value: string }[] => [{ system: OWN, value: id }];

/** Half of a surrogate pair has no UTF-8, and so no place in an address. */
const wellFormed = (text: string): string => text.replace(/\p{Cs}/gu, '\ufffd');

/** An entry that a server makes once, however often it is sent: it is known by its id, or by an identifier it already has. */
export const entry = (id: string, resource: Resource, known = id): Entry => ({
  fullUrl: urn(id),
  resource,
  request: {
    method: 'POST',
    url: resource.resourceType,
    ifNoneExist: `identifier=${OWN}|${encodeURIComponent(wellFormed(known))}`,
  },
});
