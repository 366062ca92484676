import { describe, expect, test } from 'vitest';
import { measure } from '../../src/measures/index.ts';
import { targetSets } from '../../src/targets/index.ts';
import { timelineOf } from '../support/timeline.ts';
import { many, type RunOptions, runOf, type Slot } from './runs.ts';

/** Where the lines are drawn is ours. */
function odd(slots: readonly Slot[], options: RunOptions = {}) {
  const { oddStretches } = measure(runOf(slots, options), targetSets.adult);
  if (!oddStretches.ok) throw new Error(oddStretches.why);
  return oddStretches.value;
}

/** Values that neither stand still nor jump. */
const lively = (length: number): Slot[] => Array.from({ length }, (_, i) => 101 + (i % 2));
const below = { native: 40, limit: -1 } as const;
const above = { native: 400, limit: 1 } as const;

describe('values that stand still', () => {
  test('are told with their day, hour, length and value', () => {
    const slots = [...lively(7), ...many(120, 12), ...lively(7)];
    expect(odd(slots, { from: 1380 }).flat).toEqual([{ date: '2026-03-02', minute: 1415, minutes: 60, value: 120 }]);
  });

  test.each<[string, Slot[], number, number]>([
    ['five readings of 15 minutes', [...lively(20), ...many(120, 5), ...lively(20)], 15, 1],
    ['four of them last an hour, and are too few', [...lively(20), ...many(120, 4), ...lively(20)], 15, 0],
    ['for 59 minutes of every minute', [...lively(5), ...many(120, 59), ...lively(5)], 1, 0],
    ['for 60 minutes of every minute', [...lively(5), ...many(120, 60), ...lively(5)], 1, 1],
    ['for 55 minutes', [...lively(5), ...many(120, 11), ...lively(5)], 5, 0],
    ['to the end of the readings', [...lively(5), ...many(120, 12)], 5, 1],
    ['across twenty minutes without', [...lively(5), ...many(120, 6), null, null, null, ...many(120, 6)], 5, 1],
    ['on either side of a gap', [...lively(5), ...many(120, 6), ...many(null, 6), ...many(120, 6)], 5, 0],
    ['at a limit of the sensor', [...lively(5), ...many(above, 20), ...many(below, 20), ...lively(5)], 5, 0],
    ['and go on at the limit', [...lively(5), ...many(40, 6), ...many(below, 6), ...lively(5)], 5, 0],
    ['at the value of a reading at the limit before them', [...lively(5), below, ...many(40, 12), ...lively(5)], 5, 1],
  ])('%s', (_, slots, step, expected) => {
    expect(odd(slots, { step }).flat).toHaveLength(expected);
  });
});

describe('half a day and more at one value or beyond one end (ours)', () => {
  test.each<[string, Slot[], number]>([
    ['143 readings of five minutes', many(120, 143), 0],
    ['144 readings of five minutes', many(120, 144), 1],
    [
      '144 below what the sensor can show, of which it tells no number',
      many({ native: Number.NaN, limit: -1 }, 144),
      1,
    ],
    ['72 above it and 72 below', [...many(above, 72), ...many(below, 72)], 0],
    ['72 on either side of a gap', [...many(120, 72), ...many(null, 6), ...many(120, 72)], 0],
  ])('%s', (_, slots, expected) => {
    expect(odd([...lively(5), ...slots, ...lively(5)], { days: 2 }).still).toHaveLength(expected);
  });

  test('tell their days, length, side and share of the time', () => {
    const { still, stillShare } = odd([...lively(144), ...many(above, 288)], { from: 0 });
    expect(still).toEqual([
      { date: '2026-03-02', minute: 720, toDate: '2026-03-03', minutes: 1440, side: 'above', value: null },
    ]);
    expect(stillShare).toBeCloseTo(2 / 3, 9);
  });
});

describe('jumps', () => {
  test('are told from the reading before to the one after', () => {
    const { jumps } = odd([...lively(5), 100, 140, ...many(140, 5)], { from: 600 });
    expect(jumps).toEqual([{ date: '2026-03-02', minute: 625, from: 100, to: 140, minutes: 5 }]);
  });

  test('over midnight belong to the day on which they begin', () => {
    const { jumps } = odd([...lively(5), 100, 140, ...many(140, 5)], { from: 1410 });
    expect(jumps).toMatchObject([{ date: '2026-03-02', minute: 1435 }]);
  });

  test.each<[string, Slot[], number, number]>([
    ['of 30 in five minutes', [100, 130], 5, 0],
    ['of 31', [100, 131], 5, 1],
    ['of 31 down', [131, 100], 5, 1],
    ['of 29 in a minute', [100, 129], 1, 0],
    ['of 30 in a minute', [100, 130], 1, 1],
    ['of 121 in twenty minutes', [100, null, null, null, 221], 5, 1],
    ['of 120 in twenty minutes', [100, null, null, null, 220], 5, 0],
    ['over a gap', [100, null, null, null, null, 300], 5, 0],
    ['to a limit of the sensor', [100, above], 5, 0],
    ['from it', [above, 300], 5, 0],
  ])('%s', (_, slots, step, expected) => {
    const first = typeof slots[0] === 'number' ? many(slots[0], 20) : many(above, 20);
    const last = slots.at(-1)!;
    expect(odd([...first, ...slots, ...many(last, 20)], { step }).jumps).toHaveLength(expected);
  });
});

test('readings below and above what the sensor tells are counted', () => {
  expect(odd([...lively(5), below, below, ...lively(5), above, above, above, ...lively(5)])).toMatchObject({
    belowLimit: 2,
    aboveLimit: 3,
  });
});

describe('flat at the end of what a sensor can show', () => {
  const hours = (value: number, unit: 'mg/dL' | 'mmol/L', beyond?: number) => {
    const timeline = timelineOf({
      days: 2,
      unit,
      value: (minute, day) => {
        if (day === 1 && minute === 300 && beyond !== undefined) return beyond;
        if (day === 0 && minute >= 600 && minute < 780) return value;
        return unit === 'mg/dL' ? 110 + (minute % 40) : 6 + (minute % 40) / 10;
      },
    });
    const measured = measure(timeline, targetSets.adult).oddStretches;
    if (!measured.ok) throw new Error(measured.why);
    const { flat, belowLimit, aboveLimit } = measured.value;
    return [flat.length, belowLimit, aboveLimit];
  };
  test.each<[number, 'mg/dL' | 'mmol/L', number | undefined, number[]]>([
    [39, 'mg/dL', undefined, [0, 36, 0]],
    [40, 'mg/dL', undefined, [0, 36, 0]],
    [2.2, 'mmol/L', undefined, [0, 36, 0]],
    [400, 'mg/dL', undefined, [0, 0, 36]],
    [401, 'mg/dL', undefined, [0, 0, 36]],
    [22.2, 'mmol/L', undefined, [0, 0, 36]],
    // With a reading beyond it, or at any other number, it is no end.
    [40, 'mg/dL', 38, [1, 0, 0]],
    [400, 'mg/dL', 420, [1, 0, 0]],
    [41, 'mg/dL', undefined, [1, 0, 0]],
    [120, 'mg/dL', undefined, [1, 0, 0]],
  ])('%d %s for three hours (one reading of %s)', (value, unit, beyond, expected) => {
    expect(hours(value, unit, beyond)).toEqual(expected);
  });
});
