import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { clinic, filesIn, worklistOf } from './clinicRun.ts';
import { home, listed, plainExport, run, scratch } from './run.ts';

const story = join(home, 'sample-data/steady-fortnight');
// The date of printing stands in the settings of the story.
const ASKED = ['--html', '--attach', '--more-indices'];

test('one person by themselves or among others: the same files of the same names, byte for byte', () => {
  const folder = scratch();
  cpSync(story, join(folder, 'in/HL-104'), { recursive: true });
  const alone = run(folder, ['report', 'in/HL-104', '--snapshot', '--out', 'alone', ...ASKED]);
  expect(alone.exit, alone.err).toBe(0);
  const among = clinic(folder, 'clinic', 'in', '--out', 'among', '--numbers', ...ASKED);
  expect(among.exit, among.err).toBe(0);
  const own = filesIn(join(folder, 'among/HL-104'));
  own.delete('record.json');
  expect(listed(join(folder, 'alone'))).toEqual(expect.arrayContaining(['HL-104-patient-paper.html']));
  const other = filesIn(join(folder, 'alone'));
  expect([...own.keys()]).toEqual([...other.keys()]);
  for (const [name, bytes] of other) expect(bytes.equals(own.get(name)!), name).toBe(true);

  // Pages and numbers that are no longer asked for do not stay behind.
  expect(clinic(folder, 'clinic', 'in', '--out', 'among', ...ASKED.slice(1)).exit).toBe(0);
  expect(listed(join(folder, 'among/HL-104')).filter((name) => /\.html$|analysis/.test(name))).toEqual([]);
}, 60_000);

test('a code instead of the name that exports are called by: on no paper; the worklist tells which file is meant', () => {
  const folder = scratch();
  mkdirSync(join(folder, 'in'));
  writeFileSync(join(folder, 'in/Zwentibold Meier.csv'), plainExport());
  writeFileSync(join(folder, 'in/Ottilie Vogt.csv'), 'Time,Sensor glucose (mg/dL)\n');
  writeFileSync(join(folder, 'in/manifest.csv'), 'person,code\nZwentibold Meier.csv,X-1\nOttilie Vogt.csv,X-2\n');
  expect(clinic(folder, 'clinic', 'in', '--out', 'out', '--fhir', '--html', '--numbers').exit).toBe(2);
  for (const [path, bytes] of filesIn(join(folder, 'out/X-1'))) {
    expect(path).not.toMatch(/zwentibold|meier/i);
    // The record is ours: it knows each file by its name, to see the next time whether it has changed.
    if (path !== 'record.json') expect(bytes.toString('latin1'), path).not.toMatch(/zwentibold|meier/i);
  }
  expect(readFileSync(join(folder, 'out/X-1/X-1-analysis.json'), 'utf8')).toContain('X-1-file-1.csv');
  const [first, second] = worklistOf(join(folder, 'out'));
  expect(first).toMatchObject({ Code: 'X-2', Files: 'Ottilie Vogt.csv' });
  expect(first!.Why).toMatch(/Ottilie Vogt\.csv/);
  expect(second).toMatchObject({ Code: 'X-1', Files: 'Zwentibold Meier.csv' });
}, 60_000);
