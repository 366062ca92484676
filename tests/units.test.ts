import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GlucoseUnit } from '../src/model/glucose.ts';
import { fromMgPerDl, MGDL_PER_MMOL, mgPerDl, publishedPartner, toMgPerDl } from '../src/units.ts';

// Pairs as printed in Battelino 2019 (Diabetes Care 42:1593-1603) and the tables of the ADA Standards of Care.
const PRINTED: [number, number][] = [
  [54, 3.0],
  [63, 3.5],
  [69, 3.8],
  [70, 3.9],
  [80, 4.4],
  [90, 5.0],
  [95, 5.3],
  [100, 5.6],
  [110, 6.1],
  [120, 6.7],
  [126, 7.0],
  [130, 7.2],
  [140, 7.8],
  [150, 8.3],
  [180, 10.0],
  [200, 11.1],
  [250, 13.9],
  [350, 19.4],
];

describe('units', () => {
  it('uses a tenth of the molar mass of glucose', () => {
    // Standard atomic weights, abridged (IUPAC): C 12.011, H 1.008, O 15.999.
    expect(MGDL_PER_MMOL).toBeCloseTo((6 * 12.011 + 12 * 1.008 + 6 * 15.999) / 10, 9);
  });

  it.each(PRINTED)('prints %d mg/dL as %f mmol/L', (mgdl, mmol) => {
    expect(fromMgPerDl(mgPerDl(mgdl), 'mmol/L').toFixed(1)).toBe(mmol.toFixed(1));
    expect(publishedPartner(mgdl, 'mg/dL')).toBe(mmol);
    expect(publishedPartner(mmol, 'mmol/L')).toBe(mgdl);
  });

  it('knows 181 by its printed partner, which the factor does not give', () => {
    // Battelino 2019 prints 181-250 mg/dL (10.1-13.9 mmol/L); 181 / 18.0156 rounds to 10.0.
    expect(publishedPartner(181, 'mg/dL')).toBe(10.1);
    expect(fromMgPerDl(mgPerDl(181), 'mmol/L').toFixed(1)).toBe('10.0');
  });

  it('has no partner for a number nobody printed', () => {
    expect(publishedPartner(71, 'mg/dL')).toBeUndefined();
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %d', (value) => {
    expect(() => mgPerDl(value)).toThrow(RangeError);
    expect(() => toMgPerDl(value, 'mmol/L')).toThrow(RangeError);
  });

  it('comes back from either unit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1000, noNaN: true }),
        fc.constantFrom<GlucoseUnit>('mg/dL', 'mmol/L'),
        (value, unit) => {
          const back = fromMgPerDl(toMgPerDl(value, unit), unit);
          expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * value);
        },
      ),
    );
  });
});
