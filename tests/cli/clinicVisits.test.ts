import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import type { Agreed, Visit } from '../../src/model/visits.ts';
import { visitText } from '../../src/schemas/visitText.ts';
import { exported, leftBy } from '../support/visiting.ts';
import { clinic, filesIn } from './clinicRun.ts';
import { scratch } from './run.ts';

type Line = Record<'Code' | 'Group' | 'Why' | 'Since last time' | 'Agreed last time', string>;
const STARTS = [0, 40, 80];

/** Three visits of one invented person, each of a fortnight; the last agreed on something. */
const visitsOf = (code: string, seed: number, agreed: Agreed | null = null): Visit[] =>
  STARTS.map((from, i) =>
    leftBy(exported({ seed, every: 15 }, from, from + 14), { person: { code } }, i === 2 ? agreed : null),
  );

test('a folder of visit files: several of each person, in any order, some damaged or of another, and nobody waits for others', () => {
  const folder = scratch();
  const put = (path: string, text: string): void => {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    writeFileSync(join(folder, path), text);
  };
  const people = ['A-1', 'A-2', 'A-3', 'B-cut', 'B-later', 'B-code', 'B-days', 'B-lone', 'A-none'];
  for (const [i, code] of people.entries()) put(`in/${code}/a.csv`, exported({ seed: i + 1, every: 15 }, 90, 134));
  const day = (n: number) => `2026-0${n}-15`;
  const of = (i: number, agreed: Agreed | null = null) => visitsOf(people[i]!, i + 1, agreed).map(visitText);

  // As an earlier run leaves them; what one agreed on is a formula to a spreadsheet and markup to a page.
  for (const [n, text] of of(0, { goal: '=1+1', step: '<b>a walk</b>' }).entries())
    put(`since/A-1/A-1-visit-${day(n + 1)}.json`, text);
  // The names tell another order than the days in them.
  for (const [n, text] of of(1, { step: 'a walk' }).entries()) put(`since/A-2/A-2-visit-${day(3 - n)}.json`, text);
  // Side by side in one folder, one of them twice.
  const third = of(2, { step: 'a swim' });
  for (const [n, text] of third.entries()) put(`since/A-3-visit-${day(n + 1)}.json`, text);
  put(`since/A-3/A-3-visit-${day(3)}.json`, third[2]!);
  put(`since/B-cut/B-cut-visit-${day(1)}.json`, of(3)[0]!);
  put(`since/B-cut/B-cut-visit-${day(2)}.json`, of(3)[1]!.slice(0, -200));
  put(`since/B-later/B-later-visit-${day(1)}.json`, of(4)[0]!.replace('"version": 2', '"version": 3'));
  put(`since/B-code/B-code-visit-${day(1)}.json`, of(0)[0]!);
  // Days that its readings hold as well, and with other values.
  put(`since/B-days/B-days-visit-${day(3)}.json`, visitText(leftBy(exported({ seed: 2.5, every: 15 }, 95, 105))));
  put(`since/B-lone/B-lone-visit-${day(1)}.json`, '[]');

  const ran = clinic(folder, 'clinic', 'in', '--out', 'out', '--since', 'since', '--further', '--date', '2026-08-01');
  expect(ran.exit, ran.err).toBe(2);
  const lines = parse(readFileSync(join(folder, 'out/worklist.csv')), { columns: true }) as Line[];
  expect(lines.map((line) => line.Code).sort()).toEqual([...people].sort());
  const line = (code: string): Line => lines.find((one) => one.Code === code)!;
  const papers = (code: string): string[] =>
    [...filesIn(join(folder, 'out', code)).keys()].filter((name) => name.endsWith('.pdf'));

  for (const code of ['A-1', 'A-2', 'A-3', 'A-none']) expect(papers(code), code).toContain(`${code}-clinic-report.pdf`);
  for (const code of ['A-1', 'A-2', 'A-3'])
    expect(line(code)['Since last time'], code).toMatch(/within day-to-day noise|closer|further/);
  expect(line('A-1')['Agreed last time']).toMatch(/^Agreed last time: “=1\+1”, “<b>a walk<\/b>”/);
  expect(line('A-2')['Agreed last time']).toMatch(/^Agreed last time: “a walk”/);
  expect(line('A-3')['Agreed last time']).toMatch(/^Agreed last time: “a swim”/);
  expect([line('A-none')['Since last time'], line('A-none')['Agreed last time']]).toEqual(['not compared', '']);
  const page = readFileSync(join(folder, 'out/worklist.html'), 'utf8');
  expect(page).toContain('&lt;b&gt;a walk&lt;/b&gt;');
  expect(page).not.toContain('<b>a walk');

  for (const [code, why] of [
    ['B-cut', /visit file ".*B-cut-visit-2026-02-15\.json" cannot be used: JSON/],
    ['B-later', /B-later-visit-2026-01-15\.json" was written by a later version/],
    ['B-code', /is of the code A-1, and these files are of B-code/],
    ['B-days', /hold other values for the same days/],
    ['B-lone', /B-lone-visit-2026-01-15\.json" cannot be used/],
  ] as const) {
    expect(line(code).Group, code).toBe('Could not be read');
    expect(line(code).Why, code).toMatch(why);
    expect(papers(code), code).toEqual([]);
  }

  // Three visits in the order of their days, whatever the names say.
  const table = (code: string) =>
    JSON.parse(readFileSync(join(folder, 'out', code, 'record.json'), 'utf8')).facts.change.with;
  expect([table('A-1'), table('A-2'), table('A-3')]).toEqual(Array(3).fill('2026-06-03'));
}, 240_000);
