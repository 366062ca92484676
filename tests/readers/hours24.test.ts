import { describe, expect, it, test } from 'vitest';
import { lines, read, refusals, stamp, sugar, times } from './evidence/tables.ts';

/** Three days of quarters of an hour. */
const N = 288;
const ALL = Array.from({ length: N }, (_, i) => stamp(i, 15));
const DAY = 86_400_000;
const before = (text: string): string =>
  `${new Date(Date.parse(`${text.slice(0, 10)}T00:00:00Z`) - DAY).toISOString().slice(0, 10)}${text.slice(10)}`;
/** The first hour of a day as 24:05, with the date that begins there or the one that ends. */
const begins = (text: string): string => text.replace(' 00:', ' 24:');
const ends = (text: string): string => (text.includes(' 00:') ? begins(before(text)) : text);

describe('hours counted from 1 to 24', () => {
  test.each([
    ['with the date that begins', begins],
    ['with the date that ends', ends],
  ])('%s, in one column or two', (_, written) => {
    for (const mark of [' ', ','])
      for (const order of [ALL, [...ALL].reverse()]) {
        const head = mark === ' ' ? 'Time' : 'Date,Time';
        const file = read(
          `${head},Glucose (mg/dL)\n${order.map((text, i) => `${written(text).replace(' ', mark)},${sugar(i)}`).join('\n')}\n`,
        );
        expect([refusals(file), times(file)]).toEqual([[], order]);
        expect(file.issues.map(({ code }) => code)).toContain('hours-to-24');
      }
  });
  it('of both ways in one file are refused', () => {
    const mixed = lines(N, (i) => `${(i < 100 ? begins : ends)(ALL[i]!)},${sugar(i)}`);
    expect(refusals(read(`Time,Glucose (mg/dL)\n${mixed}\n`))).toEqual(['hours-to-24-unclear']);
  });
});
