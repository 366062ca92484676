import { describe, expect, test } from 'vitest';
import type { LocalDate } from '../../src/model/glucose.ts';
import { type Seen, tryOut } from '../../src/occasions/sides.ts';

const seen = (from: number, values: number[]): Seen[] =>
  values.map((value, i) => ({
    date: `2026-03-${from + i}` as unknown as LocalDate,
    minute: 720,
    value,
    low: null,
    nearby: () => [],
  }));

const asked = (of: 'high-minutes' | 'lowest', a: number[], b: number[]) =>
  tryOut({
    id: 'food',
    slot: null,
    grams: null,
    fromMinute: null,
    of,
    names: ['', ''],
    a: seen(10, a),
    b: seen(20, b),
    leftOut: [0, 0],
    given: [],
  }).difference!;

// Three days a side can be labelled in 20 ways (Pitman 1937); where the sides lie wholly apart no other way is further
// apart than the one seen, so at 95 % the critical t is its own and the interval runs from 0 to twice the difference.
describe('the interval of a difference between three days and three', () => {
  const [more, less] = [
    [150, 160, 170],
    [0, 10, 20],
  ];

  test('of glucose runs to twice the difference', () => {
    const { value, low, high } = asked('lowest', more, less);
    expect(value).toBeCloseTo(150, 9);
    expect(low).toBeCloseTo(0, 6);
    expect(high).toBeCloseTo(300, 6);
  });

  test('of minutes above range ends at the three hours that a meal is followed for', () => {
    expect(asked('high-minutes', more, less).high).toBe(180);
    expect(asked('high-minutes', less, more).low).toBe(-180);
  });
});
