import { describe, expect, test } from 'vitest';
import { findings } from '../../src/findings/index.ts';
import type { Measures } from '../../src/model/measures.ts';
import { targetSets } from '../../src/targets/index.ts';
import { longHighsLike, lowsLike, reboundsLike } from '../support/examples/episodes.ts';
import {
  bandsLike,
  daysLike,
  exampleDate,
  mg,
  modalDayLike,
  nightsLike,
  seenCoverage,
} from '../support/examples/measures.ts';
import { sensorsLike } from '../support/examples/trust.ts';
import { measuresWith } from '../support/measures.ts';
import { changed, looked } from './looked.ts';

/** Places where the smallest slip would keep a low from being told, or tell another than the deepest. */

/** Days of which those given hold minutes in a band. */
function daysWith(band: 'low' | 'very-low', ...days: number[]): Measures['daily'] {
  const daily = daysLike(Array.from({ length: 14 }, () => 0.9));
  if (!daily.ok) throw new Error(daily.why);
  const value = daily.value.map((day, d) => ({
    ...day,
    minutes: { ...day.minutes, low: 0, 'very-low': 0, ...(days.includes(d) ? { [band]: 5 } : {}) },
  }));
  return { ...daily, value };
}

describe('no lows seen', () => {
  test('is not said where a minute was very low', () => {
    const timeInBands = bandsLike({ 'very-low': 5, 'in-range': 20_000 });
    expect(looked('no-lows-seen', { timeInBands })).toEqual({ case: 'absent' });
  });

  test.each<[string, Partial<Measures>, string]>([
    ['every night whole', {}, 'whole-nights'],
    ['one night not whole', { nights: nightsLike(14, {}, { share: 0.9 }) }, 'night-gaps'],
    ['nights not whole together', { coverage: seenCoverage(14, 1, 0.99) }, 'night-gaps'],
    ['nights not known', { nights: { ok: false, why: 'no-readings' } }, 'night-gaps'],
  ])('tells of gaps at night: %s', (_, given, variant) => {
    expect(looked('no-lows-seen', given)).toMatchObject({ case: 'holds', variant });
  });
});

describe('brief lows', () => {
  test('are told with the days they were on', () => {
    const timeInBands = bandsLike({ low: 10, 'in-range': 20_000 });
    const look = looked('brief-lows', { timeInBands, daily: daysWith('low', 2, 5) });
    expect(look).toMatchObject({ total: 10, days: 2, dates: [exampleDate(2), exampleDate(5)] });
  });

  test('give way where a minute was very low, which is told for itself with its days', () => {
    const timeInBands = bandsLike({ low: 10, 'very-low': 5, 'in-range': 20_000 });
    expect(looked('brief-lows', { timeInBands })).toEqual({ case: 'absent' });
    const look = looked('very-low', { timeInBands, daily: daysWith('very-low', 3) });
    expect(look).toMatchObject({
      variant: 'brief',
      total: 5,
      dates: [exampleDate(3)],
      where: [{ date: exampleDate(3) }],
    });
  });
});

describe('the deepest of several lows', () => {
  const low = (extreme: number, extremeLimit: -1 | 0 = 0, minutes = 30) => ({
    extreme: mg(extreme),
    extremeLimit,
    minutes,
  });

  test.each([
    ['the first', [low(50), low(60), low(65)], 50, 0],
    ['the last', [low(65), low(60), low(50)], 50, 0],
    ['one below the range of the sensor before one at it', [low(40), low(40, -1)], 40, -1],
    ['in whatever order', [low(40, -1), low(40)], 40, -1],
    ['yet not before a lower one', [low(50, -1), low(45)], 45, 0],
  ])('is told: %s', (_, lows, value, limit) => {
    const look = findings
      .find(({ id }) => id === 'lows-seen')!
      .look(measuresWith({ lows: lowsLike(...lows) }), targetSets.adult);
    expect(look).toMatchObject({ case: 'holds', params: { lowest: { value, limit } } });
  });

  test('and the longest, and how many were cut by missing readings', () => {
    const cut = (start: boolean, end: boolean) => ({ cut: { start, end } });
    const lows = lowsLike({ minutes: 20, ...cut(true, false) }, { minutes: 90, ...cut(false, true) }, { minutes: 15 });
    expect(looked('lows-seen', { lows })).toMatchObject({ count: 3, longest: 90, cut: 2 });
  });

  test('counts those of the night', () => {
    const lows = lowsLike(
      { minutes: 130, startMinute: 60, level: 2, outerMinutes: 20 },
      { minutes: 130, startMinute: 600, level: 2, outerMinutes: 20 },
    );
    expect(looked('long-lows', { lows })).toMatchObject({ count: 2, night: 1 });
    expect(looked('very-low', { lows })).toMatchObject({ count: 2, night: 1 });
  });
});

