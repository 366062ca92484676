import { describe, expect, it, test } from 'vitest';
import { parseLayout } from '../../src/schemas/layout.ts';
import { rows, tell } from './digest.ts';

describe('a layout file', () => {
  test.each<[string, unknown, string[] | undefined]>([
    ['nothing', {}, undefined],
    ['columns', { delimiter: ';', columns: { Zeit: 'time', '#2': { role: 'sensor', unit: 'mmol/L' } } }, undefined],
    ['an unknown key', { delimeter: ';' }, ['delimeter']],
    ['an unknown role', { columns: { Zeit: 'tme' } }, ['columns.Zeit: "tme"']],
    ['an unknown delimiter', { delimiter: ':' }, ['delimiter: ":" ("," | ";" | "\\t" | "|")']],
    ['no object', 'x', ['layout: "x"']],
  ])('with %s', (_, json, problems) => {
    const parsed = parseLayout(json);
    expect(parsed.ok ? undefined : parsed.problems).toEqual(problems);
  });

  const text = 'a;b;c\n14.01.2026 08:00;5,6;x\n14.01.2026 08:05;5,7;\n';
  it('overrides recognition', () => {
    const layout = {
      delimiter: ';',
      unit: 'mmol/L',
      dateOrder: 'day-first',
      columns: { a: 'time', b: 'sensor', c: 'note' },
    };
    const digest = tell(text, { layout });
    expect(digest.readings).toEqual(['2026-01-14 08:00 5.6 mmol/L', '2026-01-14 08:05 5.7 mmol/L']);
    expect(digest.notes).toEqual(['2026-01-14 08:00 text "x"']);
    expect(digest.choices).toMatchObject({
      unit: 'user: mmol/L',
      'date-order': 'user: day-first',
      layout: 'user: columns',
    });
  });

  it('names columns by place where there are no names', () => {
    const digest = tell('102;;2026-01-14 08:00\n', {
      layout: { delimiter: ';', headerLine: 0, columns: { '#3': 'time', '#1': 'sensor' }, unit: 'mg/dL' },
    });
    expect(digest.readings).toEqual(['2026-01-14 08:00 102 mg/dL']);
  });

  it('is left alone, and said so, where the file has other columns', () => {
    const digest = tell('Time,Glucose (mg/dL)\n2026-01-14 08:00,102\n', { layout: { columns: { nowhere: 'time' } } });
    expect(digest.issues).toContain('warning layout-does-not-fit');
    expect(digest.readings).toEqual(['2026-01-14 08:00 102 mg/dL']);
  });

  it('is refused when it cannot be understood', () => {
    expect(tell(text, { layout: { columns: 3 } }).issues).toContain('refusal layout-invalid');
  });
});

describe('the layout a reader reports', () => {
  const notes =
    'Time;Carbs (g);Food;Insulin (IU);Insulin kind\n14/01/2026 08:00;45;toast;6;rapid\n15/01/2026 08:00;;;7;rapid\n';
  test.each<[string, string]>([
    ['plain', `Time,Glucose (mg/dL)\n${rows(12, (i, t) => `${t.slice(0, 16)},${100 + i}`)}`],
    ['no unit, no names', rows(12, (i, t) => `${t.slice(0, 16)};${(4 + i * 0.3).toFixed(1).replace('.', ',')}`)],
    [
      'day first',
      `Zeit;Glukose (mmol/L)\n${rows(12, (i, t) => `${t.slice(8, 10)}.01.2026 ${t.slice(11, 16)};5,${i % 10}`)}`,
    ],
    [
      'preamble and units row',
      `Made by hand\n\nTime,Glucose,Note\n,mg/dL,\n${rows(12, (i, t) => `${t.slice(0, 16)},${100 + i},n${i}`)}`,
    ],
    ['notes', notes],
    ['two tables', `Time;Glucose (mg/dL)\n14/01/2026 08:00;102\n15/01/2026 08:00;103\n\n${notes}`],
    ['UTC in the header', `UTC time,Glucose (mg/dL)\n${rows(4, (i, t) => `${t.slice(0, 16)},${100 + i}`)}`],
    [
      'kinds',
      'Time;Kind;Amount;Unit\n2026-01-14 08:00;sensor;102;mg/dL\n2026-01-14 08:01;food;45;g\n2026-01-14 08:02;insulin;6;IU\n',
    ],
    ['same names twice', 'Time,Value,Value\n2026-01-14 08:00,102,\n2026-01-14 08:05,,103\n'],
    ['finger sticks far apart', `Time,Glucose (mg/dL)\n${rows(8, (i) => `2026-01-${10 + i} 08:00,${100 + i}`)}`],
  ])('gives the same entries again: %s', (_, text) => {
    const first = tell(text);
    expect(first.readings.length + first.notes.length).toBeGreaterThan(0);
    const layout = first.file.layout;
    expect(parseLayout(layout)).toMatchObject({ ok: true });
    const again = tell(text, { layout });
    expect(again.readings).toEqual(first.readings);
    expect(again.notes).toEqual(first.notes);
    expect(again.fates).toBe(first.fates);
  });
});
