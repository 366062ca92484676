import type { Taken } from '../messages.ts';
import { say } from '../say.ts';
import type { Picked } from './dropped.ts';

/** Files that say who is who in a folder, and how all of it is to be read. */
export const saysWho = (path: string): boolean => /(^|\/)(settings\.json|manifest\.csv)$/.test(path);

/**
 * Bytes of files, from where they lie. Read here and not by a worker: opened from disk, one engine cannot read a file that was handed over.
 * @throws Unopened where one cannot be read, or holds more than `most` bytes.
 */
export async function bytesOf(
  picked: readonly Picked[],
  paths: readonly string[],
  most = Number.POSITIVE_INFINITY,
): Promise<Taken[]> {
  const wanted = new Set(paths);
  return Promise.all(
    picked
      .filter(({ path }) => wanted.has(path))
      .map(async ({ path, file }) => {
        if (file.size > most) throw new Unopened(path, 'EFBIG');
        try {
          return { path, bytes: new Uint8Array(await file.arrayBuffer()) };
        } catch (error) {
          throw new Unopened(path, error instanceof Error ? error.name : String(error));
        }
      }),
  );
}

/** What is handed over with files, so that it is never in memory twice. */
export const buffersOf = (files: readonly Pick<Taken, 'bytes'>[]): ArrayBuffer[] =>
  files.map(({ bytes }) => bytes.buffer as ArrayBuffer);

export class Unopened extends Error {
  readonly file: string;
  readonly reason: string;
  constructor(file: string, reason: string) {
    super(`${file}: ${reason}`);
    this.file = file;
    this.reason = reason;
  }
}

/** What went wrong, for a person. */
export function faultOf(error: unknown): string {
  if (error instanceof Unopened)
    return say(error.reason === 'EFBIG' ? 'status.tooLarge' : 'status.unopened', {
      file: error.file,
      reason: error.reason,
    });
  return say('status.failed', { reason: error instanceof Error ? error.message : String(error) });
}
