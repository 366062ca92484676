import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { run as tool } from '../support/tools.ts';
import { clinic, papersIn, WAITING, worklistOf } from './clinicRun.ts';
import { listed, plainExport, scratch } from './run.ts';

const DATE = ['--date', '2026-06-01'];

test('what the manifest says of a person holds, before the command line; with --fhir the report travels in the bundle', () => {
  const folder = scratch();
  mkdirSync(join(folder, 'in'));
  // No unit is named, and 7 could be nothing else than mmol/L.
  const bare = plainExport(15, 'mmol/L', (i) => (6 + (i % 30) / 10).toFixed(1)).replace(' (mmol/L)', '');
  writeFileSync(join(folder, 'in/one.csv'), bare);
  writeFileSync(join(folder, 'in/two.csv'), plainExport());
  writeFileSync(
    join(folder, 'in/manifest.csv'),
    [
      'code,person,name,targets,unit,zone,language,visit,a1c',
      'X-1,one.csv,Zwentibold,older,mmol/L,Pacific/Auckland,es,2026-06-02,7.4',
      'X-2,two.csv,,,,,,,',
      '',
    ].join('\n'),
  );
  const ran = clinic(
    folder,
    'clinic',
    'in',
    '--out',
    'out',
    '--fhir-readings',
    '--numbers',
    '--language',
    'en',
    '--unit',
    'mg/dL',
    ...DATE,
  );
  expect(ran.exit, ran.err).toBe(0);
  const read = (name: string): string => readFileSync(join(folder, 'out/X-1', name), 'utf8');
  const { settings, timeline } = JSON.parse(read('X-1-analysis.json'));
  expect({ settings, timeline }).toMatchObject({
    settings: {
      targets: 'older',
      zone: 'Pacific/Auckland',
      person: { name: 'Zwentibold', code: 'X-1' },
      a1c: { value: 7.4 },
    },
    timeline: { unit: 'mmol/L' },
  });
  const paper = tool('pdftotext', [join(folder, 'out/X-1/X-1-clinic-report.pdf'), '-']);
  expect(paper).toContain('Zwentibold · X-1');
  expect(paper).toContain('impreso');
  expect(worklistOf(join(folder, 'out')).find(({ Code }) => Code === 'X-1')).toMatchObject({ Visit: '2026-06-02' });

  const bundle = JSON.parse(read('X-1-cgm.fhir.json'));
  const resources = bundle.entry.map(({ resource }: { resource: { resourceType: string } }) => resource);
  const [report] = resources.filter(
    ({ resourceType }: { resourceType: string }) => resourceType === 'DiagnosticReport',
  );
  const pdf = readFileSync(join(folder, 'out/X-1/X-1-clinic-report.pdf'));
  expect(Buffer.from(report.presentedForm[0].data, 'base64').equals(pdf)).toBe(true);
  expect(resources.length).toBeGreaterThan(14 * 288);
  // Without a zone there is no reading with an offset, so there are only summaries.
  expect(JSON.parse(readFileSync(join(folder, 'out/X-2/X-2-cgm.fhir.json'), 'utf8')).entry.length).toBeLessThan(40);
  // What could not go out is said on the command line, in the log and in the record.
  expect(ran.out).toMatch(/FHIR: of one person [\d,.]+ readings and .* are not in the bundles: without a zone/);
  const log = readFileSync(join(folder, 'out/run-log.jsonl'), 'utf8').trim().split('\n');
  const left = log.flatMap((line) => (JSON.parse(line) as { fhirLeft?: { readings: number } }).fhirLeft ?? []);
  expect(left.map(({ readings }) => readings > 0).sort()).toEqual([false, true]);
  expect(JSON.parse(readFileSync(join(folder, 'out/X-2/record.json'), 'utf8')).fhirLeft.readings).toBeGreaterThan(0);
}, 60_000);

