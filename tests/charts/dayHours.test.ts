import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { ChartContext } from '../../src/charts/context.ts';
import { dayHours } from '../../src/charts/dayHours.ts';
import { speakerOf } from '../../src/language/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

const words: unknown = JSON.parse(readFileSync(new URL('../../templates/words/en.json', import.meta.url), 'utf8'));
const targets = targetSets.adult;
const speaker = speakerOf(words, { unit: 'mg/dL', voice: 'clinic', targets });
const context: ChartContext = { speaker, targets, native: 'mg/dL', text: 8.5 };

/** The row of one hour of the first day. */
const hour = (at: number, days: DaysOf): string[] => dayHours(timelineOf({ days: 1, ...days }), 0, context).rows[at]!;

test.each<[string, number, DaysOf, (string | RegExp)[]]>([
  ['the lowest and highest of its readings', 2, { value: (m) => 100 + (m % 60) }, ['2\u00a0AM', '100', '155', '']],
  ['one reading is both', 0, { value: () => 90, every: 60 }, ['midnight', '90', '90', '']],
  ['the first hour does not take the second', 0, { value: (m) => (m < 60 ? 90 : 50) }, ['midnight', '90', '90', '']],
  ['an hour without readings', 3, { value: () => 90, without: [{ from: 180, to: 240 }] }, ['3\u00a0AM', '–', '–', '']],
  [
    'a reading below the sensor is a bound, and lower than any number',
    0,
    { value: (m) => (m === 30 ? { native: 40, limit: -1 } : 40) },
    ['midnight', /below|under|</i, '40', ''],
  ],
  [
    'a reading above the sensor is a bound, and higher than any number',
    0,
    { value: (m) => (m === 30 ? { native: 400, limit: 1 } : 400) },
    ['midnight', '400', /above|over|>/i, ''],
  ],
  [
    'what was written down, with its time',
    12,
    {
      value: () => 90,
      notes: [
        { day: 0, minute: 735, kind: 'meal', amount: 40, unit: 'g', label: 'rice' },
        { day: 0, minute: 780, kind: 'meal' },
        { day: 0, kind: 'text', text: 'of the day' },
      ],
    },
    ['noon', '90', '90', /^12:15\sPM food 40\sg rice$/],
  ],
])('%s', (_, at, days, expected) => {
  const row = hour(at, days);
  expect(row).toHaveLength(expected.length);
  for (const [i, cell] of row.entries()) expect(cell).toMatch(expected[i] === '' ? /^$/ : expected[i]!);
});

test('a day has the 24 hours of a wall clock, and a column for each thing told', () => {
  const { columns, rows } = dayHours(timelineOf({ days: 1, value: () => 90 }), 0, context);
  expect(rows).toHaveLength(24);
  for (const row of rows) expect(row).toHaveLength(columns.length);
});

test('a day that holds nothing has no rows', () => {
  const timeline = timelineOf({ days: 3, value: (_, day) => (day === 1 ? null : 90) });
  expect([0, 1, 2].map((day) => dayHours(timeline, day, context).rows.length)).toEqual([24, 0, 24]);
});
