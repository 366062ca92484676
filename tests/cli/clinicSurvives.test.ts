import { spawnSync } from 'node:child_process';
import { appendFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { takeTurn } from '../../src/cli/clinic/turn.ts';
import { writePeople } from '../support/people.ts';
import {
  clinic,
  ended,
  expectWhole,
  filesIn,
  givenIn,
  LARGE,
  papersIn,
  reachedIn,
  start,
  until,
  worklistOf,
} from './clinicRun.ts';
import { plainExport, scratch } from './run.ts';

const SMALL = { days: 2, step: 30 };
const DATE = ['--date', '2026-06-01'];

test('killed at any moment, it leaves no half file, and goes on where it ended', async () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 16, SMALL);
  const finished = (n: number) => (): boolean => reachedIn(join(folder, 'out')) >= n;
  for (const n of [1, 5, 10]) {
    const child = start(folder, 'clinic', 'in', '--out', 'out', ...DATE);
    await until(finished(n), `${n} people`);
    child.kill('SIGKILL');
    await ended(child);
    expectWhole(join(folder, 'out'));
  }
  const before = [...filesIn(join(folder, 'out')).keys()].filter((path) => path.endsWith('/record.json')).length;
  const last = clinic(folder, 'clinic', 'in', '--out', 'out', ...DATE);
  expect(last.exit, last.err).toBe(0);
  expect(last.out).toMatch(new RegExp(`${before} people as before`));
  const fresh = clinic(folder, 'clinic', 'in', '--out', 'fresh', ...DATE);
  expect(fresh.exit).toBe(0);
  // Byte for byte what a run without a break makes, and nothing else: no lock, no half-written part.
  expect([...papersIn(join(folder, 'out'))]).toEqual([...papersIn(join(folder, 'fresh'))]);
  const whole = (out: string) => [...filesIn(join(folder, out))].filter(([path]) => path !== 'run-log.jsonl');
  const differing = (out: string): string[] =>
    whole(out).flatMap(([path, bytes], i) => (whole('fresh')[i]?.[1].equals(bytes) ? [] : [path]));
  // The worklist and what remembers the run too; and once more where everything is kept.
  expect(differing('out')).toEqual([]);
  expect(clinic(folder, 'clinic', 'in', '--out', 'out', ...DATE).exit).toBe(0);
  expect(differing('out')).toEqual([]);
  expect([...filesIn(join(folder, 'out')).keys()].filter((path) => /(^|\/)\./.test(path))).toEqual([]);
}, 240_000);

test('two at once in one folder: the second says so and changes nothing', async () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 16, SMALL);
  const first = start(folder, 'clinic', 'in', '--out', 'out', ...DATE);
  await until(() => existsSync(join(folder, 'out/.run.lock')), 'a lock');
  const second = clinic(folder, 'clinic', 'in', '--out', 'out', ...DATE);
  expect(second.exit).toBe(2);
  expect(second.err).toContain('Another run is at work');
  expect(await ended(first)).toBe(0);
  expectWhole(join(folder, 'out'));
  expect(worklistOf(join(folder, 'out')).length).toBe(16);
  expect(existsSync(join(folder, 'out/.run.lock'))).toBe(false);
}, 120_000);

test('a lock whose process is gone is taken over', () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 1, SMALL);
  mkdirSync(join(folder, 'out'));
  // The process id of a child that has ended.
  const gone = spawnSync(process.execPath, ['-e', 'console.log(process.pid, require("os").hostname())'], {
    encoding: 'utf8',
  });
  writeFileSync(join(folder, 'out/.run.lock'), gone.stdout.trim());
  expect(clinic(folder, 'clinic', 'in', '--out', 'out').exit).toBe(0);
}, 60_000);

test('asked to stop, it finishes what it has begun and names who was not reached', async () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 24, SMALL);
  const child = start(folder, 'clinic', 'in', '--out', 'out', ...DATE);
  await until(() => reachedIn(join(folder, 'out')) > 0, 'someone');
  child.kill('SIGTERM');
  expect(await ended(child)).toBe(2);
  expectWhole(join(folder, 'out'));
  const lines = worklistOf(join(folder, 'out'));
  expect(lines.length).toBe(24);
  const not = lines.filter(({ Why }) => Why.includes('not begun'));
  expect(not.length).toBeGreaterThan(0);
  // Whether the files of the others lie with one of these too, nobody knows yet.
  expect(lines.filter(({ Why }) => Why.includes('papers are ready and wait')).length).toBe(24 - not.length);
  expect(givenIn(join(folder, 'out'))).toEqual([]);
  const again = clinic(folder, 'clinic', 'in', '--out', 'out', ...DATE);
  expect([again.exit, again.out]).toEqual([
    0,
    expect.stringMatching(new RegExp(`${24 - not.length} (people|person) as before`)),
  ]);
  expect(givenIn(join(folder, 'out')).length).toBe(24);
}, 120_000);

test('a worker that runs out of memory is replaced, and its person told', () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 3, SMALL);
  // More than the worker may have once it is taken apart.
  mkdirSync(join(folder, 'in/P-large'));
  writeFileSync(join(folder, 'in/P-large/list.json'), LARGE);
  const ran = clinic(folder, 'clinic', 'in', '--out', 'out', '--memory', '96', ...DATE);
  expect(ran.exit, ran.err).toBe(2);
  const [first, ...rest] = worklistOf(join(folder, 'out'));
  expect(first).toMatchObject({ Code: 'P-large', Folder: '' });
  expect(first!.Why).toContain('took more memory');
  expect(rest.filter(({ Folder }) => Folder !== '').length).toBe(3);
}, 120_000);

