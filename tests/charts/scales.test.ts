import { scaleLinear, scaleLog } from 'd3-scale';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bentLog, straight } from '../../src/charts/scales.ts';

// Checked against d3-scale, a general library of scales.

const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });

test('a straight scale is that of d3-scale to the last bit', () => {
  fc.assert(
    fc.property(
      number,
      fc.double({ min: 0.01, max: 1e4, noNaN: true }),
      number,
      number,
      number,
      (from, by, start, end, value) => {
        const [domain, range] = [
          [from, from + by],
          [start, end],
        ] as [[number, number], [number, number]];
        expect(straight(domain, range)(value)).toBe(scaleLinear().domain(domain).range(range)(value));
      },
    ),
  );
});

test('a bent logarithmic scale is that of d3-scale to the last bit, also on its ends, at its bend and beyond', () => {
  const domain: [number, number, number] = [40, 180, 400];
  fc.assert(
    fc.property(number, fc.double({ min: 1, max: 900, noNaN: true }), (top, height) => {
      const range: [number, number, number] = [top + height, top + height * 0.3, top];
      const [ours, theirs] = [bentLog(domain, range), scaleLog().domain(domain).range(range).clamp(true)];
      for (const value of [...domain, -5, 0, 39.9, 62, 179.999, 180.001, 251.3, 400.1, 1e6])
        expect(ours(value)).toBe(theirs(value));
    }),
  );
});
