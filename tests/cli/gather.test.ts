import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { expect, test } from 'vitest';
import { gather } from '../../src/cli/gather.ts';
import { scratch } from './run.ts';

const names = (paths: string[]): string[] => paths.map((path) => basename(path));

test('a folder gives its exports in order, and tells what was passed over', () => {
  const folder = scratch({
    'b.csv': '1',
    'a.TSV': '2',
    'scan.pdf': '3',
    'settings.json': '{}',
    'README.txt': '',
    '.hid.csv': '',
  });
  mkdirSync(join(folder, 'deeper.csv'));
  const found = gather([folder]);
  expect(names(found.paths)).toEqual(['a.TSV', 'b.csv']);
  expect(found.passedOver).toEqual(['scan.pdf']);
  expect(found.settingsPath).toBe(join(folder, 'settings.json'));
});

test('our own results in the folder are not read again', () => {
  const ours = [
    'P-analysis.json',
    'P-set-aside.csv',
    'P-interpretation.txt',
    'P-snapshot-2026-01-27.json',
    'P-visit-2026-01-27.json',
    'found.layout.json',
    'layout.json',
  ];
  const folder = scratch({ 'a.csv': '', ...Object.fromEntries(ours.map((name) => [name, ''])) });
  expect(names(gather([folder]).paths)).toEqual(['a.csv']);
});

test('a file named twice, or by its folder too, is read once', () => {
  const folder = scratch({ 'a.csv': '' });
  expect(names(gather([folder, join(folder, 'a.csv'), join(folder, '.', 'a.csv')]).paths)).toEqual(['a.csv']);
});

test('a file named outright is read whatever its ending', () => {
  const folder = scratch({ 'export.dat': '' });
  expect(names(gather([join(folder, 'export.dat')]).paths)).toEqual(['export.dat']);
});

test.each(['a pipe', 'a device that never ends', 'a device that is empty'])(
  '%s is no file, and is not opened',
  (what) => {
    const folder = scratch({});
    const path = what === 'a pipe' ? join(folder, 'pipe.csv') : what.startsWith('a device') ? '/dev/zero' : '/dev/null';
    if (what === 'a pipe') execFileSync('mkfifo', [path]);
    expect(() => gather([path])).toThrow(expect.objectContaining({ key: 'noPlainFile' }));
  },
);
