import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inShard, parseShard, shardOf } from '../../src/clinic/shards.ts';

test('all parts together are the whole, and no two parts share anyone', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.string()), fc.integer({ min: 1, max: 20 }), (codes, of) => {
      const parts = Array.from({ length: of }, (_, i) => codes.filter((code) => inShard(code, { index: i + 1, of })));
      expect(parts.flat().sort()).toEqual([...codes].sort());
    }),
  );
});

/** The first four bytes of SHA-256 (FIPS 180-4) of the code decide. That of nothing begins e3b0c442. */
test('the part of a code is the same everywhere', () => {
  expect(shardOf('', 1000)).toBe((0xe3b0c442 % 1000) + 1);
  // SHA-256 of "abc" begins ba7816bf (FIPS 180-4, appendix).
  expect(shardOf('abc', 7)).toBe((0xba7816bf % 7) + 1);
});

test('people are spread evenly', () => {
  const sizes = new Map<number, number>();
  for (let i = 0; i < 4000; i++) sizes.set(shardOf(`P-${i}`, 8), (sizes.get(shardOf(`P-${i}`, 8)) ?? 0) + 1);
  for (const size of sizes.values()) expect(Math.abs(size - 500)).toBeLessThan(100);
});

test.each([
  ['1/1', { index: 1, of: 1 }],
  ['3/8', { index: 3, of: 8 }],
  ['0/8', undefined],
  ['9/8', undefined],
  ['1/0', undefined],
  ['1', undefined],
  ['1/8/2', undefined],
  [' 1/8', undefined],
])('%s', (text, expected) => {
  expect(parseShard(text)).toEqual(expected);
});
