import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { clearParts, partPath } from './halfWritten.ts';

export interface Output {
  name: string;
  /** A long text comes in pieces, so that it need not stand in memory twice. */
  bytes: Uint8Array | string | string[];
}

/** Asked to stop while saving, we finish the files first: it takes milliseconds. */
const STOPS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
const finishFirst = (): void => {};

/**
 * Writes all outputs into `folder`, or none: each goes to a hidden name in the same folder, is forced to the disk, and
 * only when all are there are they given their names. What a killed run left half written is cleared. Throws as the file system does, after clearing up.
 */
export function saveAll(folder: string, outputs: readonly Output[]): void {
  for (const stop of STOPS) process.on(stop, finishFirst);
  const parts: { part: string; whole: string }[] = [];
  try {
    mkdirSync(folder, { recursive: true });
    clearParts(
      folder,
      outputs.map(({ name }) => name),
    );
    for (const { name, bytes } of outputs) {
      const part = partPath(folder, name);
      parts.push({ part, whole: join(folder, name) });
      // Never through a link of that name.
      rmSync(part, { force: true });
      writeWhole(part, bytes);
    }
    for (const { part, whole } of parts) renameSync(part, whole);
  } catch (error) {
    for (const { part } of parts) rmSync(part, { force: true });
    throw error;
  } finally {
    for (const stop of STOPS) process.off(stop, finishFirst);
  }
}

function writeWhole(path: string, bytes: Output['bytes']): void {
  const file = openSync(path, 'wx');
  try {
    for (const piece of Array.isArray(bytes) ? bytes : [bytes]) {
      const whole = typeof piece === 'string' ? Buffer.from(piece) : piece;
      for (let done = 0; done < whole.length; ) done += writeSync(file, whole, done);
    }
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
