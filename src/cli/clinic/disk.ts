import { existsSync, lstatSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fingerprint } from '../../bytes/hash.ts';
import { asOutcome, RECORD } from '../../clinic/recorded.ts';
import type { Outcome } from '../../model/clinic.ts';
import { MOST_BYTES } from '../../papers/inputNames.ts';
import type { MadeFile } from '../../papers/makePapers.ts';
import { isVisitOf, visitDay } from '../../papers/resultNames.ts';
import { reasonOf } from '../exits.ts';
import { clearParts, partPath } from '../halfWritten.ts';
import { readPlainFile } from '../plainFile.ts';
import { sayable } from './sayable.ts';

const parse = (bytes: Buffer): Outcome | null => {
  try {
    const content: unknown = JSON.parse(bytes.toString('utf8'));
    // Numbers of another form are made again; what was written then is still known by its name.
    return (
      asOutcome(content, sayable) ?? asOutcome({ ...(content as Outcome), facts: null, refusals: [], key: '' }, sayable)
    );
  } catch {
    return null;
  }
};

/** A link in the results would lead writing and deleting to somewhere else. */
export const isLink = (path: string): boolean => lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() ?? false;

export function refuseLink(path: string): void {
  if (isLink(path)) throw Object.assign(new Error('a link'), { code: 'ELOOP' });
}

/** What the last run left in a person's folder, or null. */
export function lastOutcome(folder: string): Outcome | null {
  try {
    if (isLink(folder)) return null;
    return parse(readPlainFile(join(folder, RECORD), MOST_BYTES));
  } catch {
    return null;
  }
}

/** SHA-256 by name of those of a person's results that are there. */
export function hashesOf(folder: string, last: Outcome | null): Map<string, string> {
  const found = new Map<string, string>();
  for (const { name } of last?.outputs ?? []) {
    try {
      found.set(name, fingerprint(readPlainFile(join(folder, name), MOST_BYTES)));
    } catch {
      // Not there: then it is made again.
    }
  }
  return found;
}

/**
 * Puts a person's results in place, the record last: only a record says that what it lists is whole. What an earlier
 * run made and this one does not is taken away, so that no paper of other data stays behind. Not forced to the disk
 * file by file, which would take longer than making them: after a power cut the record's hashes find what is missing.
 * Throws as the file system does, after clearing up.
 */
export function putInPlace(
  folder: string,
  outcome: Outcome,
  files: readonly MadeFile[],
  last: Outcome | null,
): Outcome {
  const outputs = files.map(({ name, bytes }) => {
    const text = Array.isArray(bytes) ? bytes.join('') : bytes;
    const content = typeof text === 'string' ? Buffer.from(text) : text;
    return { name, content, sha256: fingerprint(content) };
  });
  const whole: Outcome = {
    ...outcome,
    outputs: outputs.map(({ name, content, sha256 }) => ({ name, bytes: content.length, sha256 })),
  };
  refuseLink(folder);
  mkdirSync(folder, { recursive: true });
  clearParts(folder);
  const parts: { part: string; name: string }[] = [];
  try {
    for (const { name, content } of [...outputs, { name: RECORD, content: Buffer.from(recordText(whole)) }]) {
      const part = partPath(folder, name);
      parts.push({ part, name });
      writeNew(part, content);
    }
    dropOld(folder, whole, last);
    for (const { part, name } of parts) renameSync(part, join(folder, name));
  } catch (error) {
    for (const { part } of parts) rmSync(part, { force: true });
    throw error;
  }
  return whole;
}

/** Takes away what an earlier run made and this one does not. */
function dropOld(folder: string, whole: Outcome, last: Outcome | null): void {
  const kept = new Set(whole.outputs.map(({ name }) => name));
  for (const { name } of last?.outputs ?? []) {
    // What an earlier visit can be compared with outlives it, unless nobody knows whose it is.
    if (!kept.has(name) && !(whole.facts && visitDay(name) !== undefined)) rmSync(join(folder, name), { force: true });
  }
}

/**
 * Moves a person's whole results from one folder to another of the same disk: in one step where nothing stands there. Otherwise
 * file by file, the record last, and before them a record of all that may then lie there: killed in between, the next run still
 * knows every name that it may have to take away. Throws as the file system does.
 */
export function moveInPlace(from: string, to: string, whole: Outcome): void {
  refuseLink(from);
  refuseLink(to);
  if (!existsSync(to)) {
    renameSync(from, to);
    return;
  }
  const last = lastOutcome(to);
  const names = new Map([...(last?.outputs ?? []), ...whole.outputs].map((output) => [output.name, output]));
  putRecord(to, { ...whole, key: '', facts: null, refusals: [], outputs: [...names.values()] });
  dropOld(to, whole, last);
  for (const { name } of whole.outputs) renameSync(join(from, name), join(to, name));
  renameSync(join(from, RECORD), join(to, RECORD));
  clearParts(to);
  rmSync(from, { recursive: true, force: true });
}

function putRecord(folder: string, outcome: Outcome): void {
  const part = partPath(folder, RECORD);
  rmSync(part, { force: true });
  try {
    writeFileSync(part, recordText(outcome), { flag: 'wx' });
    renameSync(part, join(folder, RECORD));
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}

const recordText = (outcome: Outcome): string => `${JSON.stringify(outcome, null, 1)}\n`;

/** Never through a link of that name, and never to what stood there. */
function writeNew(path: string, content: Uint8Array): void {
  try {
    writeFileSync(path, content, { flag: 'wx' });
  } catch (error) {
    if (reasonOf(error) !== 'EEXIST') throw error;
    rmSync(path, { force: true });
    writeFileSync(path, content, { flag: 'wx' });
  }
}

/**
 * Paths of a person's visit files, the oldest first by their names: in the person's own folder, as an earlier run leaves them,
 * or beside one another in one folder, told apart by the beginning of their names.
 */
export function visitsIn(folder: string, stem: string): string[] {
  const own = join(folder, stem);
  const paths = [
    ...namesIn(own).map((name) => join(own, name)),
    ...namesIn(folder)
      .filter((name) => isVisitOf(name, stem))
      .map((name) => join(folder, name)),
  ];
  const day = (path: string): string => visitDay(basename(path))!;
  return paths.sort((a, b) => (day(a) < day(b) ? -1 : 1));
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder).filter((name) => visitDay(name) !== undefined);
  } catch {
    return [];
  }
}
