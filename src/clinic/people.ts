import { fingerprint } from '../bytes/hash.ts';
import type { ManifestRow, Person } from '../model/clinic.ts';
import { safeName } from '../papers/safeName.ts';
import { maybeOne } from './oneOrTwo.ts';
import { codeOfFile, isInFolder, nothingIn, oddOnes, top, unknownOnes } from './unreadOnes.ts';
import { compareCodes } from './worklist.ts';

/** What a walk through the folder saw. Paths are relative to it, with `/`. */
export interface Listing {
  /** Files that may be exports. */
  exports: string[];
  /** Files named `settings.json`. */
  settings: string[];
  /** Files of a kind that is not read here; somebody's all the same. */
  unknown: string[];
  /** Folders at the top, also those that hold nothing. */
  folders: string[];
  /** Links and other things that are no plain file or folder; never followed, so no loop can be walked. */
  odd: string[];
  /** Folders that could not be looked into, with the system's reason. */
  closed: { path: string; reason: string }[];
  /** The code that a settings file gives, by its path. */
  codes?: ReadonlyMap<string, string>;
}

/** A group of files that belong together, and where it stands: `P-7` (a folder) or a file's code. */
export interface Group {
  at: string;
  folder: boolean;
  code: string;
  files: string[];
  settings?: string;
  row?: ManifestRow;
  wrong?: Person['wrong'];
}

/**
 * Everyone in a folder: each subfolder is one person; at the top, files whose names agree up to `__` (or up to the
 * ending) are one person's. A manifest may say otherwise. Everything found, and every row of the manifest, becomes
 * exactly one person's, and two people are never merged by accident: a code met twice is told and neither is read.
 */
export function findPeople(listing: Listing, rows: readonly ManifestRow[] = []): Person[] {
  const known = groupFiles(listing);
  const groups = [...known, ...unknownOnes(listing, known), ...oddOnes(listing)];
  const nowhere = assignRows(groups, rows);
  askAbout(known);
  const people = mergeNamed([...groups, ...nowhere]);
  tellTwins(people);
  return withStems(people);
}

function groupFiles({ exports, settings, folders, unknown, codes }: Listing): Group[] {
  const lying = new Set(settings);
  const unknownIn = byTop(unknown);
  const groups = new Map<string, Group>();
  for (const folder of folders) groups.set(`${folder}/`, { at: folder, folder: true, code: folder, files: [] });
  for (const path of [...exports].sort()) {
    const folder = isInFolder(path);
    const code = folder ? top(path) : codeOfFile(path);
    const at = folder ? `${code}/` : code;
    const group = groups.get(at) ?? { at: code, folder, code, files: [] };
    group.files.push(path);
    groups.set(at, group);
  }
  for (const group of groups.values()) {
    const own = `${group.at}/settings.json`;
    if (group.folder && lying.has(own)) {
      group.settings = own;
      group.code = codes?.get(own) ?? group.code;
    }
    if (group.files.length === 0) group.wrong = nothingIn(unknownIn.get(group.at) ?? []);
  }
  return [...groups.values()];
}

/** Paths below a folder, by that folder. */
function byTop(paths: readonly string[]): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const path of paths.filter(isInFolder)) found.set(top(path), [...(found.get(top(path)) ?? []), path]);
  return found;
}

/** Gives each row to its group. Returns groups for rows that name nothing in the folder. */
function assignRows(groups: Group[], rows: readonly ManifestRow[]): Group[] {
  const nowhere: Group[] = [];
  const named = new Map<string, Group[]>();
  const name = (path: string, group: Group): void => {
    const all = named.get(path) ?? [];
    if (!all.includes(group)) named.set(path, [...all, group]);
  };
  for (const group of groups) for (const path of [group.at, ...(group.folder ? [] : group.files)]) name(path, group);
  for (const row of rows) {
    const fits = named.get(row.person) ?? [];
    let group = fits.length === 1 ? fits[0]! : undefined;
    if (group && !group.folder && group.files.length > 1 && group.at !== row.person) {
      // A row may name one file of several that only look alike: it is then taken apart from them.
      group.files = group.files.filter((file) => file !== row.person);
      group = { at: row.person, folder: false, code: group.code, files: [row.person] };
      groups.push(group);
      named.set(row.person, [group]);
    }
    if (!group) {
      const why = fits.length > 1 ? 'ambiguousRow' : 'noFile';
      nowhere.push({
        at: row.person,
        folder: false,
        code: row.code ?? row.person,
        files: [],
        row,
        wrong: { why, actual: String(row.line) },
      });
    } else if (group.row) {
      group.wrong = { why: 'twoRows', actual: `${group.row.line}, ${row.line}` };
    } else {
      group.row = row;
      if (row.code !== undefined) group.code = row.code;
      if (row.wrong) group.wrong = { why: 'manifestCell', actual: `${row.wrong.column} = ${row.wrong.actual}` };
    }
  }
  return nowhere;
}

