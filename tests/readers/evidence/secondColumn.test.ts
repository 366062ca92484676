import { describe, expect, it, test } from 'vitest';
import { lines, numbers, read, refusals, stamp, sugar, table } from './tables.ts';

const N = 200;

describe('a second column called a sensor’s, filled here and there', () => {
  const among = (value: (i: number) => number, every: number): string =>
    `Time,Sensor glucose (mg/dL),Sensor glucose 2 (mg/dL)\n${lines(N, (i) => `${stamp(i)},${i % 50 === 3 ? '' : sugar(i)},${i % every === 7 ? `\n${stamp(i).replace(/.$/, '2')},,${value(i)}` : ''}`)}\n`;
  test.each([10, 60, 190])(
    'is asked about where its values leave the curve, or are too few to tell: every %ith row',
    (every) => {
      expect(refusals(read(among((i) => sugar(i) + (i % 2 ? 27 : -31), every)))).toEqual(['two-value-columns']);
    },
  );
  it('joins where it lies on the curve, as what was asked of a sensor beside what it stored', () => {
    const file = read(among((i) => Math.round((sugar(i) + sugar(i + 1)) / 2), 10));
    expect([refusals(file), file.readings.count]).toEqual([[], N - 4 + N / 10]);
  });
});

test('a comma in names and numbers parts no table that tabs part, so that notes below it are read', () => {
  const log = lines(N, (i) => `${stamp(i)}\t${(sugar(i) / 18).toFixed(1).replace('.', ',')}\t${sugar(i)}`);
  const notes = `Time\tInsulin (IU)\tCarbs (g)\n${stamp(5)}\t\t45\n${stamp(9)}\t4,5\t\n`;
  const file = read(`Time\tSensor glucose, mmol/L\tSensor glucose, mg/dL\n${log}\n\n${notes}`);
  expect(file.choices.find(({ id }) => id === 'delimiter')?.value).toBe('tab');
  expect([refusals(file), numbers(file).length]).toEqual([[], N]);
  expect(file.notes.map(({ kind, amount }) => [kind, amount])).toEqual([
    ['meal', 45],
    ['insulin', 4.5],
  ]);
});

test('a row whose glucose is a word is no header, though its time has words as well', () => {
  const day = (i: number): string => `"Wed, 14 Jan 2026 ${stamp(i).slice(11)}"`;
  const text = table('Time,Record type,Value,Unit', 0, () => '');
  const rows = lines(60, (i) => `${day(i)},Sensor glucose,${i % 9 === 4 ? 'low' : sugar(i)},mg/dL`);
  const file = read(`${text.trim()}\n${rows}\n`);
  expect([refusals(file), file.readings.count]).toEqual([[], 60]);
});
