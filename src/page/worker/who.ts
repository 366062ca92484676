import { utf8 } from '../../bytes/text.ts';
import {
  codesIn,
  DEEPEST,
  leftOver,
  MANIFEST,
  nothingSeen,
  RUN_LOG,
  seeFile,
  type Walked,
} from '../../clinic/listing.ts';
import { type Manifest, readManifest } from '../../clinic/manifest.ts';
import { findPeople } from '../../clinic/people.ts';
import { RECORD } from '../../clinic/recorded.ts';
import type { Person } from '../../model/clinic.ts';
import { MOST_BYTES, SETTINGS } from '../../papers/inputNames.ts';
import { isVisitOf, visitDay } from '../../papers/resultNames.ts';
import { EARLIER } from '../earlier.ts';
import type { Lying } from '../folderMessages.ts';
import type { Found, Someone } from '../messages.ts';
import { baseOf, comparedPaths, folderOf, type Lain, namedIn, type Shelf, settingsAt } from './files.ts';
import { heavyOf, type Load } from './load.ts';
import { byDay, runOf } from './run.ts';

const bare = (name: string): string => name.replace(/(?<=.)\.[^.]*$/, '');

/** The one folder that all of it lies in; empty where files lie beside each other. */
function topOf(paths: readonly string[]): string {
  const tops = new Set(paths.map((path) => (path.includes('/') ? path.slice(0, path.indexOf('/')) : '')));
  const [top = ''] = tops;
  return tops.size === 1 ? top : '';
}

/** What a walk through a folder with these files would see. */
function walked(paths: readonly string[]): Walked {
  const found = nothingSeen();
  const folders = new Set<string>();
  const closed = new Set<string>();
  const results = paths.filter((path) => path.endsWith(`/${RUN_LOG}`)).map(folderOf);
  const passed = new Set<string>();
  for (const path of paths) {
    const earlier = results.find((folder) => path.startsWith(folder));
    const parts = path.split('/');
    if (earlier !== undefined) {
      passed.add(earlier.slice(0, -1));
      continue;
    }
    if (parts.length > 1) folders.add(parts[0]!);
    if (parts.length - 1 > DEEPEST) closed.add(parts.slice(0, DEEPEST + 1).join('/'));
    else if (!path.endsWith('/')) seeFile(found, path);
  }
  return {
    ...found,
    folders: [...folders],
    closed: [...closed].map((path) => ({ path, reason: 'ELOOP' })),
    passedOver: [...found.passedOver, ...passed],
  };
}

/** What is said of a folder as a whole. */
export interface Voice {
  wrong(why: NonNullable<Person['wrong']>): string;
  toldBy(people: readonly Person[], manifest: boolean): string;
  /** Why the settings or the manifest at the top cannot be used. */
  refused(of: 'settings' | 'losses' | 'manifest', actual: string): string;
  /** What reading so much will take. */
  heavy(load: Load): string;
  /** So many files of earlier visits, of so many people. */
  earlier(files: number, people: number): string;
}