describe('the highest of several', () => {
  const seen = (peak: number) => ({ peak: mg(peak), peakLimit: 0 as const });
  const above = (peak: number) => ({ peak: mg(peak), peakLimit: 1 as const });

  test.each([
    ['of three', [seen(221), seen(310), seen(250)], 310, 0],
    ['one above the range of the sensor and one at it', [above(400), seen(400)], 400, 1],
    ['yet not before a higher one', [above(400), seen(410)], 410, 0],
  ])('after lows is told in whatever order: %s', (_, peaks, value, limit) => {
    const finding = findings.find(({ id }) => id === 'rebound-after-lows')!;
    for (const order of [peaks, peaks.toReversed()]) {
      const rebounds = changed(reboundsLike(peaks.length, 5), (found) => ({
        ...found,
        list: found.list.map((each, i) => ({ ...each, ...order[i]! })),
      }));
      expect(finding.look(measuresWith({ rebounds }), targetSets.adult)).toMatchObject({
        case: 'holds',
        params: { peak: { value, limit }, limit: { of: 'high' } },
      });
    }
  });

  test('of those that were long very high, and the longest of them', () => {
    const high = (outerMinutes: number, extreme: number) => ({
      level: 2 as const,
      outerMinutes,
      minutes: 400,
      extreme: mg(extreme),
    });
    // The last was very high for less than two hours: neither its length nor its height is told.
    const list = [high(130, 320), high(245, 300), high(180, 290), high(119, 390)];
    for (const order of [list, list.toReversed()])
      expect(looked('long-very-high', { longHighs: longHighsLike({}, ...order) })).toMatchObject({
        count: 3,
        length: 120,
        longest: 245,
        highest: 320,
        limit: { of: 'very-high' },
      });
  });
});

describe('lows at night', () => {
  const nights = (...low: { lowest: number; lowestLimit?: -1 | 0; longestLow: number }[]): Measures['nights'] => {
    const usual = nightsLike(14);
    if (!usual.ok) throw new Error(usual.why);
    const value = usual.value.map((night, n) => {
      const each = low[n];
      return each ? { ...night, ...each, lowest: mg(each.lowest), state: 'low' as const } : night;
    });
    return { ...usual, value };
  };

  test.each([
    [
      'the first',
      [
        { lowest: 50, longestLow: 90 },
        { lowest: 60, longestLow: 20 },
      ],
      50,
      90,
    ],
    [
      'the last',
      [
        { lowest: 60, longestLow: 20 },
        { lowest: 50, longestLow: 90 },
      ],
      50,
      90,
    ],
  ])('tell the deepest and the longest: %s', (_, low, lowest, longest) => {
    expect(looked('lows-at-night', { nights: nights(...low) })).toMatchObject({
      count: 2,
      lowest,
      longest,
      variant: 'repeated',
    });
  });

  test('below the range of the sensor is deeper than at its limit', () => {
    const both = [
      { lowest: 40, longestLow: 20 },
      { lowest: 40, lowestLimit: -1 as const, longestLow: 20 },
    ];
    for (const low of [both, both.toReversed()]) {
      const look = findings
        .find(({ id }) => id === 'lows-at-night')!
        .look(measuresWith({ nights: nights(...low) }), targetSets.adult);
      expect(look).toMatchObject({ params: { lowest: { value: 40, limit: -1 } } });
    }
  });
});

