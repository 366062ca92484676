import { expect, test } from 'vitest';
import type { ReadFile, ReadSettings } from '../../../src/model/input.ts';
import { readInputs } from '../../../src/readers/index.ts';
import { TODAY } from '../digest.ts';
import { read, refusals, stamp, sugar, table } from './tables.ts';

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

/** What the refusals of a file propose: of its layouts one alone, which holds what the others ask for too. */
function answers({ issues }: ReadFile, before: Partial<ReadSettings>, which: 'first' | 'last'): Partial<ReadSettings> {
  const given = { ...before };
  let laid = false;
  for (const issue of issues) {
    if (issue.level !== 'refusal' || !('question' in issue) || !issue.question) continue;
    const { question } = issue;
    if (question.of === 'unit') given.unit = question.answer ?? 'mg/dL';
    if (question.of === 'day-order') given.dateOrder = question.answer;
    if (question.of !== 'layout' || (laid && which === 'first')) continue;
    laid = true;
    given.layout = JSON.parse(question.answer!.replace('"Blap":"…"', '"Blap":"sensor"').replace('…', 'insulin'));
  }
  return given;
}

const combinations = Array.from({ length: 2 ** OPEN.length }, (_, n) => OPEN.filter((_, bit) => n & (1 << bit)));

const cases = combinations.flatMap((open) =>
  (['first', 'last'] as const).map((which) => [open.join(' ') || 'nothing', which, new Set(open)] as const),
);

test.each(cases)('open: %s; the %s layout that is printed is taken', (_, which, open) => {
  const text = sheet(open);
  const first = read(text);
  const asked = OPEN.filter((one) => refusals(first).includes(CODE[one]));
  expect(asked).toEqual([...open]);
  let settings = answers(first, {}, which);
  let next = read(text, settings);
  settings = answers(next, settings, which);
  next = read(text, settings);
  expect(refusals(next)).toEqual([]);
  expect(next.readings.count).toBeGreaterThanOrEqual(N);
});

test('a layout given before stands in what is proposed next, and so do the questions of other files', () => {
  const text = sheet(new Set(['kinds', 'clocks']));
  const layout = { clock: '24-hour' } as const;
  const [a, b] = readInputs(
    [
      { name: 'a.csv', bytes: new TextEncoder().encode(text) },
      { name: 'b.csv', bytes: new TextEncoder().encode(sheet(new Set(['kinds'])).replaceAll('Fnord', 'Grmbl')) },
    ],
    { today: TODAY, layout },
  );
  const proposed = [a, b].map((file) =>
    file!.issues.flatMap((issue) =>
      'question' in issue && issue.question?.of === 'layout' ? issue.question.answer : [],
    ),
  );
  expect(proposed.flat().length).toBeGreaterThan(1);
  for (const answer of proposed.flat())
    expect(JSON.parse(answer ?? '')).toMatchObject({ ...layout, kinds: { Fnord: '…', Grmbl: '…' } });
});

test('what a person has to look at is no part of another answer', () => {
  const rough = table('Time,Glucose (mg/dL)', 200, (i) => String(100 + ((i * 7919) % 211)));
  const [a, b] = readInputs(
    [rough, sheet(new Set(['kinds']))].map((text, i) => ({ name: `${i}.csv`, bytes: new TextEncoder().encode(text) })),
    { today: TODAY },
  );
  const answersOf = (file: ReadFile): unknown[] =>
    file.issues.flatMap((issue) =>
      'question' in issue && issue.question?.of === 'layout' ? JSON.parse(issue.question.answer ?? '{}') : [],
    );
  expect(answersOf(a!)).toEqual([expect.objectContaining({ series: 'confirmed' })]);
  expect(answersOf(b!)).toEqual([{ kinds: { Blap: 'sensor', Fnord: '…' } }]);
});

test('what stands in every table of a file is asked once, with the rows of all', () => {
  const tables = sheet(new Set(['kinds', 'clocks', 'unit']));
  const [once, twice] = [read(tables), read(`${tables}\n${tables.replaceAll('Fnord', 'Grmbl')}`)];
  expect(refusals(twice)).toEqual(refusals(once));
  const groups = (file: ReadFile) =>
    file.issues
      .flatMap((issue) => (issue.code === 'kinds-unknown' ? issue.actual : []))
      .map(({ word, rows }) => [word, rows]);
  const [[, rows] = [], [, few] = []] = groups(once);
  expect(groups(twice)).toEqual([
    ['Blap', Number(rows) * 2],
    ['Fnord', few],
    ['Grmbl', few],
  ]);
});

test('more words than one question shows are asked in one, each with its rows', () => {
  const words = Array.from({ length: 15 }, (_, w) => `W${w}`);
  const text = `Time,Type,Value\n${Array.from({ length: N }, (_, i) => `${stamp(i)},Blap,${sugar(i)}\n${i % 9 === 4 ? `${stamp(i)},${words[((i / 9) % 15) | 0]},4\n` : ''}`).join('')}`;
  const file = read(text);
  expect(refusals(file)).toEqual(['kinds-unknown']);
  const [issue] = file.issues.flatMap((one) => (one.code === 'kinds-unknown' ? [one] : []));
  expect(issue!.actual.map(({ word }) => word).sort()).toEqual(['Blap', ...words].sort());
  expect(issue!.actual.reduce((sum, { rows }) => sum + rows, 0)).toBe(N + 64);
  expect(Object.keys(JSON.parse(issue!.question.answer!).kinds).sort()).toEqual(['Blap', ...words].sort());
});
