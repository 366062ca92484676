import { describe, expect, it, test } from 'vitest';
import { columnLines } from '../../../src/cli/columnLines.ts';
import { teller } from '../../../src/papers/teller.ts';
import words from '../../../templates/words/en.json' with { type: 'json' };
import { lines, numbers, read, refusals, stamp, sugar, table } from './tables.ts';

const N = 400;
const account = (text: string, name: string, settings = {}, file = 'a.csv') =>
  read(text, settings, file).columns?.find((column) => column.name === name);

describe('what a column holds is told of all its cells, not of a sample', () => {
  test.each([
    ['Ketone (mmol/L)', '0.4', { role: 'ignore', why: 'numbers', evidence: '0.4' }],
    ['W9', 'seen', { role: 'ignore', why: 'no-groups' }],
    ['Remark', 'party', { role: 'note', why: 'name', evidence: 'party' }],
    ['Carbs (g)', '45', { role: 'carbohydrate', why: 'name', evidence: '45' }],
  ])('one cell of %s', (name, cell, expected) => {
    for (const at of [77, 333])
      expect(
        account(
          table(`Time,Glucose (mg/dL),${name}`, N, (i) => `${sugar(i)},${i === at ? cell : ''}`),
          name,
        ),
      ).toMatchObject(expected);
  });
  it('none', () => {
    expect(
      account(
        table('Time,Glucose (mg/dL),Ketone (mmol/L)', N, (i) => `${sugar(i)},`),
        'Ketone (mmol/L)',
      ),
    ).toEqual({ name: 'Ketone (mmol/L)', role: 'ignore', why: 'empty' });
  });
});

it('tables with one header have one ledger, and a column without a name is told by its place', () => {
  const one = table('Time,Glucose (mg/dL),', 30, (i) => `${sugar(i)},`);
  const { columns } = read(`${one}${one.replaceAll('2026-01-14', '2026-01-15')}`);
  expect(columns!.filter(({ name }) => name === '#3')).toHaveLength(1);
});

it('a table of hours tells of the columns besides', () => {
  const hours = Array.from(
    { length: 96 },
    (_, k) => `${String(k >> 2).padStart(2, '0')}:${String((k % 4) * 15).padStart(2, '0')}`,
  );
  const day = (n: number): string =>
    `${13 + n}/01/2026;${hours.map((__, k) => sugar(k)).join(';')};14${n};${n === 1 ? 'ill' : ''}`;
  const file = read(`Glucose (mg/dL)\nDate;${hours.join(';')};Mean;Remark\n${[0, 1].map(day).join('\n')}\n`);
  expect(file.columns?.filter(({ role }) => role === 'ignore')).toEqual([
    { name: 'Mean', role: 'ignore', why: 'numbers', evidence: '140-141' },
    { name: 'Remark', role: 'ignore', why: 'words', evidence: 'ill' },
  ]);
});

describe('whose word a column is', () => {
  test.each(['User notes', 'Patient comments', 'Bemerkungen des Patienten', 'Notas del usuario'])(
    '%s are remarks, and name nobody',
    (name) => {
      const file = read(table(`Time,Glucose (mg/dL),${name}`, N, (i) => `${sugar(i)},${i === 60 ? 'party' : ''}`));
      expect([file.persons, file.notes.map(({ text }) => text)]).toEqual([[], ['party']]);
    },
  );
  it('a column of codes that a layout calls kinds is no column of persons', () => {
    const text = `Time,Code,Value\n${lines(N, (i) => `${stamp(i)},G1,${sugar(i)}${i % 60 === 7 ? `\n${stamp(i)},D4,6\n${stamp(i)},C2,45` : ''}`)}\n`;
    const file = read(text, { layout: { kinds: { G1: 'sensor', D4: 'insulin', C2: 'carbohydrate' } } });
    expect([refusals(file), file.persons, numbers(file)]).toEqual([
      [],
      [],
      Array.from({ length: N }, (_, i) => sugar(i)),
    ]);
  });
});

it('names stand right above what they name, below lines of a key and its value', () => {
  const readings = Array.from({ length: N }, (_, i) => ({ at: stamp(i), glucose: sugar(i) / 18 }));
  const file = read(JSON.stringify({ unit: 'mmol/L', source: 'W9', readings }), {}, 'a.json');
  expect([refusals(file), file.readings.count]).toEqual([[], N]);
  expect(file.choices.find(({ id }) => id === 'unit')?.evidence).toEqual({ is: 'line', line: 1 });
});

it('a hundred thousand columns are set out too', () => {
  const column = { name: 'x', role: 'ignore', why: 'empty' } as const;
  expect(columnLines(teller(words), Array(150_000).fill(column))).toHaveLength(150_000);
});
