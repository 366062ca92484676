import { hex, sha1 } from '../../bytes/hash.ts';
import { bytesOf } from '../../bytes/text.ts';
import { OWN } from './codes.ts';

/** A FHIR resource as it is written; its names in the order of the R4 definition. */
export interface Resource {
  resourceType: string;
  [name: string]: unknown;
}

/** What a resource is known by, to the server that took it before. */
export interface Identifier {
  system: string;
  value: string;
}

export interface Entry {
  fullUrl: string;
  resource: Resource;
  request: { method: 'POST'; url: string; ifNoneExist?: string };
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
export function uuid(...parts: (string | number | null)[]): string {
  const bytes = sha1(Uint8Array.of(...NAMESPACE, ...bytesOf(JSON.stringify(parts)))).subarray(0, 16);
  bytes[6] = (bytes[6]! & 0x0f) | 0x50;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const digits = hex(bytes);
  return [0, 8, 12, 16, 20].map((from, i, all) => digits.slice(from, all[i + 1])).join('-');
}

export const urn = (id: string): string => `urn:uuid:${id}`;

/** Half of a surrogate pair has no UTF-8, and so no place in an address. */
const wellFormed = (text: string): string => text.replace(/\p{Cs}/gu, '\ufffd');

/**
 * An entry. One with an identifier is made once by a server, however often it is sent; one without is made each time, as nothing in it
 * could be told from what another clinic sends.
 */
export function entry(id: string, { resourceType, ...rest }: Resource, known?: Identifier): Entry {
  const { meta, ...content } = rest;
  return {
    fullUrl: urn(id),
    resource: {
      resourceType,
      ...(meta === undefined ? {} : { meta }),
      ...(known === undefined ? {} : { identifier: [known] }),
      ...content,
    },
    request: {
      method: 'POST',
      url: resourceType,
      ...(known === undefined
        ? {}
        : { ifNoneExist: `identifier=${known.system}|${encodeURIComponent(wellFormed(known.value))}` }),
    },
  };
}