test('whoever has files too large for a thread is worked on in a process of their own, with the same papers', () => {
  const folder = scratch();
  mkdirSync(join(folder, 'in/P-1'), { recursive: true });
  const [head, ...rows] = plainExport(15).trimEnd().split('\n');
  const wide = [`${head},Note`, ...rows.map((row, i) => `${row},${i % 50 === 0 ? 'x'.repeat(30_000) : ''}`)];
  writeFileSync(join(folder, 'in/P-1/sensor.csv'), `${wide.join('\n')}\n`);
  // 2.6 MB, sixteen times of which is more than 40 MB and less than the usual limit.
  expect(clinic(folder, 'clinic', 'in', '--out', 'apart', '--memory', '40', ...DATE).exit).toBe(0);
  expect(clinic(folder, 'clinic', 'in', '--out', 'thread', ...DATE).exit).toBe(0);
  expect([...papersIn(join(folder, 'apart')).keys()]).toContain('P-1/P-1-clinic-report.pdf');
  const other = papersIn(join(folder, 'thread'));
  for (const [path, bytes] of papersIn(join(folder, 'apart'))) expect(bytes === other.get(path), path).toBe(true);
}, 60_000);

/** Whether this machine lets us mount: CI runs as root in a container that may or may not. */
function mounted(at: string, size: string, ...more: string[]): boolean {
  mkdirSync(at, { recursive: true });
  const ok = spawnSync('mount', ['-t', 'tmpfs', '-o', [`size=${size}`, ...more].join(','), 'tmpfs', at]).status === 0;
  if (ok) onTestFinished(() => void spawnSync('umount', [at]));
  return ok;
}

test('a full disk: clear words, the papers that fit are whole, and the rest is made when there is room', async ({
  skip,
}) => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 16, SMALL);
  if (!mounted(join(folder, 'out'), '1m')) skip('mounting a small file system is not permitted here');
  const further = ['--further', '--since', 'before', ...DATE];
  expect(clinic(folder, 'clinic', 'in', '--out', 'before', '--to', '2026-02-02', ...DATE).exit).toBe(0);
  const ran = clinic(folder, 'clinic', 'in', '--out', 'out', ...further);
  expect(ran.exit).toBe(2);
  expect(ran.err).toContain('(the disk is full; ENOSPC)');
  expectWhole(join(folder, 'out'));
  const some = reachedIn(join(folder, 'out'));
  expect(some).toBeGreaterThan(0);
  expect(givenIn(join(folder, 'out'))).toEqual([]);
  // Kept ready it goes on as soon as there is room and something new.
  const kept = start(folder, 'clinic', 'in', '--out', 'out', '--keep-ready', '--settle', '1', ...further);
  let said = '';
  kept.stderr!.on('data', (data) => {
    said += String(data);
  });
  await until(() => said.includes('ENOSPC'), 'a pass without room');
  expectWhole(join(folder, 'out'));
  expect(givenIn(join(folder, 'out'))).toEqual([]);
  expect(spawnSync('mount', ['-o', 'remount,size=64m', join(folder, 'out')]).status).toBe(0);
  appendFileSync(join(folder, 'in/P-0016/sensor.csv'), '\n');
  await until(() => givenIn(join(folder, 'out')).length === 16, 'everyone');
  kept.kill('SIGTERM');
  expect(await ended(kept)).toBe(0);
  expectWhole(join(folder, 'out'));
  expect(worklistOf(join(folder, 'out')).length).toBe(16);
  expect([...papersIn(join(folder, 'out')).keys()].filter((path) => path.endsWith('-further-pages.pdf')).length).toBe(
    16,
  );
}, 120_000);

test('a folder that cannot be written to is told in clear words', ({ skip }) => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 1, SMALL);
  if (!mounted(join(folder, 'out'), '1m', 'ro')) skip('mounting a read-only file system is not permitted here');
  const ran = clinic(folder, 'clinic', 'in', '--out', 'out');
  expect(ran.exit).toBe(2);
  expect(ran.err).toContain('cannot be written to (the disk can be read only; EROFS)');
}, 60_000);

test('a file that vanishes between the look and the reading is told', async () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 1, SMALL);
  const files = ['P-0001/logbook.csv', 'P-0001/sensor.csv'];
  rmSync(join(folder, 'in', files[1]!));
  const turn = await takeTurn(
    {
      person: { code: 'P-0001', stem: 'P-0001', files },
      folder: join(folder, 'in'),
      out: join(folder, 'out'),
      options: {},
      today: '2026-06-01',
      make: { html: false, numbers: false, attach: false, fhir: false, fhirReadings: false, further: false },
      dry: false,
    },
    // Nothing of it is needed for someone whose files are not there.
    { version: 'test' } as never,
  );
  expect(turn.outcome.refusals.map(({ key }) => key)).toEqual(['clinic.unread.vanished']);
  expect(JSON.parse(readFileSync(join(folder, 'out/P-0001/record.json'), 'utf8'))).toMatchObject({
    facts: null,
    outputs: [],
  });
});
