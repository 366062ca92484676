import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { basename, join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { heldAt } from '../../src/cli/clinic/held.ts';
import { clearParts, partPath } from '../../src/cli/halfWritten.ts';
import { writePeople } from '../support/people.ts';
import { clinic, WAITING } from './clinicRun.ts';
import { listed, plainExport, run, scratch } from './run.ts';

const TWO_DAYS = 2 * 24 * 3600;
const ELSEWHERE = '00000000';

let gone = 0;
let mark = '';
beforeAll(() => {
  // The process id of a child that has ended.
  gone = Number(spawnSync(process.execPath, ['-e', 'console.log(process.pid)'], { encoding: 'utf8' }).stdout);
  mark = /-([0-9a-f]{8})\.part$/.exec(partPath('.', 'x'))![1]!;
});

function plant(folder: string, name: string, old = false): string {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, name);
  writeFileSync(path, 'half');
  if (old) utimesSync(path, Date.now() / 1000 - TWO_DAYS, Date.now() / 1000 - TWO_DAYS);
  return path;
}

/** Half-written files of every kind for one result, and whether the next writing there takes each away. */
const kinds = (name: string): { part: string; old: boolean; cleared: boolean; why: string }[] => [
  { part: `.${name}.${gone}-0-${mark}.part`, old: false, cleared: true, why: 'of this machine, its process gone' },
  { part: `.${name}.${gone}-3-${mark}.part`, old: true, cleared: true, why: 'of a thread of it' },
  { part: `.${name}.${process.pid}-77-${mark}.part`, old: false, cleared: false, why: 'of a process at work' },
  { part: `.${name}.${process.pid}-78-${mark}.part`, old: true, cleared: true, why: 'its number is in use again' },
  { part: `.${name}.${gone}-0-${ELSEWHERE}.part`, old: false, cleared: false, why: 'of another machine' },
  { part: `.${name}.${gone}-1-${ELSEWHERE}.part`, old: true, cleared: true, why: 'of another machine, long ago' },
  { part: `.${name}.${gone}.part`, old: false, cleared: false, why: 'of a machine that is not named' },
  { part: `.${name}.${gone}-1.part`, old: true, cleared: true, why: 'of one not named, long ago' },
];

/** Plants every kind in a folder; what is given checks which of them are left. */
function plantAll(folder: string, name: string): () => void {
  const planted = kinds(name).map((kind) => ({ ...kind, path: plant(folder, kind.part, kind.old) }));
  return () => {
    for (const { path, cleared, why } of planted) expect(existsSync(path), `${path}: ${why}`).toBe(!cleared);
  };
}

test('who writes is told from others: by process and machine, else by age', () => {
  const folder = scratch();
  const check = plantAll(folder, 'a.csv');
  const theirs = plant(folder, '.download.bin.part', true);
  clearParts(folder);
  check();
  expect(existsSync(theirs)).toBe(true);
  // What this very thread left is of an earlier process of the same number: in a container every run may have it.
  const own = plant(folder, basename(partPath(folder, 'a.csv')));
  clearParts(folder);
  expect(existsSync(own)).toBe(false);
  clearParts(join(folder, 'not there'));
});

test('in a folder that may be anyone’s, only what is known to be ours goes', () => {
  const folder = scratch();
  const other = plant(folder, '.other.csv.123.part', true);
  const ours = plant(folder, `.other.csv.${gone}-0-${mark}.part`);
  clearParts(folder, ['a.csv']);
  expect([existsSync(other), existsSync(ours)]).toEqual([true, false]);
});

test('a report, a page and a manifest clear what an earlier one left half written', () => {
  const folder = scratch({ 'sensor.csv': plainExport(2) });
  const checks = [
    plantAll(join(folder, 'out'), 'sensor-clinic-report.pdf'),
    plantAll(join(folder, 'page'), 'daybands.html'),
  ];
  expect(run(folder, ['report', 'sensor.csv', '--out', 'out'])).toMatchObject({ exit: 0 });
  expect(run(folder, ['page', '--out', 'page/daybands.html'])).toMatchObject({ exit: 0 });
  writePeople(join(folder, 'in'), 1, { days: 2, step: 30 });
  checks.push(plantAll(join(folder, 'in'), 'manifest.csv'));
  expect(clinic(folder, 'clinic', 'in', '--write-manifest')).toMatchObject({ exit: 0 });
  for (const check of checks) check();
}, 120_000);

test('a run over a folder clears them at each place where it writes, also with people whose papers stand as before', () => {
  const folder = scratch();
  const out = join(folder, 'out');
  writePeople(join(folder, 'in'), 3, { days: 2, step: 30 });
  const go = () => clinic(folder, 'clinic', 'in', '--out', 'out', '--date', '2026-06-01');
  expect(go()).toMatchObject({ exit: 0 });
  const before = listed(join(out, 'P-0001'));
  // P-0001 and P-0003 are kept, P-0002 has changed.
  writeFileSync(join(folder, 'in/P-0002/settings.json'), '{"days":1}');
  const names = ['P-0001', 'P-0002', 'P-0003'].flatMap((stem) =>
    ['record.json', `${stem}-clinic-report.pdf`].map((name) => [stem, name] as const),
  );
  const checks = names.map(([stem, name]) => plantAll(join(out, stem), name));
  for (const name of ['measures.csv', 'worklist.pdf', 'run-2-of-2.json', '.run.lock']) {
    const path = plant(out, `.${name}.${gone}-0-${mark}.part`);
    checks.push(() => expect(existsSync(path), path).toBe(false));
  }
  checks.push(plantAll(out, 'measures.csv'));
  // What waits is taken away whole when everyone was looked at.
  plantAll(heldAt(out, 'P-0003'), 'record.json');
  writeFileSync(join(out, '.run.lock'), `${gone} ${hostname()}`);
  expect(go()).toMatchObject({ exit: 0 });
  for (const check of checks) check();
  expect(existsSync(join(out, WAITING))).toBe(false);
  expect(listed(join(out, 'P-0001')).filter((name) => !name.endsWith('.part'))).toEqual(before);
}, 240_000);