/** Files to which the manifest gives one code are one person's, when their rows agree in all else. */
function mergeNamed(groups: readonly Group[]): Group[] {
  const merged = new Map<string, Group>();
  const rest: Group[] = [];
  const meant = ({ row }: Group): string => JSON.stringify({ ...row, line: 0, person: '' });
  for (const group of groups) {
    const named = group.row?.code !== undefined && !group.folder && !group.wrong;
    const first = named ? merged.get(group.code) : undefined;
    if (first && meant(first) === meant(group)) first.files = [...first.files, ...group.files].sort();
    else if (named && !first) merged.set(group.code, group);
    else rest.push(group);
  }
  return [...merged.values(), ...rest];
}

/** Names that may be one person's are asked about, until the manifest gives each a code. */
function askAbout(known: readonly Group[]): void {
  for (const set of maybeOne(known)) {
    // One code for both is told as such, or makes them one.
    const twins = new Set(set.map(({ code }) => code)).size < set.length;
    if (twins || set.every(({ row }) => row?.code !== undefined)) continue;
    const names = set.map(({ at, files, folder }) => (folder || files.length > 1 ? at : files[0]!));
    const code = set.reduce((shortest, { at }) => (at.length < shortest.length ? at : shortest), set[0]!.at);
    const lines = names.map((name) => `${name},${code}`).join('  ');
    for (const group of set) group.wrong ??= { why: 'oneOrTwo', actual: names.join(', '), lines };
  }
}

function tellTwins(groups: Group[]): void {
  const seen = new Map<string, Group[]>();
  for (const group of groups) {
    const same = seen.get(group.code);
    if (same) same.push(group);
    else seen.set(group.code, [group]);
  }
  for (const twins of seen.values()) {
    if (twins.length < 2) continue;
    for (const twin of twins) twin.wrong ??= { why: 'twinCode', actual: twins.map(({ at }) => at).join(', ') };
  }
}

function foundBy({ folder, files, row, wrong, at }: Group): NonNullable<Person['by']> {
  if (wrong?.why === 'oneOrTwo') return 'asked';
  if (folder) return 'folder';
  if (files.length === 0) return 'nothing';
  if (row?.code !== undefined && files.some((path) => codeOfFile(path) !== at)) return 'manifest';
  return files.length > 1 ? 'joined' : 'file';
}

function withStems(groups: readonly Group[]): Person[] {
  const uses = new Map<string, number>();
  const plain = groups.map(({ code }) => safeName(code));
  for (const stem of plain) uses.set(stem.toLowerCase(), (uses.get(stem.toLowerCase()) ?? 0) + 1);
  return groups
    .map((group, i): Person => {
      const { at, folder, code, files, settings, row, wrong } = group;
      // Names that some disk would take for one are told apart by a few digits of what they stand for.
      const alone = uses.get(plain[i]!.toLowerCase()) === 1;
      return {
        code,
        stem: alone
          ? plain[i]!
          : `${plain[i]}-${fingerprint(JSON.stringify([code, at, folder, files, row?.line])).slice(0, 6)}`,
        files,
        by: foundBy(group),
        at: folder || files.length !== 1 ? at : files[0]!,
        ...(settings === undefined ? {} : { settings }),
        ...(row === undefined ? {} : { row }),
        ...(wrong === undefined ? {} : { wrong }),
      };
    })
    .sort((a, b) => compareCodes(a.code, b.code) || compareCodes(a.stem, b.stem));
}
