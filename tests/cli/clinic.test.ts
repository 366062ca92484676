import { cpSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { writePeople } from '../support/people.ts';
import { BROKEN, breakSome } from './brokenPeople.ts';
import { clinic, expectWhole, filesIn, papersIn, worklistOf } from './clinicRun.ts';
import { home, scratch } from './run.ts';

const hostile = (name: string): string => join(home, 'sample-data/hostile', name);
const SMALL = { days: 2, step: 30 };

test('60 people, and others broken in every way: everyone stands on the worklist once, nobody is skipped', () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 60, SMALL);
  breakSome(join(folder, 'in'));
  const before = filesIn(join(folder, 'in')).size;
  const ran = clinic(folder, 'clinic', 'in', '--out', 'out', '--date', '2026-06-01');
  expect(ran.exit, ran.err).toBe(2);
  expectWhole(join(folder, 'out'));
  expect(filesIn(join(folder, 'in')).size, 'nothing is written among the exports').toBe(before);

  const lines = worklistOf(join(folder, 'out'));
  const named = lines.flatMap(({ Files }) => (Files === '' ? [] : Files.replace(/^'/, '').split('; '))).sort();
  const given = [...filesIn(join(folder, 'in')).keys()]
    .filter((path) => !/(^|\/)(settings\.json|manifest\.csv)$/.test(path) && !path.startsWith('B-loop/'))
    .sort();
  expect(named).toEqual(given);

  const unread = lines.filter(({ Group }) => Group === 'Could not be read');
  expect(lines.slice(0, unread.length), 'whoever could not be read stands first').toEqual(unread);
  for (const { Why } of unread) expect(Why).not.toBe('');
  for (const [code, why] of Object.entries(BROKEN)) {
    const own = unread.filter(({ Code }) => Code === code);
    expect(own.length, code).toBe(code === 'B-twin' ? 2 : 1);
    for (const { Why, Folder } of own) {
      expect(Why, code).toMatch(why);
      expect(Folder).toBe('');
    }
  }
  const read = lines.filter(({ Folder }) => Folder !== '');
  expect(read.filter(({ Code }) => /^P-\d{4}$/.test(Code)).length).toBe(60);
  for (const { Folder } of read) {
    const names = [...filesIn(join(folder, 'out', Folder)).keys()].join();
    expect(names, Folder).toMatch(/-clinic-report\.pdf.*-interpretation\.txt.*-patient-paper\.pdf/);
  }
  expect(lines.find(({ Code }) => Code === 'P-0001')).toMatchObject({ Visit: '2026-03-04' });

  // A cell that a spreadsheet would run is kept from it.
  const raw = readFileSync(join(folder, 'out/worklist.csv'), 'utf8');
  expect(raw).not.toMatch(/(^|,)"?[=+@]/m);
  const measures = parse(readFileSync(join(folder, 'out/measures.csv')), { columns: true }) as Record<string, string>[];
  expect(measures.length).toBe(lines.length);
  expect(measures.find(({ code }) => code === 'P-0001')).toMatchObject({ targets: 'older', lab_a1c_percent: '7.1' });

  // The log knows nobody.
  const log = readFileSync(join(folder, 'out/run-log.jsonl'), 'utf8').trim().split('\n');
  expect(
    log.map((line) => (JSON.parse(line) as { event: string }).event).filter((event) => event === 'person').length,
  ).toBe(lines.length);
  expect(log.join('\n')).not.toMatch(/P-0001|sensor\.csv|Anna/);

  // Again: nothing is made that is there already, and the worklist says the same.
  const stamps = [...filesIn(join(folder, 'out')).keys()].filter((path) => path.startsWith('P-'));
  const times = stamps.map((path) => statSync(join(folder, 'out', path)).mtimeMs);
  rmSync(join(folder, 'out/P-0002/P-0002-clinic-report.pdf'));
  writeFileSync(join(folder, 'out/P-0003/P-0003-interpretation.txt'), '{');
  cpSync(hostile('newest-first.csv'), join(folder, 'in/P-0004/more.csv'));
  rmSync(join(folder, 'in/P-0005/sensor.csv'));
  const again = clinic(folder, 'clinic', 'in', '--out', 'out', '--date', '2026-06-01');
  expect(again.exit).toBe(2);
  const touched = stamps.filter((path, i) => {
    const now = statSync(join(folder, 'out', path), { throwIfNoEntry: false });
    return now?.mtimeMs !== times[i];
  });
  expect([...new Set(touched.map((path) => path.split('/')[0]))].sort()).toEqual([
    'P-0002',
    'P-0003',
    'P-0004',
    'P-0005',
  ]);
  expectWhole(join(folder, 'out'));
  // Notes without readings: no papers, and none of the old ones left to be taken for new.
  expect([...filesIn(join(folder, 'out/P-0005')).keys()]).toEqual(['record.json']);
}, 400_000);

test('the worklist is printed as everyone is, by the settings at the top of the folder', () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 1, SMALL);
  writeFileSync(join(folder, 'in/settings.json'), '{"region":"en-US","clinic":"Harbour Lane","grey":true}');
  const page = (...more: string[]): string => {
    expect([0, 2]).toContain(clinic(folder, 'clinic', 'in', '--out', 'out', ...more).exit);
    return readFileSync(join(folder, 'out/worklist.html'), 'utf8');
  };
  expect(page()).toMatch(/@page\{size:letter;@top-left\{content:"Harbour Lane"/);
  // The command line is nearer.
  expect(page('--paper', 'a4', '--clinic', 'Quay')).toMatch(/@page\{size:a4;@top-left\{content:"Quay"/);
});

test('a dry run writes nothing and shows what each set of thresholds would ask for', () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 9, SMALL);
  writeFileSync(
    join(folder, 'mine.json'),
    '{"data":{"days":null,"share":null},"lows":{"share":0.5,"nightEvents":null}}',
  );
  const ran = clinic(folder, 'clinic', 'in', '--out', 'out', '--dry-run', '--thresholds', 'mine.json');
  expect(ran.exit, ran.err).toBe(0);
  expect(filesIn(join(folder, 'out')).size).toBe(0);
  for (const name of ['Your thresholds', 'The usual thresholds', 'Battelino 2019', 'Crossen 2022']) {
    expect(ran.out).toContain(name);
  }
  // Two days are not enough for anyone, by the usual thresholds.
  expect(ran.out).toMatch(/The usual thresholds: 9\sof\s9 to look at/);
  // By the thresholds in force everyone is steady, and nothing was compared.
  expect(ran.out).toMatch(/^ {2}0 {2}Further from the goals/m);
  expect(ran.out).toMatch(/^ {2}9 {2}Steady: none of these/m);
  expect(clinic(folder, 'clinic', 'in', '--thresholds', 'none.json').exit).toBe(64);
}, 120_000);

test('parts are the whole, share nobody, and merge into one worklist; a missing part is refused', () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 8, SMALL);
  mkdirSync(join(folder, 'in/empty'));
  const whole = clinic(folder, 'clinic', 'in', '--out', 'whole', '--date', '2026-06-01');
  expect(whole.exit, whole.err).toBe(2);
  for (const part of ['1/3', '3/3']) {
    clinic(folder, 'clinic', 'in', '--out', 'parts', '--shard', part, '--date', '2026-06-01');
  }
  const early = clinic(folder, 'worklist', 'parts');
  expect(early.exit).toBe(64);
  expect(early.err).toContain('2/3');
  // A part may lie elsewhere.
  clinic(folder, 'clinic', 'in', '--out', 'elsewhere', '--shard', '2/3', '--date', '2026-06-01');
  const merged = clinic(folder, 'worklist', 'parts', 'elsewhere', '--out', 'merged');
  expect(merged.exit, merged.err).toBe(2);
  for (const name of ['worklist.csv', 'measures.csv', 'worklist.pdf']) {
    expect(readFileSync(join(folder, 'merged', name)), name).toEqual(readFileSync(join(folder, 'whole', name)));
  }
  // The page of the whole leads to the papers beside it; the merged one stands elsewhere and leads nowhere.
  const page = (out: string): string => readFileSync(join(folder, out, 'worklist.html'), 'utf8');
  const links = /<a href="\.\/([^"]*)">(.*?)<\/a>/g;
  expect(page('merged')).toBe(page('whole').replace(links, '$2'));
  const linked = [...page('whole').matchAll(links)].map(([, to]) => to!);
  expect(linked.length).toBe(8);
  for (const to of linked) expect(statSync(join(folder, 'whole', to)).isFile(), to).toBe(true);
  const papers = new Map([...papersIn(join(folder, 'parts')), ...papersIn(join(folder, 'elsewhere'))]);
  expect([...papers].sort()).toEqual([...papersIn(join(folder, 'whole'))].sort());
}, 240_000);

