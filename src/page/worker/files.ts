import { utf8 } from '../../bytes/text.ts';
import type { Issue } from '../../model/input.ts';
import { visitDay } from '../../papers/resultNames.ts';
import { comparedDays } from '../../papers/wanted.ts';
import { type RunSettings, readClinicSettings } from '../../schemas/clinicSettings.ts';
import { type FolderSettings, readSettings } from '../../schemas/settings.ts';
import type { Taken } from '../messages.ts';

/** What was brought: the paths of all files, and the bytes of those that are wanted now. */
export interface Shelf {
  paths: Set<string>;
  bytes: Map<string, Uint8Array>;
}

export const emptyShelf = (): Shelf => ({ paths: new Set(), bytes: new Map() });

export const baseOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
/** With `/` at its end; empty at the top. */
export const folderOf = (path: string): string => path.slice(0, path.lastIndexOf('/') + 1);

/** Puts files onto the shelf. What system files and hidden ones are called is nobody's. */
export function put({ paths, bytes }: Shelf, files: readonly Pick<Taken, 'path'>[] | readonly Taken[]): void {
  for (const file of files) {
    const parts = file.path.split('/').filter((part) => part !== '');
    if (parts.some((part) => part.startsWith('.'))) continue;
    // A folder that holds nothing ends in a stroke.
    const path = parts.join('/') + (file.path.endsWith('/') ? '/' : '');
    paths.add(path);
    if ('bytes' in file) bytes.set(path, file.bytes);
  }
}

/** What settings in a folder (empty, or with `/` at its end) call by this name. */
function besideIn(folder: string, name: string): string {
  const parts: string[] = [];
  for (const part of `${folder}${name}`.split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '' && part !== '.') parts.push(part);
  }
  return parts.join('/');
}

/** The visit file of this path, or all that lie in the folder of this path, as the command takes them; none: no such path. */
export function visitsAt({ paths }: Pick<Shelf, 'paths'>, path: string): string[] {
  if (paths.has(path)) return [path];
  const inside = [...paths].filter((each) => each === `${path}/${baseOf(each)}`);
  return inside.filter((each) => visitDay(baseOf(each)) !== undefined).sort();
}

/** A short layout may stand in the settings themselves. */
export const isInline = (layout: string): boolean => layout.trimStart().startsWith('{');

/** Settings that lie at a path, and what they say of a run over many. */
export type Lain = { settings: FolderSettings; run: RunSettings } | { issues: Issue[] };

/**
 * Settings that lie at a path, what they name called by its path; nothing where there are none. `top`: those of a folder of people may speak of
 * the run as well.
 */
export function settingsAt(shelf: Shelf, path: string | undefined, top = false): Lain {
  const lying = path === undefined ? undefined : shelf.bytes.get(path);
  if (path === undefined || lying === undefined) return { settings: {}, run: {} };
  const read = (top ? readClinicSettings : readSettings)(utf8(lying), baseOf(path));
  if ('issues' in read) return read;
  const [settings, run] = 'everyone' in read ? [read.everyone, read.run] : [read.settings, {}];
  const { layout, compare, agreed } = settings;
  const whole = (name: string): string => besideIn(folderOf(path), name);
  const wholeOf = (name: string): string => (comparedDays(name) === null ? whole(name) : name);
  return {
    run: {
      ...run,
      ...(run.since === undefined ? {} : { since: whole(run.since) }),
      ...(run.thresholds === undefined ? {} : { thresholds: whole(run.thresholds) }),
    },
    settings: {
      ...settings,
      ...(layout === undefined ? {} : { layout: isInline(layout) ? layout : whole(layout) }),
      ...(compare === undefined
        ? {}
        : { compare: typeof compare === 'string' ? wholeOf(compare) : compare.map(wholeOf) }),
      ...(agreed === undefined ? {} : { agreed: whole(agreed) }),
    },
  };
}

/** Paths of what settings name to compare with, files or folders. */
export const comparedPaths = ({ compare }: FolderSettings): string[] =>
  [compare ?? []].flat().filter((name) => comparedDays(name) === null);

/** Files beside the exports that settings at a path name. */
export function namedIn(shelf: Shelf, path: string): string[] {
  const read = settingsAt(shelf, path, true);
  if ('issues' in read) return [];
  const { layout, agreed } = read.settings;
  const files = [layout, agreed].filter((name): name is string => name !== undefined && shelf.paths.has(name));
  return [...files, ...comparedPaths(read.settings).flatMap((name) => visitsAt(shelf, name))];
}
