import { isExport, isNoExport, isOfTheSystem, SETTINGS } from '../papers/inputNames.ts';
import type { Listing } from './people.ts';

// What lies in a clinic's folder, by names and places alone: the same for a folder of a disk and for files that a page was given.

export const MANIFEST = 'manifest.csv';
/** Lies in a folder of results, and nowhere else. */
export const RUN_LOG = 'run-log.jsonl';
/** Folders below folders deeper than this are a mistake, or a way to keep us busy. */
export const DEEPEST = 8;

export interface Walked extends Listing {
  manifest: boolean;
  /** Files that do not look like exports; told, not opened. */
  passedOver: string[];
}

export const nothingSeen = (): Walked => ({
  ...{ exports: [], unknown: [], settings: [], folders: [], odd: [], closed: [] },
  ...{ manifest: false, passedOver: [] },
});

/** Puts a plain file where it belongs. `path` from the folder, with `/`. */
export function seeFile(found: Walked, path: string): void {
  const name = path.slice(path.lastIndexOf('/') + 1);
  if (path === MANIFEST) found.manifest = true;
  else if (name === SETTINGS) found.settings.push(path);
  else if (isNoExport(name)) return;
  else if (isExport(name)) found.exports.push(path);
  else if (isOfTheSystem(name)) found.passedOver.push(path);
  else found.unknown.push(path);
}

/** Files of the folder that are nobody's, where these are read. */
export const leftOver = ({ passedOver, unknown }: Walked, read: ReadonlySet<string>): string[] =>
  [...passedOver, ...unknown.filter((path) => !read.has(path))].sort();

/** As in the schema of settings. */
const MOST_CODE = 80;

/** The codes that people's own settings give them. A file that is no JSON, or cannot be read, is told when the person is worked on. */
export function codesIn(settings: readonly string[], textAt: (path: string) => string): Map<string, string> {
  const codes = new Map<string, string>();
  for (const path of settings.filter((one) => one.split('/').length === 2)) {
    try {
      const { code } = JSON.parse(textAt(path)) as { code?: unknown };
      if (typeof code === 'string' && code.trim() !== '' && code.length <= MOST_CODE) codes.set(path, code);
    } catch {
      // Told with the person.
    }
  }
  return codes;
}