test('the same file in two parts of a divided folder: the papers of both are taken away, wherever they lie', () => {
  const folder = scratch();
  for (const code of ['P-1', 'P-2', 'P-3']) {
    mkdirSync(join(folder, 'in', code), { recursive: true });
    writeFileSync(
      join(folder, 'in', code, 'sensor.csv'),
      plainExport(3, 'mg/dL', (i) => 110 + ((i + code.charCodeAt(2)) % 60)),
    );
  }
  cpSync(join(folder, 'in/P-1/sensor.csv'), join(folder, 'in/P-2/other.csv'));
  for (const part of [1, 2, 3, 4]) {
    clinic(folder, 'clinic', 'in', '--out', `part-${part}`, '--shard', `${part}/4`, ...DATE);
  }
  const parts = [1, 2, 3, 4].map((part) => `part-${part}`);
  const has = (part: string, code: string, where: string): string[] => listed(join(folder, part, where, code));
  const lies = (code: string, where = ''): string | undefined =>
    parts.find((part) => has(part, code, where).includes('record.json'));
  // No part gives papers out before all are read. P-2 has none to give: a file contradicts another.
  expect([lies('P-1'), lies('P-3')]).toEqual([undefined, undefined]);
  const [first, second] = [lies('P-1', WAITING)!, lies('P-2')!];
  expect(first, 'the two lie in different parts').not.toBe(second);
  expect(clinic(folder, 'worklist', ...parts, '--out', 'whole').exit).toBe(2);
  const lines = worklistOf(join(folder, 'whole'));
  expect(lines.map(({ Code, Folder }) => [Code, Folder])).toEqual([
    ['P-1', ''],
    ['P-2', ''],
    ['P-3', 'P-3'],
  ]);
  for (const code of ['P-1', 'P-2', 'P-3']) expect(lies(code, WAITING)).toBeUndefined();
  expect([has(first, 'P-1', ''), has(second, 'P-2', '')]).toEqual([[], ['record.json']]);
  expect(has(lies('P-3')!, 'P-3', '')).toContain('P-3-clinic-report.pdf');
}, 60_000);

test('results of an earlier run among the exports are nobody, and told', () => {
  const folder = scratch();
  mkdirSync(join(folder, 'in/P-1'), { recursive: true });
  writeFileSync(join(folder, 'in/P-1/sensor.csv'), plainExport(3));
  expect(clinic(folder, 'clinic', 'in', '--out', 'in/monday', ...DATE).exit).toBe(0);
  const second = clinic(folder, 'clinic', 'in', '--out', 'in/tuesday', ...DATE);
  expect(second.exit, second.err).toBe(0);
  expect(second.out).toContain('Found 1 person');
  expect(readFileSync(join(folder, 'in/tuesday/worklist.html'), 'utf8')).toContain('monday');
  expect([...papersIn(join(folder, 'in/tuesday'))]).toEqual([...papersIn(join(folder, 'in/monday'))]);
}, 60_000);

test('who was found is printed with the rule, and written down as a manifest that is never written over', () => {
  const folder = scratch();
  mkdirSync(join(folder, 'in/A'), { recursive: true });
  for (const name of ['A/s.csv', 'p001.csv', 'p001-notes.csv', 'B.csv'])
    writeFileSync(join(folder, 'in', name), plainExport(2));
  const write = () => clinic(folder, 'clinic', 'in', '--write-manifest');
  const first = write();
  expect([first.exit, first.err]).toEqual([0, '']);
  const manifest = readFileSync(join(folder, 'in/manifest.csv'), 'utf8');
  expect(manifest.split('\r\n').slice(1)).toEqual([
    'A,A,,,,,,,',
    'B.csv,B,,,,,,,',
    'p001.csv,,,,,,,,',
    'p001-notes.csv,,,,,,,,',
    '',
  ]);
  expect(write()).toMatchObject({ exit: 64, err: expect.stringContaining('not written over') });
  expect(readFileSync(join(folder, 'in/manifest.csv'), 'utf8')).toBe(manifest);
  const dry = clinic(folder, 'clinic', 'in', '--dry-run');
  expect(dry.out).toContain('A: subfolder: A/s.csv');
  expect(dry.out).toContain('p001-notes: one person or two?: p001-notes.csv');
  // What is open withholds nobody else's papers.
  clinic(folder, 'clinic', 'in', '--out', 'out', ...DATE);
  const why = Object.fromEntries(worklistOf(join(folder, 'out')).map(({ Code, Why }) => [Code, Why]));
  expect(why.p001).toMatch(/for one person the same code: p001-notes\.csv,p001\s+p001\.csv,p001/);
  const page = readFileSync(join(folder, 'out/worklist.html'), 'utf8').replace(/[\u2066-\u2069]/g, '');
  expect(page).toContain('1 by their subfolder, 1 by their one file, 2 where it is not clear');
});
