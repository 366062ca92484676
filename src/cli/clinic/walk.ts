import { existsSync, readdirSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { DEEPEST, nothingSeen, RUN_LOG, seeFile, type Walked } from '../../clinic/listing.ts';
import { reasonOf } from '../exits.ts';

/** Looks through a clinic's folder without opening a file. Links are never followed; `apart` is left out. */
export function walk(folder: string, leftOut: string): Walked {
  const found = nothingSeen();
  look(resolve(folder), 0);
  return found;

  function look(at: string, depth: number): void {
    for (const entry of readdirSync(at, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
      const { name } = entry;
      const full = join(at, name);
      const path = relative(folder, full).split(sep).join('/');
      if (name.startsWith('.') || full === leftOut) continue;
      if (entry.isDirectory() && existsSync(join(full, RUN_LOG))) {
        // Papers of an earlier run: read as exports they would be somebody.
        found.passedOver.push(path);
      } else if (entry.isDirectory()) {
        if (depth === 0) found.folders.push(path);
        if (depth >= DEEPEST) found.closed.push({ path, reason: 'ELOOP' });
        else lookOr(full, path, depth + 1);
      } else if (!entry.isFile()) {
        found.odd.push(path);
        if (depth > 0) found.passedOver.push(path);
      } else seeFile(found, path);
    }
  }

  function lookOr(full: string, path: string, depth: number): void {
    try {
      look(full, depth);
    } catch (error) {
      found.closed.push({ path, reason: reasonOf(error) });
      // Then nothing is known of it, not even that it is empty.
      found.folders = found.folders.filter((folder) => folder !== path);
    }
  }
}
