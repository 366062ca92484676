import { describe, expect, it, test } from 'vitest';
import { lines, numbers, read, refusals, stamp, sugar, table } from './tables.ts';

const N = 120;
const ALL = Array.from({ length: N }, (_, i) => sugar(i));

describe('numbers without a unit among numbers with one', () => {
  const among = (odd: string): string => table('Time,Glucose', N, (i) => (i === 50 ? odd : `${sugar(i)} mg/dL`));
  it('are in the same where they cannot be in the other', () => {
    expect([refusals(read(among('151'))), numbers(read(among('151')))[50]]).toEqual([[], 151]);
  });
  test.each(['20', '33', '"1,200"'])(
    'are set aside with their line where they can be in either, or in none: %s',
    (odd) => {
      const file = read(among(odd));
      expect([refusals(file), file.readings.count, file.fates[51]]).toEqual([[], N - 1, 'set-aside']);
      expect(file.issues.find(({ origin }) => origin?.line === 52)?.level).toBe('warning');
    },
  );
  it('are asked about where they are many', () => {
    const file = read(table('Time,Glucose', N, (i) => (i % 3 === 0 ? String(20 + (i % 9)) : `${sugar(i)} mg/dL`)));
    expect(refusals(file)).not.toEqual([]);
  });
});

describe('numbers with decimals and no unit anywhere', () => {
  it('are in mg/dL where all lie above what mmol/L reaches', () => {
    for (const form of [(v: number) => v.toFixed(3), (v: number) => v.toExponential().replace('e+', 'E+0')]) {
      const file = read(table('Time,Glucose', N, (i) => form(sugar(i))));
      expect([refusals(file), numbers(file), file.readings.unit[0]]).toEqual([[], ALL, 0]);
    }
  });
  it('are asked about where one can be in either', () => {
    const file = read(table('Time,Glucose', N, (i) => (i === 9 ? '21.5' : sugar(i).toFixed(1))));
    expect(refusals(file)).toEqual(['unit-unclear']);
  });
});

test('a meter’s values turn their unit where the sensor’s in the same column do', () => {
  const cell = (mgdl: number, i: number): string => (i < N / 2 ? String(mgdl) : (mgdl / 18).toFixed(1));
  const stick = (i: number): string => (i % 20 === 7 ? `\n${stamp(i)},Finger stick,${cell(180, i)}` : '');
  const text = `Time,Type,Value\n${lines(N, (i) => `${stamp(i)},Sensor glucose,${cell(sugar(i), i)}${stick(i)}`)}\n`;
  expect(refusals(read(text))).toEqual(['unit-changes']);
  const file = read(text, { layout: { units: 'by-size' } });
  expect(file.notes.map(({ amount, unit }) => `${amount} ${unit}`)).toEqual([
    ...Array(3).fill('180 mg/dL'),
    ...Array(3).fill('10 mmol/L'),
  ]);
  expect([file.readings.count, file.readings.unit[0], file.readings.unit.at(-1)]).toEqual([N, 0, 1]);
});

describe('a whole time where a dose should stand', () => {
  test.each(['2026-01-16 12:16', '16.01.2026 12:16'])('is none: %s', (moment) => {
    const text = `${table('Time,Glucose (mg/dL),Insulin (IU)', N, (i) => `${sugar(i)},${i === 9 ? '4' : ''}`)}2026-01-15 01:00,,${moment}\n`;
    const file = read(text);
    expect(file.notes.map(({ kind, amount }) => [kind, amount])).toEqual([['insulin', 4]]);
    expect(file.issues.find(({ code }) => code === 'value-turned-date')?.origin?.line).toBe(N + 2);
  });
  const doses = (shown: string[]) =>
    read(
      table(
        'Time,Glucose (mg/dL),Insulin (IU)',
        N,
        (i) => `${sugar(i)},${i < 40 && i % 10 === 9 ? shown[(i - 9) / 10] : ''}`,
      ),
    );
  it('is a number where it is a day before 1900', () => {
    const file = doses(['1899-12-31 16:48:00', '1899-12-30 12:00:00', '1899-12-31', '4']);
    expect(file.notes.map(({ amount }) => amount)).toEqual([1.7, 0.5, 1, 4]);
  });
  it('is told where it is a day of 1900, which programs count differently', () => {
    const file = doses(['1900-01-01 16:48:00', '1900-01-04', '4', '1900-02-11 00:00']);
    expect(file.notes.map(({ amount }) => amount)).toEqual([4]);
    expect(file.issues.filter(({ code }) => code === 'value-turned-date')).toHaveLength(3);
  });
});

describe('a unit that every row names', () => {
  const mmol = (i: number): string => (sugar(i) / 18).toFixed(1);
  test.each([
    ['beside the number', 'Time,Glucose', (value: string, unit: string) => `${value} ${unit}`],
    ['in a column of its own', 'Time,Glucose,Unit', (value: string, unit: string) => `${value},${unit}`],
  ])('%s is asked about where the numbers cannot be in it, and read by the answer', (_, head, row) => {
    for (const [unit, own, value] of [
      ['mmol/L', 'mg/dL', (i: number) => String(sugar(i))],
      ['mg/dL', 'mmol/L', mmol],
    ] as const) {
      const text = table(head, N, (i) => row(value(i), unit));
      expect(refusals(read(text))).toEqual(['unit-contradicts-values']);
      const answered = read(text, { layout: { unit: own } });
      expect([refusals(answered), numbers(answered)]).toEqual([
        [],
        Array.from({ length: N }, (__, i) => Number(value(i))),
      ]);
    }
  });
});

describe('a column of glucose whose first cells are no numbers', () => {
  it.each(['---', 'n/a', 'LOW mg/dL', 'HIGH', 'sensor warming up'])('is read all the same: %s', (first) => {
    const file = read(table('Time,Glucose', N, (i) => (i < 9 ? first : `${sugar(i)} mg/dL`)));
    expect([refusals(file), numbers(file).slice(-(N - 9))]).toEqual([[], ALL.slice(9)]);
  });
  it('is none where its cells are words', () => {
    const file = read(
      table('Time,Glucose,Sensor glucose (mg/dL)', N, (i) => `${['low', 'normal', 'fine'][i % 3]},${sugar(i)}`),
    );
    expect([refusals(file), numbers(file), file.columns?.[1]?.role]).toEqual([[], ALL, 'ignore']);
  });
});
