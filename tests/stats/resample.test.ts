import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chance } from '../../src/stats/chance.ts';
import { quantile } from '../../src/stats/quantile.ts';
import { type Draws, drawDays, drawnEnds, drawnSums, expandedTail } from '../../src/stats/resample.ts';

/** The days of each draw, unpacked from their pairs. */
function unpacked({ days, count, pairs }: Draws): number[][] {
  const perDraw = Math.ceil(days / 2);
  return Array.from({ length: count }, (_, draw) =>
    Array.from(pairs.subarray(draw * perDraw, (draw + 1) * perDraw))
      .flatMap((pair) => [Math.floor(pair / (days + 1)), pair % (days + 1)])
      .filter((day) => day < days),
  );
}

describe('drawing whole days', () => {
  test.each([2, 7, 10, 13, 14, 365])('%i days a draw, each as likely as the other', (days) => {
    const draws = unpacked(drawDays(days, 2000, 1, 0.95));
    expect(draws.every((draw) => draw.length === days)).toBe(true);
    const tally = new Array<number>(days).fill(0);
    for (const day of draws.flat()) tally[day]!++;
    // Each count is binomial with mean 2000: five standard deviations.
    for (const count of tally) expect(Math.abs(count - 2000)).toBeLessThan(5 * Math.sqrt(2000));
  });

  test('the same seed draws the same days', () => {
    const first = Array.from(drawDays(14, 50, 3, 0.95).pairs);
    drawDays(13, 50, 3, 0.95);
    expect(Array.from(drawDays(14, 50, 3, 0.95).pairs)).toEqual(first);
    expect(Array.from(drawDays(14, 50, 4, 0.95).pairs)).not.toEqual(first);
  });

  test('sums over draws are sums over their days; ends are their type 7 quantiles', () => {
    const column = fc.array(fc.integer({ min: 0, max: 1440 }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(column, (perDay) => {
        const draws = drawDays(perDay.length, 200, 9, 0.95);
        const sums = drawnSums(draws, Float64Array.from(perDay));
        const plain = unpacked(draws).map((days) => days.reduce((sum, day) => sum + perDay[day]!, 0));
        expect(Array.from(sums)).toEqual(plain);
        const { low, high } = drawnEnds(draws, Float64Array.from(perDay), new Float64Array(200).fill(2));
        const sorted = Float64Array.from(plain, (sum) => sum / 2).sort();
        expect(low).toBeCloseTo(quantile(sorted, draws.tail), 9);
        expect(high).toBeCloseTo(quantile(sorted, 1 - draws.tail), 9);
      }),
      { numRuns: 40 },
    );
  });

  test('fewer days cut off less, many days the plain 2.5 %', () => {
    const tails = [10, 14, 28, 1000].map((days) => drawDays(days, 1, 1, 0.95).tail);
    expect(tails).toEqual(tails.toSorted((a, b) => a - b));
    expect(tails[0]).toBeLessThan(0.01);
    expect(tails[3]).toBeCloseTo(0.025, 3);
    // n = 10: Phi(-2.262 x sqrt(10/9)) = Phi(-2.3845), by the normal table 0.0086.
    expect(expandedTail(10, 2.262)).toBeCloseTo(0.0086, 4);
  });
});

describe('chance', () => {
  test('is spread evenly over 0 to 1', () => {
    const next = chance(42);
    const tenths = new Array<number>(10).fill(0);
    for (let i = 0; i < 10000; i++) tenths[Math.floor(next() * 10)]!++;
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(150);
  });
});
