import { describe, expect, test } from 'vitest';
import { type Chance, chance } from '../../src/stats/chance.ts';
import { bottoms, ratioInterval, type Scale } from '../../src/stats/interval.ts';
import { drawDays } from '../../src/stats/resample.ts';

const TRIALS = 400;
const DAY = 1440;

interface World {
  what: string;
  scale: Scale;
  /** Minutes (or counts) of one day. */
  day: (next: Chance) => number;
  /** What a day holds on average. */
  truth: number;
  /** Share of intervals that hold the truth, at least, with 14 days. */
  least: number;
}

const gauss = (next: Chance) => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
const wait = (next: Chance, mean: number) => -mean * Math.log(1 - next());

function poisson(next: Chance, mean: number): number {
  let count = 0;
  for (let left = Math.exp(-mean), product = next(); product > left; product *= next()) count++;
  return count;
}

/**
 * Days drawn independently from simple worlds whose truth is known by algebra. An interval said to be 95 % should
 * hold the truth about that often. Rare and uneven minutes (very low) are the hard case: drawing days alone holds it
 * in 82 % there, the day-to-day error alone in 89 %.
 */
const WORLDS: World[] = [
  { what: 'mean glucose', scale: 'positive', day: (next) => 150 + 25 * gauss(next), truth: 150, least: 0.92 },
  { what: 'half the day in range', scale: 'share', day: (next) => DAY * next(), truth: DAY / 2, least: 0.92 },
  {
    what: 'low on half of the days',
    scale: 'share',
    day: (next) => (next() < 0.5 ? wait(next, 70) : 0),
    truth: 35,
    least: 0.92,
  },
  {
    what: 'very low on a fifth',
    scale: 'share',
    day: (next) => (next() < 0.2 ? wait(next, 25) : 0),
    truth: 5,
    least: 0.87,
  },
  {
    what: 'very high on 40 %',
    scale: 'share',
    day: (next) => (next() < 0.4 ? wait(next, 150) : 0),
    truth: 60,
    least: 0.91,
  },
  { what: 'episodes, one in two days', scale: 'positive', day: (next) => poisson(next, 0.5), truth: 0.5, least: 0.92 },
  { what: 'episodes, uneven', scale: 'positive', day: (next) => poisson(next, wait(next, 1)), truth: 1, least: 0.92 },
];

describe('intervals hold the truth about as often as they say', () => {
  test.each(WORLDS)('$what', ({ scale, day, truth, least }) => {
    const next = chance(2024);
    const denominators = bottoms(new Float64Array(14).fill(DAY), drawDays(14, 2000, 1, 0.95));
    let held = 0;
    let asked = 0;
    for (let trial = 0; trial < TRIALS; trial++) {
      const days = Float64Array.from({ length: 14 }, () => day(next));
      const interval = ratioInterval(days, denominators, scale);
      if (!interval) continue;
      asked++;
      if (interval.low <= truth / DAY && truth / DAY <= interval.high) held++;
    }
    expect(asked).toBeGreaterThan(0.9 * TRIALS);
    expect(held / asked).toBeGreaterThanOrEqual(least);
  });
});

describe('an interval', () => {
  const draws = drawDays(14, 2000, 1, 0.95);
  const full = bottoms(new Float64Array(14).fill(DAY), draws);
  const check = (minutes: number[], scale: Scale = 'share') => ratioInterval(Float64Array.from(minutes), full, scale);

  test.each([
    ['nothing seen', new Array<number>(14).fill(0)],
    ['everything seen', new Array<number>(14).fill(DAY)],
    ['days without any difference', new Array<number>(14).fill(300)],
  ])('is not given for %s', (_, minutes) => {
    expect(check(minutes)).toBeNull();
  });

  test('of a share stays within 0 and 1', () => {
    const one = check([300, ...new Array<number>(13).fill(0)])!;
    expect(one.low).toBe(0);
    expect(one.high).toBeLessThan(1);
    const nearly = check([DAY - 300, ...new Array<number>(13).fill(DAY)])!;
    expect(nearly.high).toBeLessThanOrEqual(1);
    expect(nearly.low).toBeGreaterThan(0);
  });

  test('weighs days by their minutes', () => {
    const uneven = bottoms(Float64Array.from([DAY, 10, ...new Array<number>(12).fill(DAY)]), draws);
    const minutes = [700, 10, ...new Array<number>(12).fill(720)];
    const { low, high } = ratioInterval(Float64Array.from(minutes), uneven, 'share')!;
    expect(high - low).toBeLessThan(0.02);
  });
});
