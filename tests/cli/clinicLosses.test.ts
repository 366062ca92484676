import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { clinic, worklistOf } from './clinicRun.ts';
import { run, scratch } from './run.ts';

const readings = (bad: number): string =>
  [
    'Time,Glucose (mg/dL)',
    ...Array.from({ length: 1000 }, (_, k) => {
      const at = new Date(Date.parse('2026-03-02T00:00:00Z') + k * 300_000)
        .toISOString()
        .slice(0, 16)
        .replace('T', ' ');
      return `${at},${k % Math.round(1 / bad) === 3 ? 'x' : 110 + (k % 40)}`;
    }),
  ].join('\n');

test('everyone stands on the worklist, with what was lost or could not be read', () => {
  const top = scratch();
  const folder = join(top, 'in');
  mkdirSync(folder);
  const person = (code: string, bad: number, settings?: object): void => {
    mkdirSync(join(folder, code));
    writeFileSync(join(folder, code, 'a.csv'), `${readings(bad)}\n# ${code},\n`);
    if (settings) writeFileSync(join(folder, code, 'settings.json'), JSON.stringify(settings));
  };
  person('L-some', 0.02);
  person('L-much', 0.1);
  person('L-accepted', 0.1, { acceptLosses: ['a.csv'] });
  writeFileSync(join(folder, 'U-one.sketch'), 'x');
  writeFileSync(join(folder, 'U-two.pages'), 'y');
  expect(clinic(top, 'clinic', 'in', '--out', 'out').exit).toBe(2);
  const why = Object.fromEntries(
    worklistOf(join(top, 'out')).map(({ Code, Why = '' }) => [Code, Why.replaceAll('\u00a0', ' ')]),
  );
  expect(why['L-some']).toMatch(/20 of 1,000 readings and notes could not be used/);
  expect(why['L-much']).toMatch(/--accept-losses a\.csv \(or as acceptLosses/);
  expect(why['L-accepted']).toMatch(/100 of 1,000 readings and notes could not be used/);
  expect(why['U-one']).toMatch(/not read: U-one\.sketch/);
  expect(why['U-two']).toMatch(/not read: U-two\.pages/);

  writeFileSync(join(folder, 'settings.json'), JSON.stringify({ acceptLosses: ['a.csv'] }));
  const { exit, err } = clinic(top, 'clinic', 'in', '--out', 'out');
  expect([exit, err]).toEqual([64, expect.stringContaining('everyone in the folder')]);
});

test('the command asks before it makes a report of what is left, and takes the name of the file', () => {
  const folder = scratch({ 'a.csv': readings(0.1) });
  const asked = run(folder, ['report', 'a.csv', '--code', 'P-1']);
  expect([asked.exit, asked.err]).toEqual([1, expect.stringContaining('--accept-losses a.csv')]);
  expect(run(folder, ['report', 'a.csv', '--code', 'P-1', '--accept-losses', 'a.csv']).exit).toBe(0);
  expect(run(folder, ['read', 'a.csv', '--accept-losses', 'b.csv', '--accept-losses', 'a.csv']).exit).toBe(0);
  execFileSync('mkfifo', [join(folder, 'pipe.csv')]);
  const pipe = run(folder, ['report', 'pipe.csv']);
  expect([pipe.exit, pipe.err]).toEqual([64, expect.stringContaining('a pipe or a device')]);
});
