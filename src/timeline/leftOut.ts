import type { ReadFile } from '../model/input.ts';
import type { Issue, IssueCode } from '../model/issues.ts';

/** A file of unknown form that holds at most this share of the readings of the others cannot change much (ours). */
const SMALL = 0.05;
/** What a file is refused for before anything is known of its columns. */
const UNKNOWN: ReadonlySet<IssueCode> = new Set([
  'columns-unclear',
  'no-columns',
  'delimiter-unclear',
  'json-unknown',
  'json-broken',
]);
/** Warnings of a file that is known to hold nothing. */
const EMPTY: ReadonlySet<IssueCode> = new Set(['file-empty', 'no-rows', 'results-only']);

/**
 * A log that cannot be read never costs a person the papers: where other files give readings, a refused file that can hold
 * none, or only a few, is left out of them, and told. `missing`: what the papers say they were made without.
 */
export function leaveOutUnread(files: ReadFile[]): { files: ReadFile[]; missing: string[] } {
  const readings = files.reduce((sum, file) => sum + (isRefused(file) ? 0 : file.readings.count), 0);
  if (readings === 0) return { files, missing: [] };
  const missing: string[] = [];
  const kept = files.map((file) => {
    const refused = isRefused(file);
    if (refused ? !mayBeLeftOut(file, readings) : !gaveNothing(file)) return file;
    missing.push(file.name);
    const issues = file.issues.map(
      (issue): Issue => (issue.level === 'refusal' ? { ...issue, level: 'warning' } : issue),
    );
    return { ...file, issues: [leftOut(file), ...issues] };
  });
  return { files: kept, missing };
}

const leftOut = ({ name }: ReadFile): Issue => ({
  code: 'file-left-out',
  level: 'warning',
  origin: { file: name, line: 0 },
});

const isRefused = ({ issues }: ReadFile): boolean => issues.some(({ level }) => level === 'refusal');

function mayBeLeftOut({ issues, fates, logOnly }: ReadFile, readings: number): boolean {
  if (logOnly) return true;
  const refusals = issues.filter(({ level }) => level === 'refusal');
  return refusals.every(({ code }) => UNKNOWN.has(code)) && fates.length <= SMALL * readings;
}

/** Nothing came out of it, and that is not because there was nothing in it. Parts of an export that hold no entries are whole. */
function gaveNothing({ kind, issues, readings, notes }: ReadFile): boolean {
  if (readings.count + notes.length > 0 || kind === 'fhir') return false;
  return issues.some(({ level, code }) => level === 'warning' && !EMPTY.has(code));
}

/** The files without a log whose clock cannot be told beside the readings of others, and its name; undefined for any other refusal. */
export function withoutLog(
  files: readonly ReadFile[],
  issues: readonly Issue[],
): { files: ReadFile[]; name: string } | undefined {
  const refusal = issues.find((issue) => issue.code === 'clock-utc' && issue.level === 'refusal');
  const log = files.find(({ name, notes }) => name === refusal?.origin?.file && notes.length > 0);
  if (!refusal || !log || log.readings.count > 0 || files.every(({ readings }) => readings.count === 0))
    return undefined;
  const emptied: ReadFile = {
    ...log,
    notes: [],
    fates: log.fates.map((fate) => (fate === 'note' ? 'set-aside' : fate)),
    issues: [leftOut(log), { ...refusal, level: 'warning' }, ...log.issues],
  };
  return { files: files.map((file) => (file === log ? emptied : file)), name: log.name };
}
