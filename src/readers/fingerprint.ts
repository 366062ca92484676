import { createHash } from 'node:crypto';

/** SHA-256 of the bytes as they came, in hex. */
export function fingerprint(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