describe('lows that averages hide', () => {
  const goal = (of: 'low' | 'very-low' | 'in-range', met: boolean) => ({ of, op: '<' as const, share: 0.04, met });
  const two = { lows: lowsLike({}, {}), modalDay: modalDayLike(60) };

  test.each([
    [
      'both goals on lows met, another missed',
      [goal('low', true), goal('very-low', true), goal('in-range', false)],
      'goal',
    ],
    ['the goal on very low missed', [goal('low', true), goal('very-low', false)], undefined],
    ['the goal on low missed', [goal('low', false), goal('very-low', true)], undefined],
  ])('%s', (_, goals, variant) => {
    const timeInBands = bandsLike({ low: 30, 'in-range': 970 }, ...goals);
    expect(looked('lows-averages-hide', { ...two, timeInBands }).variant).toBe(variant);
  });

  test('both ways at once', () => {
    const timeInBands = bandsLike({ low: 30, 'in-range': 970 }, goal('low', true));
    expect(looked('lows-averages-hide', { ...two, modalDay: modalDayLike(70), timeInBands }).variant).toBe('both');
  });

  test('the lowest hour decides, wherever it stands', () => {
    const usual = modalDayLike(90);
    if (!usual.ok) throw new Error(usual.why);
    const dipping = (hour: number, p25: number): Measures['modalDay'] => ({
      ...usual,
      value: { ...usual.value, bins: usual.value.bins.map((bin, h) => (h === hour ? { ...bin, p25 } : bin)) },
    });
    for (const hour of [0, 12, 23]) {
      expect(looked('lows-averages-hide', { ...two, modalDay: dipping(hour, 69) }).case).toBe('absent');
      expect(looked('lows-averages-hide', { ...two, modalDay: dipping(hour, 70) })).toMatchObject({
        case: 'holds',
        edge: 70,
      });
    }
  });
});

describe('lows at one time of day', () => {
  const lowAt = (day: number, startMinute: number) => ({ date: exampleDate(day), startMinute });

  test('the window with most days wins, then the one with most lows', () => {
    const evening = [0, 1, 2].map((day) => lowAt(day, 1200));
    const morning = [0, 1, 2, 3].map((day) => lowAt(day, 480 + day * 10));
    expect(
      looked('lows-clustered', { coverage: seenCoverage(9, 1), lows: lowsLike(...evening, ...morning) }),
    ).toMatchObject({
      from: 480,
      to: 510,
      count: 4,
    });
    const twice = [...evening, lowAt(2, 1260)];
    const three = [0, 1, 2].map((day) => lowAt(day, 480));
    expect(
      looked('lows-clustered', { coverage: seenCoverage(9, 1), lows: lowsLike(...three, ...twice) }),
    ).toMatchObject({
      from: 1200,
      to: 1260,
      count: 4,
    });
    expect(
      looked('lows-clustered', { coverage: seenCoverage(9, 1), lows: lowsLike(...evening, ...three) }),
    ).toMatchObject({ from: 480, count: 3 });
  });
});

describe('lows on the first day of a sensor', () => {
  test('begin with it, not before', () => {
    const lows = (date: string, startMinute: number) => lowsLike({ date: date as never, startMinute });
    expect(looked('lows-on-first-day', { lows: lows('2024-01-01', 0), sensors: sensorsLike(0) }).case).toBe('holds');
    expect(looked('lows-on-first-day', { lows: lows('2023-12-31', 1435), sensors: sensorsLike(0) }).case).toBe(
      'absent',
    );
  });
});

describe('not enough data', () => {
  test.each([
    [13, 0.7, 'days'],
    [13, 0.69, 'both'],
    [14, 0.69, 'share'],
  ])('%d days with a share of %d lack: %s', (days, share, lacking) => {
    const look = looked('not-enough-data', { coverage: seenCoverage(days, share) });
    expect(look).toMatchObject({ variant: lacking });
    expect((look as unknown as { where: unknown[] }).where).toHaveLength(share < 0.7 ? days : 0);
  });
});