test('a later run compares everyone with an earlier one', () => {
  const folder = scratch();
  writePeople(join(folder, 'in'), 2, { days: 28, step: 15 });
  expect(clinic(folder, 'clinic', 'in', '--out', 'first', '--to', '2026-02-15').exit).toBe(0);
  expect(clinic(folder, 'clinic', 'in', '--out', 'second', '--since', 'first').exit).toBe(0);
  const changes = parse(readFileSync(join(folder, 'second/worklist.csv')), { columns: true }) as Record<
    string,
    string
  >[];
  for (const line of changes) {
    expect(line['Since last time']).toMatch(/within day-to-day noise|closer|further/);
  }
  expect(clinic(folder, 'clinic', 'in', '--out', 'first', '--since', 'first').exit).toBe(64);
}, 120_000);

test.each([
  ['no folder', ['nowhere'], 64, /no file or folder/],
  ['a file', ['a.csv'], 64, /takes a folder/],
  ['an empty folder', ['empty'], 64, /holds no export/],
  ['results over the exports', ['in', '--out', 'in'], 64, /holds it/],
  ['results above the exports', ['in', '--out', '.'], 64, /holds it/],
  ['a part that is none', ['in', '--shard', '4/3'], 64, /1\/4/],
  ['a number that is none', ['in', '--threads', 'many'], 64, /whole number/],
  ['a manifest that is none', ['bad'], 64, /manifest\.csv/],
  ['a queue that is none', ['in', '--queue', 'http://localhost'], 64, /queue/],
  ['a queue that nobody keeps', ['in', '--queue', 'redis://127.0.0.1:1'], 64, /cannot be reached/],
])('%s is told in clear words', (_, args, exit, words) => {
  const folder = scratch({ 'a.csv': 'x' });
  for (const name of ['empty', 'in', 'bad']) mkdirSync(join(folder, name));
  writePeople(join(folder, 'in'), 1, SMALL);
  writePeople(join(folder, 'bad'), 1, SMALL);
  writeFileSync(join(folder, 'bad/manifest.csv'), 'who,what\n1,2\n');
  const ran = clinic(folder, 'clinic', ...args);
  expect(ran.exit, ran.err).toBe(exit);
  expect(ran.err).toMatch(words);
});
