import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { clinic, filesIn, worklistOf } from '../cli/clinicRun.ts';
import { listed, plainExport, run, scratch } from '../cli/run.ts';
import { HOSTILE } from './strings.ts';

/** What a file system takes as one name. */
const asFileName = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a NUL ends a name
  [...text.replace(/[/\u0000]|\p{Cs}/gu, '_')].slice(0, 40).join('').replace(/^\.+/, '_') || '_';

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

describe('a clinic with hostile names of folders, codes and people', () => {
  const folder = scratchForAll();
  const people = HOSTILE.slice(0, 48);
  const rows = ['person,code,name'];
  people.forEach(([, text], i) => {
    const name = `${String(i).padStart(2, '0')} ${asFileName(text)}`;
    mkdirSync(join(folder, 'people', name), { recursive: true });
    writeFileSync(
      join(folder, 'people', name, `${asFileName(text)}.csv`),
      plainExport(1, 'mg/dL', (at) => 100 + ((at + i) % 60)),
    );
    rows.push(`${quoted(name)},${quoted(text)},${quoted(text.slice(0, 80))}`);
  });
  writeFileSync(join(folder, 'people/manifest.csv'), rows.join('\n'));
  const ran = clinic(folder, 'clinic', 'people', '--out', 'papers');

  test('everyone is on the worklist, and nothing stands outside the results', () => {
    expect([0, 2], ran.err).toContain(ran.exit);
    expect(listed(folder)).toEqual(['papers', 'people']);
    expect(existsSync('/tmp/daybands-absolute')).toBe(false);
    const inputs = [...filesIn(join(folder, 'people')).keys()].filter((path) => path.endsWith('.csv'));
    expect(inputs).toHaveLength(people.length + 1);
    expect(worklistOf(join(folder, 'papers')).length).toBeGreaterThanOrEqual(people.length);
  });

  test('every name in the results can be carried by any system', () => {
    for (const path of filesIn(join(folder, 'papers')).keys()) {
      expect(path).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}.-]*(\/[\p{L}\p{N}][\p{L}\p{M}\p{N}.-]*)?$/u);
    }
  });

  test('no line at the terminal moves the cursor or turns the direction of writing', () => {
    expect(ran.out + ran.err).not.toMatch(/[^\P{Cc}\n]|[\u200e\u200f\u202a-\u202e\u2028\u2029]/u);
  });
});

/** One folder for the tests of a group. */
function scratchForAll(): string {
  const folder = mkdtempSync(join(tmpdir(), 'daybands-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

describe('records that name files elsewhere', () => {
  test('a record.json makes nothing outside the results be deleted or read', () => {
    const folder = scratch({ 'keep.txt': 'mine' });
    mkdirSync(join(folder, 'people/a'), { recursive: true });
    mkdirSync(join(folder, 'papers/a'), { recursive: true });
    writeFileSync(join(folder, 'people/a/a.csv'), plainExport(1));
    expect(clinic(folder, 'clinic', 'people', '--out', 'papers').exit).toBe(0);
    const record = JSON.parse(readFileSync(join(folder, 'papers/a/record.json'), 'utf8'));
    const outputs = ['../../keep.txt', join(folder, 'keep.txt')].map((name) => ({ name, bytes: 4, sha256: 'x' }));
    writeFileSync(join(folder, 'papers/a/record.json'), JSON.stringify({ ...record, outputs }));
    expect(clinic(folder, 'clinic', 'people', '--out', 'papers').exit).toBe(0);
    expect(readFileSync(join(folder, 'keep.txt'), 'utf8')).toBe('mine');
  });

  test('a part whose person would lie outside the results is refused', () => {
    const folder = scratch();
    mkdirSync(join(folder, 'people/a'), { recursive: true });
    writeFileSync(join(folder, 'people/a/a.csv'), plainExport(1));
    clinic(folder, 'clinic', 'people', '--out', 'papers');
    const path = join(folder, 'papers/run-1-of-1.json');
    const part = JSON.parse(readFileSync(path, 'utf8'));
    writeFileSync(path, JSON.stringify({ ...part, outcomes: [{ ...part.outcomes[0], stem: '../people/a' }] }));
    const { exit, err } = run(folder, ['worklist', 'papers']);
    expect([exit, err]).toEqual([64, expect.stringContaining('run-1-of-1.json')]);
  });
});

describe('files that never end are not waited for', () => {
  test('a pipe in a folder of exports is passed over', () => {
    const folder = scratch();
    mkdirSync(join(folder, 'x'));
    writeFileSync(join(folder, 'x/a.csv'), plainExport(1));
    spawnSync('mkfifo', [join(folder, 'x/b.csv')]);
    symlinkSync('/dev/zero', join(folder, 'x/c.csv'));
    const { exit, out } = run(folder, ['report', 'x', '--out', 'papers']);
    expect(exit).toBe(0);
    expect(out).toMatch(/b\.csv, c\.csv/);
  });

  test.each([
    ['layout', '{ "layout": "/dev/zero" }'],
    ['snapshot', '{ "compare": "/dev/zero" }'],
    ['layout of a million lines', '{ "layout": "big.json" }'],
  ])('settings that point to an endless %s', (_, settings) => {
    const folder = scratch({ 'a.csv': plainExport(1), 'settings.json': settings, 'big.json': ' '.repeat(2_000_000) });
    const { exit, err } = run(folder, ['report', 'a.csv', '--out', 'papers']);
    expect(exit).toBe(64);
    expect(err).not.toBe('');
    expect(listed(join(folder, 'papers'))).toEqual([]);
  });

  test('thresholds that are another file do not show what stands in it', () => {
    const folder = scratch({ 'secret.txt': 'swordfish' });
    mkdirSync(join(folder, 'people/a'), { recursive: true });
    writeFileSync(join(folder, 'people/a/a.csv'), plainExport(1));
    const { exit, err } = clinic(folder, 'clinic', 'people', '--thresholds', 'secret.txt', '--out', 'papers');
    expect([exit, err]).toEqual([64, expect.not.stringContaining('swordfish')]);
  });

  test('a layout that is another file does not show what stands in it', () => {
    const settings = '{ "layout": "secret.txt" }';
    const folder = scratch({ 'a.csv': plainExport(1), 'settings.json': settings, 'secret.txt': 'swordfish' });
    const { exit, err } = run(folder, ['report', 'a.csv', '--out', 'papers']);
    expect(exit).toBe(64);
    expect(err).not.toContain('swordfish');
  });
});
