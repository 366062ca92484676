import { existsSync, readdirSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import type { Listing } from '../../clinic/people.ts';
import { isExport, isNoExport, isOfTheSystem, SETTINGS } from '../../papers/inputNames.ts';
import { reasonOf } from '../exits.ts';
import { RUN_LOG } from './log.ts';

export const MANIFEST = 'manifest.csv';

/** Folders below folders deeper than this are a mistake, or a way to keep us busy. */
const DEEPEST = 8;

export interface Walked extends Listing {
  manifest: boolean;
  /** Files that do not look like exports; told, not opened. */
  passedOver: string[];
}

/** Looks through a clinic's folder without opening a file. Links are never followed; `apart` is left out. */
export function walk(folder: string, leftOut: string): Walked {
  const found: Walked = {
    exports: [],
    unknown: [],
    settings: [],
    folders: [],
    odd: [],
    closed: [],
    manifest: false,
    passedOver: [],
  };
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
      } else if (depth === 0 && name === MANIFEST) found.manifest = true;
      else if (name === SETTINGS) found.settings.push(path);
      else if (isNoExport(name)) continue;
      else if (isExport(name)) found.exports.push(path);
      else if (isOfTheSystem(name)) found.passedOver.push(path);
      else found.unknown.push(path);
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
