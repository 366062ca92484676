import { expect, test } from 'vitest';
import { lines, numbers, read, refusals, stamp, sugar } from './tables.ts';

const N = 1200;
/** Eight kinds and more by number; every twentieth row is a dose, grams, minutes … in the column of values. */
const code = (i: number, kinds: number): string =>
  i % 20 === 19 ? String(12 + (((i - 19) / 20) % (kinds - 1))) : '11';
const value = (i: number): number => (i % 20 === 19 ? [4, 22, 30, 45][((i - 19) / 20) % 4]! : sugar(i));
const FOOTERS = [
  '',
  'Total rows,420',
  'Sum,9\nMean,143.5\nMedian,140.1',
  'Mean 14.01.,141.3\nMean 15.01.,139.8\nMean 16.01.,99',
];

test.each(FOOTERS)(
  'kinds told by number are asked about, however many and whatever stands below them: %j',
  (footer) => {
    for (const kinds of [2, 8, 14, 20])
      for (const name of ['Record type', 'Kind']) {
        const rows = lines(N, (i) => `${stamp(i)},${code(i, kinds)},${value(i)}`);
        const text = `Unit: mg/dL\nTime,${name},Value\n${rows}\n${footer}\n`;
        expect([kinds, name, [...new Set(refusals(read(text)))]]).toEqual([kinds, name, ['kinds-unknown']]);
        const others = Object.fromEntries(
          Array.from({ length: kinds - 1 }, (_, k) => [String(12 + k), 'note' as const]),
        );
        const answered = read(text, { layout: { kinds: { 11: 'sensor', ...others } } });
        expect(numbers(answered)).toEqual(
          Array.from({ length: N }, (_, i) => i)
            .filter((i) => i % 20 !== 19)
            .map(sugar),
        );
      }
  },
);
