import { utf8 } from '../../bytes/text.ts';
import { findPeople, type Listing } from '../../clinic/people.ts';
import type { Person } from '../../model/clinic.ts';
import { isExport, isNoExport, isOfTheSystem, SETTINGS } from '../../papers/inputNames.ts';
import { visitDay } from '../../papers/resultNames.ts';
import { comparedDays } from '../../papers/wanted.ts';
import { readSettings } from '../../schemas/settings.ts';
import type { Found, Someone, Taken } from '../messages.ts';

/** The files that were taken, by path. The worker's own: handed over by the page, which keeps none of their bytes. */
export interface Shelf {
  bytes: Map<string, Uint8Array>;
}

export const baseOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);
const bare = (name: string): string => name.replace(/(?<=.)\.[^.]*$/, '');

/** Puts files onto the shelf. What system files and hidden ones are called is nobody's. */
export function put({ bytes }: Shelf, files: readonly Taken[]): void {
  for (const file of files) {
    const parts = file.path.split('/').filter((part) => part !== '');
    if (parts.some((part) => part.startsWith('.'))) continue;
    bytes.set(parts.join('/'), file.bytes);
  }
}

/** What settings in a folder (empty, or with `/` at its end) call by this name. */
export const besideIn = (folder: string, name: string): string =>
  folder +
  name
    .split('/')
    .filter((part) => part !== '' && part !== '.')
    .join('/');

/** The visit file of this path, or all that lie in the folder of this path, as the command takes them; none: no such path. */
export function visitsAt({ bytes }: Shelf, path: string): string[] {
  if (bytes.has(path)) return [path];
  const inside = [...bytes.keys()].filter((each) => each === `${path}/${baseOf(each)}`);
  return inside.filter((each) => visitDay(baseOf(each)) !== undefined).sort();
}

/** Folders that a person's settings name to compare with: what lies there is of earlier visits, and no export of now. */
function earlierFolders({ bytes }: Shelf, folder: string): string[] {
  const lying = bytes.get(folder + SETTINGS);
  const read = lying && readSettings(utf8(lying), SETTINGS);
  const named = read && 'settings' in read ? [read.settings.compare ?? []].flat() : [];
  return named.filter((name) => comparedDays(name) === null).map((name) => `${besideIn(folder, name)}/`);
}

/** The one folder that all of it lies in; empty where files lie beside each other. */
function folderOf(paths: readonly string[]): string {
  const tops = new Set(paths.map((path) => (path.includes('/') ? path.slice(0, path.indexOf('/')) : '')));
  const [top = ''] = tops;
  return tops.size === 1 ? top : '';
}

/** Who is there, told apart by the rules of a clinic's folder; `say` words why somebody's files cannot be read. */
export function look(shelf: Shelf, say: (wrong: NonNullable<Person['wrong']>) => string): Found {
  const paths = [...shelf.bytes.keys()].sort();
  const top = folderOf(paths);
  const listing: Listing & { passedOver: string[] } = {
    ...{ exports: [], settings: [], unknown: [], folders: [], odd: [], closed: [], passedOver: [] },
  };
  const from = top === '' ? 0 : top.length + 1;
  const earlier = earlierFolders(shelf, top === '' ? '' : `${top}/`);
  for (const full of paths) {
    const path = full.slice(from);
    const name = baseOf(path);
    if (earlier.some((folder) => full.startsWith(folder))) {
      listing.passedOver.push(path);
      continue;
    }
    if (path.includes('/')) listing.folders.push(path.slice(0, path.indexOf('/')));
    if (name === SETTINGS) listing.settings.push(path);
    else if (isExport(name) && !isNoExport(name)) listing.exports.push(path);
    else if (isNoExport(name) || isOfTheSystem(name)) listing.passedOver.push(path);
    else listing.unknown.push(path);
  }
  listing.folders = [...new Set(listing.folders)];
  const whole = (path: string): string => (top === '' ? path : `${top}/${path}`);
  const visitsIn = (folder: string): string[] =>
    paths.filter((path) => visitDay(baseOf(path)) !== undefined && path.startsWith(whole(folder)));
  const people = findPeople(listing).map(
    ({ code, stem, files, settings, wrong }): Someone => ({
      visits: files[0]?.includes('/') ? visitsIn(`${files[0].split('/')[0]}/`) : [],
      ...{ code, stem, files: files.map(whole) },
      ...(settings === undefined ? {} : { settings: whole(settings) }),
      ...(wrong === undefined ? {} : { wrong: say(wrong) }),
    }),
  );
  const own = listing.settings.find((path) => !path.includes('/'));
  const first = listing.exports[0] ?? '';
  const together: Someone = {
    code: '',
    // As the command names results: by the one folder, else by the first file.
    stem: top === '' ? bare(baseOf(first)) : bare(top),
    files: listing.exports.map(whole),
    visits: visitsIn(''),
    ...(own === undefined ? {} : { settings: whole(own) }),
  };
  const readable = people.filter(({ wrong }) => wrong === undefined);
  const inFolders = listing.exports.some((path) => path.includes('/'));
  const whose =
    listing.exports.length === 0
      ? 'none'
      : readable.length < 2 && people.length < 2
        ? 'one'
        : inFolders
          ? 'many'
          : own !== undefined
            ? 'one'
            : 'ask';
  return { whose, people, together, passedOver: [...listing.unknown, ...listing.passedOver].map(baseOf) };
}
