import { describe, expect, test } from 'vitest';
import { INTERVAL_DAYS, SEED } from '../../src/measures/estimate.ts';
import { measure } from '../../src/measures/index.ts';
import { alikeDays, LIKENESS } from '../../src/stats/alike.ts';
import { type Chance, chance } from '../../src/stats/chance.ts';
import { studentQuantile } from '../../src/stats/distributions.ts';
import { expandedTail } from '../../src/stats/resample.ts';
import { targetSets } from '../../src/targets/index.ts';
import { type DaysOf, timelineOf } from '../support/timeline.ts';

const gauss = (next: Chance) => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

/** Quartiles of the standard normal distribution (any printed table). */
const QUARTILES = { p25: -0.6745, p50: 0, p75: 0.6745 } as const;

test('on days whose levels correlate by 0.25, the curves’ intervals hold the true percentile about as often as said', () => {
  const next = chance(5);
  const trials = 200;
  const held = { p25: 0, p50: 0, p75: 0 };
  for (let trial = 0; trial < trials; trial++) {
    let level = gauss(next);
    const levels = Array.from({ length: 14 }, () => {
      const own = level;
      level = 0.25 * level + Math.sqrt(1 - 0.25 ** 2) * gauss(next);
      return 150 + 30 * own;
    });
    const { curveRanges } = measure(timelineOf({ every: 60, value: (_, day) => levels[day]! }), targetSets.adult);
    if (!curveRanges.ok) throw new Error(curveRanges.why);
    for (const curve of ['p25', 'p50', 'p75'] as const) {
      const { low, high } = curveRanges.value[3]![curve];
      const truth = 150 + 30 * QUARTILES[curve];
      if (low <= truth && truth <= high) held[curve]++;
    }
  }
  // Two standard errors of 200 trials at 95 % are 3.1; it was 88 to 92 % without an answer for likeness.
  for (const count of Object.values(held)) expect(count / trials).toBeGreaterThanOrEqual(0.919);
});

const of = (days: DaysOf) => measure(timelineOf(days), targetSets.adult).curveRanges;

function rangesOf(days: DaysOf) {
  const ranges = of(days);
  if (!ranges.ok) throw new Error(ranges.why);
  return ranges.value;
}

/** Value of a share by Hyndman & Fan 1996, type 1: the first with so many up to it. */
const typeOne = (values: readonly number[], share: number) =>
  values[Math.max(0, Math.ceil(share * values.length) - 1)]!;
const ascending = (a: number, b: number) => a - b;

/** The same interval by the long way: every draw's readings put together and sorted. `byDay`: a bin's readings by day. */
function byHand(byDay: readonly number[][], full: number, share: number) {
  const next = chance(SEED);
  const drawn: number[] = [];
  for (let draw = 0; draw < 300; draw++) {
    const taken = byDay.flatMap(() => byDay[Math.floor(next() * byDay.length)]!).sort(ascending);
    if (taken.length > 0) drawn.push(typeOne(taken, share));
  }
  drawn.sort(ascending);
  const tail = expandedTail(full, studentQuantile(0.975, full - 1) * Math.sqrt(alikeDays(full, LIKENESS).times));
  const at = (p: number) => drawn[Math.round(p * (drawn.length - 1))]!;
  return { value: typeOne(byDay.flat().sort(ascending), share), low: at(tail), high: at(1 - tail) };
}

describe('put together draw by draw, the curves are the same', () => {
  test.each([
    ['a fortnight', 14, 5, 1, () => false],
    ['values closer to each other than a quarter of a mg/dL', 14, 5, 1 / 1000, () => false],
    ['few days with readings at that hour', 14, 5, 1, (minute: number, day: number) => minute < 15 && day >= 4],
    ['many readings a day', 30, 1, 1, () => false],
  ])('%s', (_, days, every, step, lost) => {
    const value = (minute: number, day: number) =>
      lost(minute, day) ? null : 100 + step * (((day * 37 + 11 * day * day) % 90) + ((minute * 7) % 13));
    const found = rangesOf({ days, every, value });
    expect(found.map(({ minute }) => minute)).toEqual([0, 180, 360, 540, 720, 900, 1080, 1260]);
    for (const [b, minute] of [0, 180, 1260].entries()) {
      const byDay = Array.from({ length: days }, (_, day) =>
        Array.from({ length: 15 / every }, (_, k) => value(minute + k * every, day)).filter((each) => each !== null),
      );
      const block = found[b === 2 ? 7 : b]!;
      for (const [curve, share] of [
        ['p25', 0.25],
        ['p50', 0.5],
        ['p75', 0.75],
      ] as const)
        expect(block[curve], `${minute} ${curve}`).toEqual(byHand(byDay, days, share));
    }
  });
});

describe('curves have intervals', () => {
  test('from ten full days on', () => {
    const days = (full: number): DaysOf => ({
      value: (minute, day) => (day < full || minute < 600 ? 100 + day : null),
    });
    expect(of(days(INTERVAL_DAYS)).ok).toBe(true);
    expect(of(days(INTERVAL_DAYS - 1))).toEqual({ ok: false, why: 'too-few-days' });
  });

  test('where ten readings stand, and not where nine do', () => {
    const value = (minute: number, day: number) =>
      (minute < 15 && day * 3 + minute / 5 >= 10) || (minute >= 180 && minute < 195 && day >= 3) ? null : 100 + day;
    expect(rangesOf({ value }).map(({ minute }) => minute)).toEqual([0, 360, 540, 720, 900, 1080, 1260]);
    const rare = (minute: number, day: number) => (minute % 180 < 15 && day >= 3 ? null : 100);
    expect(of({ value: rare })).toEqual({ ok: false, why: 'too-few-readings' });
  });
});
