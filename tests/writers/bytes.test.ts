import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Bytes, hundredths } from '../../src/writers/pdf/bytes.ts';

const written = (bytes: Bytes): string => Buffer.from(bytes.done()).toString('latin1');

test('whole numbers and texts come out as they went in, however long', () => {
  const whole = fc.oneof(fc.integer(), fc.constantFrom(0, -1, 9, 10, 99999, 1e9, -(2 ** 31)), fc.maxSafeInteger());
  fc.assert(
    fc.property(fc.array(fc.oneof(whole, fc.string({ maxLength: 90 }))), (parts) => {
      const bytes = new Bytes();
      for (const part of parts) typeof part === 'number' ? bytes.whole(part) : bytes.text(part);
      expect(written(bytes)).toBe(parts.map((part) => (typeof part === 'number' ? `${part} ` : part)).join(''));
    }),
  );
  const long = new Bytes();
  for (let i = 0; i < 20_000; i++) long.whole(i);
  expect(written(long)).toBe(Array.from({ length: 20_000 }, (_, i) => `${i} `).join(''));
});

test.each([
  [1.234, 123],
  [1.005, 100],
  [-0.004, 0],
])('%d pt is %d hundredths', (points, whole) => {
  expect(hundredths(points) + 0).toBe(whole);
});

test.each([Number.NaN, Number.POSITIVE_INFINITY])('%d is refused', (value) => {
  expect(() => hundredths(value)).toThrow(RangeError);
});
