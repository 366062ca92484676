import { describe, expect, test } from 'vitest';
import { parseLayout } from '../../src/schemas/layout.ts';

const FITS: [string, unknown][] = [
  ['nothing said', {}],
  [
    'one table',
    { encoding: 'utf-8', delimiter: '\t', headerLine: 0, firstLine: 1, serialDates: 1904, clock: '24-hour' },
  ],
  [
    'columns by name and place',
    { columns: { 'Time of day': 'time', '#2': { role: 'insulin', label: 'x', utc: true } } },
  ],
  ['several tables', { timezone: 'Europe/Madrid', tables: [{ unit: 'mmol/L' }, { dateOrder: 'day-first' }] }],
];

const FAULTS: [string, unknown, string[]][] = [
  ['no object', 3, ['layout: 3']],
  ['a list', [], ['layout: []']],
  ['an unknown name', { separator: ',' }, ['separator']],
  ['a name of every object', JSON.parse('{"__proto__":{},"constructor":1}'), ['__proto__', 'constructor']],
  [
    'a column with a name that objects keep for themselves',
    { columns: JSON.parse('{"__proto__":5}') },
    ['columns: {…}'],
  ],
  ['a word in the wrong case', { unit: 'MG/DL' }, ['unit: "MG/DL" ("mg/dL" | "mmol/L")']],
  ['half a line', { headerLine: 1.5, firstLine: 0 }, ['headerLine: 1.5', 'firstLine: 0']],
  [
    'a list without end',
    { unit: JSON.parse('['.repeat(100_000) + ']'.repeat(100_000)) },
    ['unit: […] ("mg/dL" | "mmol/L")'],
  ],
  ['a number as text', { serialDates: '1900' }, ['serialDates: "1900" (1900 | 1904)']],
  [
    'an unknown meaning',
    { columns: { A: 'glucosa', B: { role: 'time', zone: 'x' } } },
    ['columns.A: "glucosa"', 'columns.B.zone'],
  ],
  ['a column without its meaning', { columns: { A: { unit: 'g' } } }, ['columns.A.role']],
  ['no column at all', { columns: null, tables: [] }, ['columns: null', 'tables: []']],
  ['a fault in the second table', { tables: [{}, { tables: [] }] }, ['tables.1.tables']],
  [
    'a label without end',
    { columns: { A: { role: 'note', label: 'x'.repeat(81) } } },
    [`columns.A.label: "${'x'.repeat(59)}`],
  ],
];

describe('a layout', () => {
  test.each(FITS)('that fits: %s', (_, json) => {
    expect(parseLayout(json)).toEqual({ ok: true, layout: json });
  });

  test.each(FAULTS)('with a fault: %s', (_, json, problems) => {
    expect(parseLayout(json)).toEqual({ ok: false, problems });
  });
});

test('what was checked is not checked again', () => {
  const first = parseLayout({ unit: 'mmol/L' });
  expect(first).toEqual({ ok: true, layout: { unit: 'mmol/L' } });
  if (!first.ok) return;
  // Read again, it would be another object.
  expect(parseLayout(first.layout)).toEqual(first);
  expect((parseLayout(first.layout) as typeof first).layout).toBe(first.layout);
});
