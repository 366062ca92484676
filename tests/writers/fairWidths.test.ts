import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fairWidths } from '../../src/writers/pdf/fairWidths.ts';
import { openSheets, pageOf, write } from './paper.ts';

test.each<[wished: number[], needs: number[], expected: number[]]>([
  [
    [50, 50],
    [10, 10],
    [50, 50],
  ],
  [
    [50, 50],
    [60, 10],
    [60, 40],
  ],
  [
    [40, 30, 30],
    [50, 10, 20],
    [50, 30 - 20 / 3, 30 - 10 / 3],
  ],
  [
    [50, 50],
    [80, 60],
    [50, 50],
  ],
  [
    [50, 50],
    [90, 40],
    [60, 40],
  ],
])('%j with needs of %j becomes %j', (wished, needs, expected) => {
  fairWidths(wished, needs).forEach((width, i) => {
    expect(width).toBeCloseTo(expected[i]!, 9);
  });
});

test('widths keep their sum, nobody gives what they need, and nobody gets more than they lack', () => {
  const width = fc.integer({ min: 0, max: 200 });
  fc.assert(
    fc.property(fc.array(fc.tuple(width, width), { minLength: 1, maxLength: 8 }), (pairs) => {
      const [wished, needs] = [pairs.map(([wish]) => wish), pairs.map(([, need]) => need)];
      const widths = fairWidths(wished, needs);
      const sum = (list: number[]): number => list.reduce((total, value) => total + value, 0);
      expect(sum(widths)).toBeCloseTo(sum(wished), 6);
      widths.forEach((it, i) => {
        const bounds = [wished[i]!, needs[i]!].sort((a, b) => a - b) as [number, number];
        expect(it).toBeGreaterThanOrEqual(bounds[0] - 1e-9);
        expect(it).toBeLessThanOrEqual(bounds[1] + 1e-9);
      });
    }),
  );
});

test('a number in a column too narrow for it keeps its unit', async () => {
  const columns = [0.86, 0.07, 0.07].map((width) => ({ title: 'x', align: 'end' as const, width }));
  const rows = [['a', '16\u00a0h\u00a029\u00a0min', '<\u00a00.1\u00a0%'].map((text) => ({ text }))];
  const { sheets } = await openSheets(
    await write(pageOf([{ kind: 'table', caption: 'c', captionShown: false, columns, rows }])),
  );
  const text = sheets[0]!.pieces.map((piece) => piece.text.replaceAll('\u00a0', ' '));
  expect(text).toEqual(expect.arrayContaining(['16 h 29 min', '< 0.1 %']));
});
