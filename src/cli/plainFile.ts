import { readFileSync, type Stats, statSync } from 'node:fs';
import { opened } from './exits.ts';

/** Settings, layouts, snapshots and the like are some kilobytes; a name in them may point anywhere. */
const SMALL = 1_000_000;

/**
 * Reads a plain file of at most so many bytes. A device or a pipe may never end, so it is not opened. Throws as the
 * file system does, or with code `EFBIG` or `EINVAL` (no plain file).
 */
export function readPlainFile(path: string, most: number): Buffer {
  const stat = statSync(path);
  const code = stat.isDirectory() ? 'EISDIR' : stat.isFile() ? null : 'EINVAL';
  if (code !== null) throw Object.assign(new Error('no plain file'), { code });
  if (stat.size > most) throw Object.assign(new Error('too large'), { code: 'EFBIG' });
  return readFileSync(path);
}

/** The text of a small file. Throws WrongUse when it cannot be opened. */
export const readText = (path: string): string =>
  opened(path, () => readPlainFile(path, SMALL))
    .toString('utf8')
    .replace(/^\ufeff/, '');

/** What stands at a path; undefined where nothing does, and for what can be no path: too long, or with a NUL in it. */
export function standsAt(path: string): Stats | undefined {
  try {
    return statSync(path);
  } catch {
    return undefined;
  }
}
