import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { a1cOf, compareWith, joinChanged } from '../../src/cli/compareWith.ts';
import { WrongUse } from '../../src/cli/exits.ts';
import { visitText } from '../../src/schemas/visitText.ts';
import { chance } from '../../src/stats/chance.ts';
import { simulated, WORLDS } from '../support/simulatedDays.ts';
import { visitLike } from '../support/visits.ts';

const folder = mkdtempSync(join(tmpdir(), 'daybands-'));
const sums = simulated(WORLDS[0]!, 14, 0, '2026-01-01', chance(1));
const visits = [visitLike(sums), visitLike(sums, { file: 'P-1-visit-2025-12-14.json' })];
const [file = '', other = ''] = visits.map((visit) => join(folder, visit.file));
for (const visit of visits) writeFileSync(join(folder, visit.file), visitText(visit));
const empty = mkdtempSync(join(tmpdir(), 'daybands-'));
const broken = join(folder, 'broken.json');
writeFileSync(broken, '{}');

test.each([
  [undefined, undefined, undefined],
  ['previous', undefined, { with: 'previous' }],
  ['2026-01-01..2026-01-14', undefined, { with: 'dates', from: '2026-01-01', to: '2026-01-14' }],
  [file, undefined, { with: 'visits', visits: [visits[0]] }],
  [[file], undefined, { with: 'visits', visits: [visits[0]] }],
  [[other, file], undefined, { with: 'visits', visits: visits.toReversed() }],
  [folder, undefined, { with: 'visits', visits: visits.toReversed() }],
  [['previous'], undefined, { with: 'previous' }],
  [
    file,
    '2026-03-14 new routine',
    { with: 'visits', visits: [visits[0]], changed: { date: '2026-03-14', text: 'new routine' } },
  ],
  [undefined, '2026-03-14 new routine', { with: 'change', date: '2026-03-14', text: 'new routine' }],
])('--compare %s --changed %s', async (compare, changed, expected) => {
  expect(await compareWith(compare, changed)).toEqual(expected);
});

test.each([
  ['previous', '2026-03-14 x', 'compareOrChanged'],
  ['2026-01-01..2026-01-14', '2026-03-14 x', 'compareOrChanged'],
  ['last time', undefined, 'wrongCompare'],
  ['no\u0000path', undefined, 'wrongCompare'],
  ['x'.repeat(300), undefined, 'wrongCompare'],
  ['2026-01-14..2026-01-01', undefined, 'datesReversed'],
  ['2026-02-30..2026-03-01', undefined, 'wrongCompare'],
  [broken, undefined, 'wrongVisit'],
  [[file, 'previous'], undefined, 'wrongCompare'],
  [empty, undefined, 'wrongCompare'],
  [undefined, '14 March new', 'wrongDate'],
  [undefined, '2026-03-14', 'changedText'],
  [undefined, `2026-03-14 ${file}`, 'changedText'],
])('--compare %s --changed %s is refused as %s', async (compare, changed, key) => {
  await expect(compareWith(compare, changed)).rejects.toMatchObject({ key });
});

test.each([
  [
    ['report', '--changed', '2026-03-14', 'new routine', 'a.csv'],
    ['report', '--changed', '2026-03-14 new routine', 'a.csv'],
  ],
  [
    ['report', '--changed', '2026-03-14 new', 'a.csv'],
    ['report', '--changed', '2026-03-14 new', 'a.csv'],
  ],
  [
    ['report', '--changed', '2026-03-14', '--grey'],
    ['report', '--changed', '2026-03-14', '--grey'],
  ],
  [
    ['report', 'a.csv'],
    ['report', 'a.csv'],
  ],
])('%j', (args, expected) => {
  expect(joinChanged(args)).toEqual(expected);
});

describe('a laboratory A1C', () => {
  test.each([
    ['7.1', { value: 7.1, unit: '%' }],
    ['7,1 %', { value: 7.1, unit: '%' }],
    ['54', { value: 54, unit: 'mmol/mol' }],
    ['54 mmol/mol', { value: 54, unit: 'mmol/mol' }],
  ])('%s', (text, expected) => {
    expect(a1cOf(text)).toEqual(expected);
  });
  test.each(['', '2', '300', '7.1 mmol/mol', '54 %', 'seven', '-7', '1e1'])('"%s" is refused', (text) => {
    expect(() => a1cOf(text)).toThrow(WrongUse);
  });
});
