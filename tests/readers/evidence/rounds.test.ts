import { expect, test } from 'vitest';
import type { ReadFile, ReadSettings } from '../../../src/model/input.ts';
import { read, refusals, sugar } from './tables.ts';

/** What a table can leave open: all of it is asked in the first run, and whatever is proposed for it leaves one more round at most. */
const OPEN = ['clocks', 'halves', 'order', 'kinds', 'unit'] as const;
type Open = (typeof OPEN)[number];
const CODE: Record<Open, string> = {
  clocks: 'two-clocks',
  halves: 'clock-half-lost',
  order: 'date-order-unclear',
  kinds: 'kinds-unknown',
  unit: 'unit-unclear',
};
const N = 576;
const FIRST = Date.UTC(2026, 1, 3);

/** A day in early February, its rows written in two passes: what order they stand in mends no halves of the day. */
function sheet(open: Set<Open>): string {
  const when = (i: number, hours: number): string => {
    const minutes = (i % 288) * 5 + (i < 288 ? 0 : 2);
    const [date = '', clock = ''] = new Date(FIRST + minutes * 60_000 + hours * 3_600_000).toISOString().split('T');
    const [year, month, day] = date.split('-');
    const hour = Number(clock.slice(0, 2));
    const shown = open.has('halves') ? ((hour + 11) % 12) + 1 : hour;
    return `${open.has('order') ? `${day}/${month}/${year}` : date} ${shown}${clock.slice(2, 5)}`;
  };
  const value = (i: number): number => (open.has('unit') ? 25 + Math.round(5 * Math.sin(i / 30)) : sugar(i));
  const rows = Array.from({ length: N }, (_, i) => {
    const times = open.has('clocks') ? `${when(i, 0)},${when(i, 2)}` : when(i, 0);
    const row = (word: string, shown: number) => `${times},${open.has('kinds') ? `${word},` : ''}${shown}\n`;
    return row('Blap', value(i % 288)) + (open.has('kinds') && i % 40 === 7 ? row('Fnord', 4) : '');
  });
  const head = `${open.has('clocks') ? 'Device time,' : ''}Time,${open.has('kinds') ? 'Type,' : ''}Glucose`;
  return `${head}${open.has('unit') ? '' : ' (mg/dL)'}\n${rows.join('')}`;
}

/** All that the refusals of a file propose, taken together. */
function answers({ issues }: ReadFile, before: Partial<ReadSettings>): Partial<ReadSettings> {
  const given = { ...before };
  for (const issue of issues) {
    if (issue.level !== 'refusal' || !('question' in issue) || !issue.question) continue;
    const { question } = issue;
    if (question.of === 'unit') given.unit = question.answer ?? 'mg/dL';
    if (question.of === 'day-order') given.dateOrder = question.answer;
    if (question.of !== 'layout') continue;
    const answer = question.answer ?? (question.field === 'clock' ? '{"clock":"24-hour"}' : '{}');
    given.layout = {
      ...(given.layout as object | undefined),
      ...JSON.parse(answer.replace('"Blap":"…"', '"Blap":"sensor"').replace('…', 'insulin')),
    };
  }
  return given;
}

const combinations = Array.from({ length: 2 ** OPEN.length }, (_, n) => OPEN.filter((_, bit) => n & (1 << bit)));

test.each(combinations.map((open) => [open.join(' ') || 'nothing', new Set(open)] as const))('open: %s', (_, open) => {
  const text = sheet(open);
  const first = read(text);
  const asked = OPEN.filter((one) => refusals(first).includes(CODE[one]));
  expect(asked).toEqual([...open]);
  let settings = answers(first, {});
  let next = read(text, settings);
  settings = answers(next, settings);
  next = read(text, settings);
  expect(refusals(next)).toEqual([]);
  expect(next.readings.count).toBeGreaterThanOrEqual(N);
});
