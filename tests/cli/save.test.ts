import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openLog } from '../../src/cli/clinic/log.ts';
import { partPath } from '../../src/cli/halfWritten.ts';
import { saveAll } from '../../src/cli/save.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'daybands-save-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('writes text and bytes, makes the folder, leaves nothing else', () => {
  const out = join(folder, 'new', 'deeper');
  saveAll(out, [
    { name: 'a.txt', bytes: 'å' },
    { name: 'b.bin', bytes: new Uint8Array([0, 255]) },
  ]);
  expect(readdirSync(out).sort()).toEqual(['a.txt', 'b.bin']);
  expect(readFileSync(join(out, 'a.txt'), 'utf8')).toBe('å');
  expect([...readFileSync(join(out, 'b.bin'))]).toEqual([0, 255]);
});

test('replaces what was there', () => {
  writeFileSync(join(folder, 'a.txt'), 'old and longer');
  saveAll(folder, [{ name: 'a.txt', bytes: 'new' }]);
  expect(readFileSync(join(folder, 'a.txt'), 'utf8')).toBe('new');
});

test('writes none when one cannot be written', () => {
  expect(() =>
    saveAll(folder, [
      { name: 'a.txt', bytes: 'a' },
      { name: `${'x'.repeat(300)}.txt`, bytes: 'b' },
    ]),
  ).toThrow(/ENAMETOOLONG/);
  expect(readdirSync(folder)).toEqual([]);
});

test('keeps the old files when a new one cannot take its place', () => {
  writeFileSync(join(folder, 'b.txt'), 'old');
  mkdirSync(join(folder, 'a.txt'));
  expect(() =>
    saveAll(folder, [
      { name: 'a.txt', bytes: 'a' },
      { name: 'b.txt', bytes: 'b' },
    ]),
  ).toThrow();
  expect(readFileSync(join(folder, 'b.txt'), 'utf8')).toBe('old');
  expect(readdirSync(folder).sort()).toEqual(['a.txt', 'b.txt']);
});

test('links that lie among the results are not followed: one in the way is replaced, and none is written through', () => {
  mkdirSync(join(folder, 'out'));
  writeFileSync(join(folder, 'elsewhere'), 'theirs');
  for (const name of ['a.txt', basename(partPath(folder, 'a.txt')), 'run-log.jsonl'])
    symlinkSync(join(folder, 'elsewhere'), join(folder, 'out', name));
  saveAll(join(folder, 'out'), [{ name: 'a.txt', bytes: 'ours' }]);
  openLog(join(folder, 'out'), () => '2026-06-01T00:00:00Z')({ event: 'start' });
  expect(readFileSync(join(folder, 'elsewhere'), 'utf8')).toBe('theirs');
  expect(readFileSync(join(folder, 'out/a.txt'), 'utf8')).toBe('ours');
});
