import fc from 'fast-check';
import { expect, test } from 'vitest';
import { incrementalArea } from '../../src/stats/area.ts';

/**
 * The worked example of the incremental area (Wolever's rule; Brouns 2005, Nutr Res Rev 18:145-171), glucose in mmol/L:
 * 7.5 + 26.25 + 33.75 + 22.5 + 10 + 0 = 100.0 mmol/L min, area above the lowest value 147.0.
 */
const EXAMPLE = { minutes: [0, 15, 30, 45, 60, 90, 120], values: [5.0, 6.0, 7.5, 7.0, 6.0, 4.5, 4.8] };

test('incremental and above-minimum area of the worked example', () => {
  expect(incrementalArea(EXAMPLE, 5)).toBeCloseTo(100, 10);
  expect(incrementalArea(EXAMPLE, Math.min(...EXAMPLE.values))).toBeCloseTo(147, 10);
});

/** Readings as printed on a public page that doubles the halving of inner trapezoids and so prints 1980; by the definition 3232.5. */
test('by the definition, not by a page that halves twice', () => {
  const curve = { minutes: [0, 30, 45, 60, 120, 180], values: [89, 133, 138, 125, 92, 88] };
  expect(incrementalArea(curve, 89)).toBeCloseTo(3232.5, 1);
});

/** Trapezoids, with what lies below the baseline taken off. */
const netArea = ({ minutes, values }: { minutes: number[]; values: number[] }, baseline: number): number =>
  minutes.slice(1).reduce((sum, at, i) => sum + ((values[i]! + values[i + 1]!) / 2 - baseline) * (at - minutes[i]!), 0);

test('the incremental area is never below the net one, nor below 0', () => {
  const values = fc.array(fc.double({ min: 40, max: 400, noNaN: true }), { minLength: 2, maxLength: 30 });
  fc.assert(
    fc.property(values, fc.double({ min: 40, max: 400, noNaN: true }), (curve, baseline) => {
      const given = { minutes: curve.map((_, i) => i * 5), values: curve };
      const area = incrementalArea(given, baseline);
      expect(area).toBeGreaterThanOrEqual(0);
      expect(area).toBeGreaterThanOrEqual(netArea(given, baseline) - 1e-6);
    }),
  );
});
