import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstFrom } from '../../src/stats/sorted.ts';

test('the first that is large enough, as a search one by one finds it', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(20)), fc.nat(22), fc.nat(5), (numbers, least, beyond) => {
      const ascending = numbers.toSorted((a, b) => a - b);
      const found = ascending.findIndex((one) => one >= least);
      // What stands behind the count is not looked at.
      const padded = [...ascending, ...Array(beyond).fill(0)];
      expect(firstFrom(padded, ascending.length, least)).toBe(found < 0 ? ascending.length : found);
    }),
  );
});
