import type { Person } from '../model/clinic.ts';
import type { Group, Listing } from './people.ts';

/** Between a code and the rest of a file's name: two underscores, which nobody writes by accident. */
const CODE_ENDS = '__';

export const top = (path: string): string => path.split('/', 1)[0]!;
export const isInFolder = (path: string): boolean => path.includes('/');
const stemOf = (name: string): string => name.replace(/(?<=.)\.[^.]*$/, '');

export function codeOfFile(name: string): string {
  const stem = stemOf(name);
  const end = stem.indexOf(CODE_ENDS);
  return end > 0 ? stem.slice(0, end) : stem;
}

/** So many files are named. */
const NAMED = 4;
const baseOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

/** Why there is nothing to read: no file at all, or none of a kind that is read here. */
export function nothingIn(unknown: readonly string[]): NonNullable<Person['wrong']> {
  if (unknown.length === 0) return { why: 'emptyFolder' };
  const names = unknown.slice(0, NAMED).map(baseOf).join(', ');
  return { why: 'unknownKind', actual: unknown.length > NAMED ? `${names} …` : names };
}

/** Files at the top of a kind that is not read: where no other file is that person's, nobody else would name them. */
export function unknownOnes({ unknown }: Listing, known: readonly Group[]): Group[] {
  const groups = new Map<string, Group>();
  const codes = new Set(known.map(({ code }) => code));
  for (const path of unknown) {
    const code = codeOfFile(path);
    if (isInFolder(path) || codes.has(code)) continue;
    const group = groups.get(code) ?? { at: code, folder: false, code, files: [] };
    group.files.push(path);
    group.wrong = nothingIn(group.files);
    groups.set(code, group);
  }
  return [...groups.values()];
}

/** What stands at the top and cannot be opened is somebody's too. */
export function oddOnes({ odd, closed }: Listing): Group[] {
  const at = (path: string, wrong: NonNullable<Person['wrong']>): Group => ({
    at: path,
    folder: false,
    code: path,
    files: [],
    wrong,
  });
  return [
    ...odd.filter((path) => !isInFolder(path)).map((path) => at(path, { why: 'link' })),
    ...closed.map(({ path, reason }) => at(path, { why: 'closed', actual: reason })),
  ];
}
