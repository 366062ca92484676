import { sha1 as nobleSha1 } from '@noble/hashes/legacy.js';
import { sha256 as nobleSha256 } from '@noble/hashes/sha2.js';
import { bytesOf, latin1 } from './text.ts';

type Hashed = Uint8Array | string;

const asBytes = (content: Hashed): Uint8Array => (typeof content === 'string' ? bytesOf(content) : content);

let digest: (bytes: Uint8Array) => Uint8Array = nobleSha256;

/** What an engine has of its own is ten times as fast. The digest is the same, so that only time tells which one worked. */
export function hashWith(own: (bytes: Uint8Array) => Uint8Array): void {
  digest = own;
}

/** SHA-256 (FIPS 180-4) of bytes, or of a text's UTF-8. */
export function sha256(content: Hashed): Uint8Array {
  return digest(asBytes(content));
}

/** SHA-1, for names made from names (RFC 9562, version 5) and nothing else. */
export function sha1(content: Hashed): Uint8Array {
  return nobleSha1(asBytes(content));
}

/** SHA-256 in hex. */
export function fingerprint(content: Hashed): string {
  return hex(sha256(content));
}

export function hex(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += byte.toString(16).padStart(2, '0');
  return text;
}

export function base64(bytes: Uint8Array): string {
  return btoa(latin1(bytes));
}
