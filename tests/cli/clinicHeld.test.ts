import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, watch, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { lastOutcome, putInPlace } from '../../src/cli/clinic/disk.ts';
import { giveOutAll, heldAt, hold, withdraw } from '../../src/cli/clinic/held.ts';
import { outcome as anOutcome } from '../clinic/outcomes.ts';
import { writePeople } from '../support/people.ts';
import {
  clinic,
  ended,
  filesIn,
  givenIn,
  papersIn,
  reachedIn,
  start,
  until,
  WAITING,
  worklistOf,
} from './clinicRun.ts';
import { listed, plainExport, scratch } from './run.ts';

const SMALL = { days: 2, step: 30 };
const DATE = ['--date', '2026-06-01'];

/** Every name that was ever seen in a folder, for however short: the system tells each, so that none is missed between two looks. */
function everIn(folder: string): Set<string> {
  mkdirSync(folder, { recursive: true });
  const seen = new Set<string>();
  const watcher = watch(folder, (_, name) => void seen.add(String(name)));
  onTestFinished(() => watcher.close());
  return seen;
}

/** The last of them holds the readings of the first. */
function swap(at: string, first: string, last: string): void {
  mkdirSync(join(at, last), { recursive: true });
  cpSync(join(at, first, 'sensor.csv'), join(at, last, 'export.csv'));
}

test('papers of people who are mixed up never lie where papers are printed from', async () => {
  const folder = scratch();
  const [at, out] = [join(folder, 'in'), join(folder, 'out')];
  writePeople(at, 8, SMALL);
  // The first and the last to be worked on: papers of the first are long done when the last is read.
  swap(at, 'P-0001', 'P-9999');
  const seen = everIn(out);
  const nobody = (): void => {
    expect([...seen].filter((name) => name === 'P-0001' || name === 'P-9999')).toEqual([]);
  };
  for (const signal of ['SIGKILL', 'SIGTERM'] as const) {
    const child = start(folder, 'clinic', 'in', '--out', 'out', '--threads', '1', ...DATE);
    const before = reachedIn(out);
    await until(() => reachedIn(out) > before, 'one more');
    child.kill(signal);
    await ended(child);
    expect(givenIn(out)).toEqual([]);
  }
  expect(clinic(folder, 'clinic', 'in', '--out', 'out', ...DATE).exit).toBe(2);
  nobody();
  await until(() => seen.has('P-0002'), 'the others, as the system tells of them');
  expect(givenIn(out).length).toBe(7);
  expect(existsSync(join(out, WAITING))).toBe(false);
  expect(
    worklistOf(out)
      .slice(0, 2)
      .map(({ Code, Why, Folder }) => [Code, /same (file|readings)/.test(Why), Folder]),
  ).toEqual([
    ['P-0001', true, ''],
    ['P-9999', true, ''],
  ]);
  // Again: nothing of them, not even for a moment.
  expect(clinic(folder, 'clinic', 'in', '--out', 'out', ...DATE).exit).toBe(2);
  nobody();

  // In parts nobody's papers lie there before all parts are read, as the other may be of another part.
  const parts = everIn(join(folder, 'parts'));
  for (const part of ['1/2', '2/2']) {
    const ran = clinic(folder, 'clinic', 'in', '--out', 'parts', '--shard', part, ...DATE);
    expect(ran.out).toContain('daybands worklist looks for files that lie with two people, and gives the papers out');
    expect(givenIn(join(folder, 'parts'))).toEqual([]);
  }
  expect(clinic(folder, 'worklist', 'parts').exit).toBe(2);
  expect([...parts].filter((name) => name === 'P-0001' || name === 'P-9999')).toEqual([]);
  expect(existsSync(join(folder, 'parts', WAITING))).toBe(false);
  expect([...papersIn(join(folder, 'parts'))]).toEqual([...papersIn(out)]);
  expect(clinic(folder, 'worklist', 'parts').exit).toBe(2);
  expect([...papersIn(join(folder, 'parts'))]).toEqual([...papersIn(out)]);
}, 240_000);

test('a folder that is kept ready gives no paper of the mixed-up, in no pass; put right, they get theirs', async () => {
  const folder = scratch();
  const [at, out] = [join(folder, 'in'), join(folder, 'out')];
  writePeople(at, 2, SMALL);
  swap(at, 'P-0001', 'P-9999');
  const seen = everIn(out);
  const kept = start(folder, 'clinic', 'in', '--out', 'out', '--keep-ready', '--settle', '1', ...DATE);
  await until(() => givenIn(out).join() === 'P-0002', 'the first pass');
  mkdirSync(join(at, 'P-new'));
  writeFileSync(join(at, 'P-new/sensor.csv'), plainExport(2));
  await until(() => givenIn(out).join() === 'P-0002,P-new', 'the second');
  await until(() => listed(join(out, WAITING)).length === 0, 'its end');
  expect([...seen].filter((name) => name === 'P-0001' || name === 'P-9999')).toEqual([]);
  rmSync(join(at, 'P-9999'), { recursive: true });
  await until(() => givenIn(out).join() === 'P-0001,P-0002,P-new', 'the papers of who is alone now');
  kept.kill('SIGTERM');
  expect(await ended(kept)).toBe(0);
  expect([...filesIn(join(out, 'P-0001')).keys()]).toContain('P-0001-clinic-report.pdf');
}, 120_000);

const outcome = (key: string) => anOutcome({ key, outputs: [] });
const file = (name: string, bytes: string) => ({ what: 'interpretation' as const, name, bytes });

test('ended between two files while papers are given out, the next run still knows every name it may have to take away', () => {
  const out = scratch();
  const at = join(out, 'P-1');
  putInPlace(at, outcome('old'), [file('P-1-old.txt', 'old'), file('P-1-both.txt', 'old')], null);
  const now = hold(out, outcome('new'), [
    file('P-1-both.txt', 'new'),
    file('P-1-more.txt', 'new'),
    file('P-1-z.txt', 'new'),
  ]);
  // As where the power fails: one of three cannot be moved.
  rmSync(join(heldAt(out, 'P-1'), 'P-1-z.txt'));
  expect(giveOutAll([now], () => out, 'all')).toMatchObject({ unsaved: 'ENOENT', outcomes: [{ facts: null }] });
  expect(listed(at)).toEqual(['P-1-both.txt', 'P-1-more.txt', 'record.json']);
  expect(lastOutcome(at)).toMatchObject({ key: '', facts: null });
  withdraw(out, { ...now, facts: null });
  expect(listed(at)).toEqual(['record.json']);
  expect(listed(join(out, WAITING))).toEqual([]);
});

test('links among what waits are not followed', () => {
  const out = scratch();
  const elsewhere = scratch({ 'record.json': '{}' });
  symlinkSync(elsewhere, join(out, WAITING));
  expect(() => hold(out, outcome('new'), [file('P-1-a.txt', 'x')])).toThrow(expect.objectContaining({ code: 'ELOOP' }));
  withdraw(out, outcome(''));
  expect(giveOutAll([outcome('new')], () => out, 'all').unsaved).toBe('ELOOP');
  rmSync(join(out, WAITING));
  const now = hold(out, outcome('new'), [file('P-1-a.txt', 'x')]);
  symlinkSync(elsewhere, join(out, 'P-1'));
  expect(giveOutAll([now], () => out, 'all').unsaved).toBe('ELOOP');
  expect(listed(elsewhere)).toEqual(['record.json']);
  expect(readFileSync(join(elsewhere, 'record.json'), 'utf8')).toBe('{}');
});
