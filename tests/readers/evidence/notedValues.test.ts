import { describe, expect, test } from 'vitest';
import { lines, numbers, read, refusals, stamp, sugar, table } from './tables.ts';

const N = 300;
const ALL = Array.from({ length: N }, (_, i) => sugar(i));

/** `times` rows of an amount among readings, the word for it in a column of remarks. */
const among = (head: string, word: string, amount: number, times: number): string =>
  `${head}\n${lines(
    N,
    (i) =>
      `${stamp(i)},${sugar(i)},${i % 40 === 7 && i < times * 40 ? `\n${stamp(i).replace(/.$/, '2')},${amount},${word}` : ''}`,
  )}\n`;

describe('an amount in the column of readings, told only by a remark', () => {
  const words: [string, number][] = [
    ['carbs', 45],
    ['Carbs (g)', 60],
    ['Mittagessen', 35],
    ['insulina rápida', 12],
    ['exercise', 30],
    ['приём пищи', 50],
    ['metformin tablets', 500],
  ];
  test.each(words)('%s, %i: never a reading, and told with its line', (word, amount) => {
    for (const head of ['Time,Glucose (mg/dL),Note', 'Time,Value,Comment', 'Time,Sensor glucose (mg/dL),Details'])
      for (const times of [1, 2, 7]) {
        const file = read(among(head, word, amount, times));
        expect([refusals(file), numbers(file)]).toEqual([[], ALL]);
        expect(file.issues.filter(({ code }) => code === 'value-of-note')).toHaveLength(times);
        expect(file.notes.filter(({ kind, text }) => kind === 'text' && text === word)).toHaveLength(times);
      }
  });

  test.each(['carbs', 'insulin', 'ran 5 km; felt odd after that', 'a hard day', ''])(
    'a remark beside a reading leaves it a reading: %s',
    (word) => {
      const text = table('Time,Glucose (mg/dL),Note', N, (i) => `${sugar(i)},${i % 40 === 7 ? word : ''}`);
      expect(numbers(read(text))).toEqual(ALL);
    },
  );

  test('a low beside food stays where readings around it lead to it', () => {
    const dip = (i: number): number => Math.max(45, sugar(i) - Math.max(0, 100 - Math.abs(i - 150) * 12));
    const text = table('Time,Glucose (mg/dL),Note', N, (i) => `${dip(i)},${i === 150 ? 'carbs' : ''}`);
    expect(numbers(read(text))).toEqual(Array.from({ length: N }, (_, i) => dip(i)));
  });
});
