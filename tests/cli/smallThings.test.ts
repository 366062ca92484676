import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { home } from '../support/story.ts';
import { listed, plainExport, run, scratch } from './run.ts';

test.each(['MMOL/L', 'mmol/l', 'mmol', 'mg/dl', 'MGDL', 'mgdl', 'mg dL'])('--unit %s is understood', (unit) => {
  const mmol = unit.toLowerCase().startsWith('mmol');
  const text = plainExport(2, '', (i) => (mmol ? (5 + (i % 40) / 10).toFixed(1) : 110 + (i % 60))).replace(' ()', '');
  const folder = scratch({ 'a.csv': text });
  const { exit, out, err } = run(folder, ['read', 'a.csv', '--unit', unit, '--json']);
  expect([exit, err]).toEqual([0, '']);
  const choices = JSON.parse(out).files[0].choices as { id: string; value: string; by: string }[];
  expect(choices.find(({ id }) => id === 'unit')).toMatchObject({ value: mmol ? 'mmol/L' : 'mg/dL', by: 'user' });
});

test('the built command knows signs and letters beyond ASCII in patterns too', () => {
  for (const script of ['program.cjs', 'thread.js'])
    expect(readFileSync(join(home, 'dist', script)).filter((byte) => byte > 0x7f)).toHaveLength(0);
  const text = plainExport(2, 'mg/dL', (i) => (i % 50 === 3 ? '≤40' : i % 50 === 9 ? '≥400' : 110 + (i % 60)));
  const { exit, out } = run(scratch({ 'a.csv': text }), ['read', 'a.csv']);
  expect(exit).toBe(0);
  expect(out).toContain('0 set aside');
});

test('another unit is not', () => {
  const { exit, err } = run(scratch({ 'a.csv': plainExport(1) }), ['read', 'a.csv', '--unit', 'g/L']);
  expect([exit, err.split('\n')[0]]).toEqual([64, '--unit cannot be "g/L". It can be: mg/dL, mmol/L.']);
});

test.each(['foo', 'localhost:6379', 'http://localhost'])('--queue %s gets a clear word', (queue) => {
  const folder = scratch({ 'a.csv': plainExport(1) });
  const { exit, err } = run(folder, ['clinic', '.', '--out', 'out', '--queue', queue]);
  expect([exit, err.split('\n')[0]]).toEqual([
    64,
    `--queue cannot be "${queue}". Give the address of the queue, for example redis://localhost:6379.`,
  ]);
  expect(listed(folder)).toEqual(['a.csv']);
});

test('what the system says in a code is said in words', () => {
  const folder = scratch({ 'a.csv': plainExport(3), taken: '' });
  const { err } = run(folder, ['report', 'a.csv', '--out', 'taken/inside']);
  expect(err).toContain('(a part of its path is a file; ENOTDIR)');
});
