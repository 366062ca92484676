import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MGDL_PER_MMOL, mgPerDl, toMgPerDl } from '../src/units.ts';
import { PRINTED_PAIRS } from './support/printedPairs.ts';

describe('units', () => {
  it('uses a tenth of the molar mass of glucose', () => {
    // Standard atomic weights, abridged (IUPAC): C 12.011, H 1.008, O 15.999.
    expect(MGDL_PER_MMOL).toBeCloseTo((6 * 12.011 + 12 * 1.008 + 6 * 15.999) / 10, 9);
  });

  it.each(PRINTED_PAIRS)(
    'takes %d mg/dL and %f mmol/L for one limit, as far as the smaller number tells',
    (mgdl, mmol) => {
      expect((mgdl / MGDL_PER_MMOL).toFixed(1)).toBe(mmol.toFixed(1));
      expect(Math.abs(toMgPerDl(mmol, 'mmol/L') - mgdl)).toBeLessThanOrEqual(0.05 * MGDL_PER_MMOL);
    },
  );

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %d', (value) => {
    expect(() => mgPerDl(value)).toThrow(RangeError);
    expect(() => toMgPerDl(value, 'mmol/L')).toThrow(RangeError);
  });

  it('leaves mg/dL as they are, and multiplies mmol/L', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1000, noNaN: true }), (value) => {
        expect(toMgPerDl(value, 'mg/dL')).toBe(value);
        expect(Math.abs(toMgPerDl(value, 'mmol/L') / MGDL_PER_MMOL - value)).toBeLessThanOrEqual(1e-12 * value);
      }),
    );
  });
});
