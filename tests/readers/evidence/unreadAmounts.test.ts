import { describe, expect, it, test } from 'vitest';
import { read, stamp, sugar, table } from './tables.ts';

const N = 400;
const now = (i: number, cell: string): string => (i % 90 === 8 ? cell : '');
const warned = (file: ReturnType<typeof read>) =>
  file.issues.flatMap((issue) => (issue.code === 'amounts-unread' ? [issue.actual] : []));
const roleOf = (file: ReturnType<typeof read>, name: string) => file.columns?.find((one) => one.name === name);
const noted = ({ notes }: ReturnType<typeof read>): string[] => [
  ...new Set(notes.map(({ kind, amount, unit, label }) => [kind, amount, unit, label].filter(Boolean).join(' '))),
];

// What people call these columns is common practice, no source.
describe('numbers that may be amounts are read, or told with the line that settles them', () => {
  test.each(['Lunch', 'nach Frühstück', 'Meal', 'Comida', 'Ateria', 'Repas', 'Dinner 2'])(
    'a number under %s is no food',
    (name) => {
      const file = read(table(`Time,Glucose (mg/dL),${name}`, N, (i) => `${sugar(i)},${now(i, '45')}`));
      expect([file.notes, file.readings.count]).toEqual([[], N]);
      expect(warned(file)).toEqual([name]);
      const settled = (role: string) =>
        noted(
          read(
            table(`Time,Glucose (mg/dL),${name}`, N, (i) => `${sugar(i)},${now(i, '45')}`),
            { layout: { meanings: { [name]: role } } },
          ),
        );
      expect(settled('carbohydrate')).toEqual(['meal 45']);
      expect(settled('insulin')).toEqual(['insulin 45']);
    },
  );
  it('where the numbers stand so seldom that no sample of rows meets them, too', () => {
    const cell = (i: number): string => (i === 1003 || i === 2999 ? '38' : '');
    const file = read(table('Time,Glucose (mg/dL),Supper,Meal', 4000, (i) => `${sugar(i)},,${cell(i)}`));
    expect([file.notes, warned(file)]).toEqual([[], ['Meal']]);
  });
  it('words under it stay food, numbers among them too', () => {
    const file = read(
      table('Time,Glucose (mg/dL),Lunch', N, (i) => `${sugar(i)},${now(i, i % 180 === 8 ? 'rice' : '2')}`),
    );
    expect(noted(file)).toEqual(['meal rice', 'meal 2']);
    expect(warned(file)).toEqual([]);
  });
  test.each(['Måltidsdos (E)', 'Mealtime dose (units)', 'Ateriainsuliini (ky)', 'Repas (UI)', 'Mahlzeitendosis (IE)'])(
    '%s, counted in units of insulin, is insulin and no food',
    (name) => {
      const file = read(
        table(`Time,Glucose (mg/dL),${name},Food`, N, (i) => `${sugar(i)},${now(i, '5')},${now(i, 'bread')}`),
      );
      expect(file.notes.map(({ kind, amount, unit }) => [kind, amount, unit]).slice(0, 2)).toEqual([
        ['meal', undefined, undefined],
        ['insulin', 5, 'IU'],
      ]);
    },
  );
  test.each(['HH (g)', 'HC (g)', 'hc', 'KH', 'CHO'])('%s is short for carbohydrate', (name) => {
    const file = read(table(`Time,Glucose (mg/dL),${name}`, N, (i) => `${sugar(i)},${now(i, '35')}`));
    expect(roleOf(file, name)?.role).toBe('carbohydrate');
  });
  test.each(['Qx (g)', 'Qx (U)', 'Qx'])('%s, filled now and then, is told', (name) => {
    const file = read(table(`Time,Glucose (mg/dL),${name}`, N, (i) => `${sugar(i)},${now(i, '35')}`));
    expect(roleOf(file, name)?.why).not.toBe('constant');
    expect([...warned(file), ...file.notes.map(({ kind }) => kind)].length).toBeGreaterThan(0);
  });
  test.each(['Weight (kg)', 'Peso', 'Qx (mmHg)', 'Qx (kg)', 'Model'])('%s is no amount of anything', (name) => {
    const file = read(table(`Time,Glucose (mg/dL),${name}`, N, (i) => `${sugar(i)},${now(i, '72.5')}`));
    expect(warned(file)).toEqual([]);
  });
  it('nor is what a formula fills into each row', () => {
    const file = read(table('Time,Glucose (mg/dL),Qx', N, (i) => `${sugar(i)},${(i * 7) % 31}`));
    expect(warned(file)).toEqual([]);
  });
  it('in a log without readings each row may hold an amount', () => {
    const rows = Array.from(
      { length: 20 },
      (_, d) => `${stamp(d * 288).slice(0, 10)},${20 + ((d * 7) % 31)},${d === 4 ? 'cold' : ''}`,
    );
    expect(warned(read(`Date,Qx,Remark\n${rows.join('\n')}\n`))).toEqual(['Qx']);
  });
});

describe('of several columns of one meaning none is lost', () => {
  it('each meal of a row keeps its words', () => {
    const file = read(
      table(
        'Time,Glucose (mg/dL),Breakfast,Lunch,Dinner',
        N,
        (i) => `${sugar(i)},${now(i, 'porridge')},${now(i, 'soup')},${now(i, 'rice')}`,
      ),
    );
    expect(noted(file)).toEqual(['meal porridge, soup, rice']);
  });
  it('a second amount of carbohydrate is kept as words, as it may be a part of the first', () => {
    const file = read(
      table('Time,Glucose (mg/dL),Carbs (g),Net carbs (g)', N, (i) => `${sugar(i)},${now(i, '50')},${now(i, '42')}`),
    );
    expect(file.notes.map(({ amount, text }) => [amount, text])[0]).toEqual([50, 'Net carbs (g) 42']);
  });
  it('so does each exercise and each medicine', () => {
    const file = read(
      table(
        'Time,Glucose (mg/dL),Exercise,Sport,Tablets,Medication',
        N,
        (i) => `${sugar(i)},${now(i, 'walk')},${now(i, 'swim')},${now(i, 'A')},${now(i, 'B')}`,
      ),
    );
    expect(noted(file).sort()).toEqual(['exercise swim', 'exercise walk', 'medication A', 'medication B']);
  });
});
