import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, lstatSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { expect, onTestFinished } from 'vitest';
import { command, listed, type Ran } from './run.ts';

/** A clinic run may take its time where others work on the same machine. */
export function clinic(folder: string, ...args: string[]): Ran {
  const ran = spawnSync(process.execPath, [command, ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, TZ: 'UTC' },
    timeout: 240_000,
    maxBuffer: 1e8,
  });
  return { exit: ran.status, out: ran.stdout, err: ran.stderr };
}

/** Starts one beside the test. It is ended with the test at the latest. */
export function start(folder: string, ...args: string[]): ChildProcess {
  const child = spawn(process.execPath, [command, ...args], {
    cwd: folder,
    stdio: 'pipe',
    env: { ...process.env, TZ: 'UTC' },
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  return child;
}

export const ended = (child: ChildProcess): Promise<number | null> =>
  new Promise((done) => {
    if (child.exitCode !== null || child.signalCode !== null) done(child.exitCode);
    else child.on('exit', (code) => done(code));
  });

/** Waits until something is so. */
export async function until(isSo: () => boolean, what: string): Promise<void> {
  for (let i = 0; i < 2400; i++) {
    if (isSo()) return;
    await new Promise((soon) => setTimeout(soon, 25));
  }
  throw new Error(`never so: ${what}`);
}

/** Every plain file below a folder, by its path from there. */
export function filesIn(folder: string): Map<string, Buffer> {
  if (!existsSync(folder)) return new Map();
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  return new Map(
    paths
      .filter((path) => lstatSync(join(folder, path)).isFile())
      .map((path): [string, Buffer] => [path, readFileSync(join(folder, path))]),
  );
}

/** Where papers wait until everyone was looked at. */
export const WAITING = '.not-checked-yet';

const peopleAt = (folder: string): string[] => listed(folder).filter((name) => name.startsWith('P-'));
/** Codes of those whose papers lie where they are printed from. */
export const givenIn = (out: string): string[] => peopleAt(out);
/** How many people a run has reached so far, whether their papers are given out or wait. */
export const reachedIn = (out: string): number => new Set([...peopleAt(out), ...peopleAt(join(out, WAITING))]).size;

/** Papers and numbers only: what does not tell of the run itself. */
export const papersIn = (folder: string): Map<string, string> =>
  new Map(
    [...filesIn(folder)]
      .filter(([path]) => /^[^.][^/]*\/[^.]/.test(path))
      .map(([path, bytes]) => [path, bytes.toString('latin1')]),
  );

/** Whatever has its name is whole. */
export function expectWhole(folder: string): void {
  for (const [path, bytes] of filesIn(folder)) {
    if (/(^|\/)\.[^/]*$/.test(path)) continue;
    if (path.endsWith('.pdf')) expect(bytes.subarray(-6).toString(), path).toContain('%%EOF');
    else if (path.endsWith('.json')) expect(() => JSON.parse(bytes.toString()), path).not.toThrow();
    else expect(bytes.length, path).toBeGreaterThan(0);
  }
}

export type Line = Record<'No.' | 'Code' | 'Group' | 'Why' | 'Folder' | 'Files' | 'Visit' | 'Seen by', string>;

export const worklistOf = (out: string): Line[] =>
  parse(readFileSync(join(out, 'worklist.csv')), { columns: true, relax_quotes: false }) as Line[];

/** As much as one element of a record may hold at most: some hundred megabytes once it is taken apart. */
const FULL = `{"resource":{"resourceType":"Observation","component":[${'[],'.repeat(2_800_000)}[]]}}`;
/** Records of small size on the disk, within the bounds of a file, that take far more memory than a worker of these tests has. */
export const LARGE = `{"resourceType":"Bundle","type":"collection","entry":[${FULL},${FULL}]}`;