/** Who is there, told apart by the rules of a clinic's folder. `today`: YYYY-MM-DD. */
export function look(
  shelf: Shelf,
  files: readonly Lying[],
  today: string,
  voice: Voice,
): { found: Found; unread: string[] } {
  const paths = [...shelf.paths].filter((path) => !path.startsWith(EARLIER)).sort();
  const top = topOf(paths);
  const from = top === '' ? 0 : top.length + 1;
  const whole = (path: string): string => (top === '' ? path : `${top}/${path}`);
  const inside = paths.map((path) => path.slice(from)).filter((path) => path !== '');
  const all = walked(inside);
  const usual = all.settings.find((path) => path === SETTINGS);
  const everyone = settingsAt(shelf, usual === undefined ? undefined : whole(usual), true);
  const visitFiles = [...shelf.paths].filter((path) => visitDay(baseOf(path)) !== undefined).sort(byDay);
  // What lies in a folder that settings name to compare with is of earlier visits, and no export of now.
  const earlier = 'issues' in everyone ? [] : comparedPaths(everyone.settings).map((path) => `${path.slice(from)}/`);
  const isEarlier = (path: string): boolean => earlier.some((folder) => path.startsWith(folder));
  const now = all.exports.filter((path) => !isEarlier(path));
  const manifest: Manifest = all.manifest
    ? readManifest(shelf.bytes.get(whole(MANIFEST)) ?? new Uint8Array())
    : { ok: true, rows: [] };
  const visitsIn = (folder: string): string[] =>
    paths.filter((path) => visitDay(baseOf(path)) !== undefined && path.startsWith(whole(folder)));
  const needs = (one: Pick<Someone, 'files' | 'visits'>, ...settings: (string | undefined)[]): string[] => {
    const lying = settings.flatMap((path) => (path === undefined ? [] : [whole(path)]));
    return [...new Set([...one.files, ...one.visits, ...lying, ...lying.flatMap((path) => namedIn(shelf, path))])];
  };
  const sizes = new Map(files.map(({ path, size }) => [path, size]));
  const weighed = (needed: readonly string[]): Pick<Someone, 'heavy'> => {
    const heavy = heavyOf(needed.map((path) => [path, sizes.get(path) ?? 0]));
    return heavy ? { heavy: voice.heavy(heavy) } : {};
  };
  const someone = (person: Person): Someone => {
    const { code, stem, settings, wrong } = person;
    const own = person.files.map(whole);
    const visits = person.files[0]?.includes('/') ? visitsIn(`${person.files[0].split('/')[0]}/`) : [];
    const theirs = visitFiles.filter(
      (path) => visits.includes(path) || isVisitOf(baseOf(path), stem) || folderOf(path).endsWith(`/${stem}/`),
    );
    const record = [...shelf.paths].find((path) => path.startsWith(EARLIER) && path.endsWith(`/${stem}/${RECORD}`));
    const before = [...visits, ...theirs, ...(record === undefined ? [] : [record])];
    const wanted = needs({ files: own, visits: before }, settings, usual);
    return {
      ...{ code, stem, files: own, visits, earlier: theirs, person, needs: wanted },
      ...weighed(own),
      ...(record === undefined ? {} : { record }),
      ...(settings === undefined ? {} : { settings: whole(settings) }),
      ...(usual === undefined ? {} : { usual: whole(usual) }),
      ...(wrong === undefined ? {} : { wrong: voice.wrong(wrong) }),
    };
  };
  const codes = codesIn(all.settings, (path) => utf8(shelf.bytes.get(whole(path))!));
  const found = findPeople({ ...all, codes }, manifest.ok ? manifest.rows : []);
  const people = found.map(someone);
  const exports = now.map(whole);
  const together: Someone = {
    code: '',
    // As the command names results: by the one folder, else by the first file.
    stem: top === '' ? bare(baseOf(now[0] ?? '')) : bare(top),
    ...{
      files: exports,
      visits: visitsIn(''),
      earlier: [],
      needs: needs({ files: exports, visits: visitsIn('') }, usual),
    },
    ...weighed(exports),
    ...(usual === undefined ? {} : { settings: whole(usual) }),
  };
  const readNow = new Set([...now, ...all.settings, MANIFEST]);
  return {
    found: {
      whose: whoseAre(all, now, findPeople({ ...all, exports: now, folders: foldersOf(all, isEarlier) })),
      toldBy: voice.toldBy(found, all.manifest),
      wrong: wrongOf(everyone, manifest, voice),
      today: ('settings' in everyone && everyone.settings.date) || today,
      stem: top === '' ? 'people' : bare(top),
      most: MOST_BYTES,
      ...{ people, together },
      ...runOf(everyone, shelf, people, voice.earlier),
      passedOver: inside.filter((path) => !readNow.has(path) && !path.endsWith('/')).map(baseOf),
    },
    unread: leftOver(all, new Set(found.flatMap((one) => one.files))),
  };
}

const inFolder = (path: string): boolean => path.includes('/');
const foldersOf = ({ folders }: Walked, isEarlier: (path: string) => boolean): string[] =>
  folders.filter((folder) => !isEarlier(`${folder}/`));

function whoseAre(all: Walked, now: readonly string[], people: readonly Person[]): Found['whose'] {
  if (all.manifest) return 'many';
  if (now.length === 0) return 'none';
  if (people.length < 2) return 'one';
  if (now.some(inFolder)) return 'many';
  return all.settings.includes(SETTINGS) ? 'one' : 'ask';
}

function wrongOf(everyone: Lain, manifest: Manifest, voice: Voice): string {
  if (!manifest.ok) return voice.refused('manifest', manifest.actual);
  if ('issues' in everyone)
    return voice.refused('settings', everyone.issues.map(({ actual = '' }) => actual).join(', '));
  // Accepted for all, they would be looked at by nobody.
  return everyone.settings.acceptLosses === undefined ? '' : voice.refused('losses', '');
}
