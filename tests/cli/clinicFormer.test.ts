import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { partPath } from '../../src/cli/halfWritten.ts';
import { writePeople } from '../support/people.ts';
import { clinic, filesIn, givenIn, worklistOf } from './clinicRun.ts';
import { scratch } from './run.ts';

test('papers of people who left the folder stay, and the run and the worklist say that they are not of this run', () => {
  const folder = scratch();
  const [at, out] = [join(folder, 'in'), join(folder, 'out')];
  writePeople(at, 4, { days: 2, step: 30 });
  mkdirSync(join(at, 'U-1'));
  writeFileSync(join(at, 'U-1/sensor.csv'), 'Dear doctor, nothing\n');
  const go = (...more: string[]) => clinic(folder, 'clinic', 'in', '--out', 'out', '--date', '2026-06-01', ...more);
  const page = (): string => readFileSync(join(out, 'worklist.html'), 'utf8').replace(/[\u2066-\u2069]/g, '');
  const whole = go();
  expect(whole.out).not.toContain('earlier run and not of this one');
  expect(page()).not.toContain('who are not in this run');
  for (const name of ['P-0002', 'P-0004', 'U-1']) rmSync(join(at, name), { recursive: true });
  // A folder that no run of ours made is nobody's; half-written files of who left go too, whole ones stay.
  mkdirSync(join(out, 'notes of the desk'));
  writeFileSync(join(out, 'notes of the desk/a.txt'), 'x');
  const left = filesIn(join(out, 'P-0002'));
  const part = partPath(join(out, 'P-0002'), 'record.json').replace(/\.\d+-/, '.999999999-');
  writeFileSync(part, 'half');
  const said = 'Results of 2 people there are of an earlier run and not of this one: P-0002, P-0004.';
  const onPage = 'for 2 people who are not in this run lie beside these: P-0002, P-0004.';
  const second = go();
  expect([second.exit, second.out]).toEqual([0, expect.stringContaining(said)]);
  expect(page()).toContain(onPage);
  expect(
    worklistOf(out)
      .map(({ Code }) => Code)
      .sort(),
  ).toEqual(['P-0001', 'P-0003']);
  expect(existsSync(part)).toBe(false);
  expect([...filesIn(join(out, 'P-0002'))]).toEqual([...left]);
  // Made again from what the run left, and from parts, it says the same.
  rmSync(join(out, 'worklist.html'));
  expect(clinic(folder, 'worklist', 'out').out).toContain(said);
  expect(page()).toContain(onPage);
  for (const shard of ['1/2', '2/2']) expect(go('--shard', shard).out).not.toContain('not of this one');
  expect(clinic(folder, 'worklist', 'out').out).toContain(said);
  expect(page()).toContain(onPage);
  expect(givenIn(out)).toEqual(['P-0001', 'P-0002', 'P-0003', 'P-0004']);
}, 240_000);
