import { describe, expect, test } from 'vitest';
import { isPattern } from '../../src/findings/evidence/pattern.ts';
import { dates } from '../../src/findings/evidence/quantities.ts';
import { type FindingId, findings } from '../../src/findings/index.ts';
import type { Measures } from '../../src/model/measures.ts';
import type { Change } from '../../src/model/thenAndNow.ts';
import type { Fingersticks } from '../../src/model/trust.ts';
import { targetSets } from '../../src/targets/index.ts';
import { mgPerDl } from '../../src/units.ts';
import { highsLike, lowsLike } from '../support/examples/episodes.ts';
import {
  bandsLike,
  dawnLike,
  daysLike,
  exampleDate,
  modalDayLike,
  seenCoverage,
  windowsLike,
} from '../support/examples/measures.ts';
import { mealsLike } from '../support/examples/occasions.ts';
import { a1cLike, oddLike, overnightLike, ratesLike, sticksLike, thenAndNowLike } from '../support/examples/trust.ts';
import { measuresWith } from '../support/measures.ts';
import { changed, looked } from './looked.ts';

/** What a finding says where it holds: the numbers, the days, the side, and whether it may say it. Rules ours. */

describe('fingersticks that differ', () => {
  const zones = (zone: 'C' | 'D' | 'E', ...pairs: [number, number][]) =>
    changed(sticksLike(...pairs), (value: Fingersticks) => ({
      ...value,
      zones: { ...value.zones, A: value.pairs.length - 1, [zone]: 1 },
      pairs: value.pairs.map((pair, i) => (i === 0 ? { ...pair, zone } : pair)),
    }));

  test.each(['C', 'D', 'E'] as const)('one pair in zone %s is told, whatever the others', (zone) => {
    const far = [300, 120] as [number, number];
    const given = Array.from({ length: 9 }, (): [number, number] => [100, 100]);
    expect(looked('fingersticks-differ', { fingersticks: zones(zone, far, ...given) })).toMatchObject({
      far: 1,
      side: 'below',
      bias: 18,
      where: [{ date: exampleDate(0) }],
    });
    expect(looked('fingersticks-differ', { fingersticks: zones(zone, far) }).case).toBe('holds');
  });

  test('an average of opposites is told with both ends', () => {
    expect(looked('fingersticks-differ', { fingersticks: sticksLike([100, 140], [100, 60], [100, 70]) })).toMatchObject(
      {
        side: 'below',
        bias: 10,
        mixed: 'yes',
        furthestBelow: 40,
        furthestAbove: 40,
      },
    );
    const one = looked('fingersticks-differ', { fingersticks: sticksLike([100, 60], [100, 60], [100, 70]) });
    expect(one).toMatchObject({ mixed: 'no' });
  });

  test('three pairs are enough', () => {
    const three = sticksLike([100, 140], [100, 140], [100, 100]);
    expect(looked('fingersticks-differ', { fingersticks: three })).toMatchObject({ within: 1, pairs: 3 });
  });

  test('days are those of the pairs outside 20 mg/dL below 100, and 20 % from there on', () => {
    const pairs = sticksLike([60, 80], [60, 81], [100, 120], [100, 121], [200, 240], [200, 241], [150, 80]);
    expect(looked('fingersticks-differ', { fingersticks: pairs })).toMatchObject({
      where: [1, 3, 5, 6].map((day) => ({ date: exampleDate(day) })),
      side: 'above',
    });
  });

  test('are untold of two pairs, and nothing to tell where none has a reading near', () => {
    expect(looked('fingersticks-differ', { fingersticks: sticksLike([100, 100], [100, 100]) }).case).toBe('untold');
    expect(looked('fingersticks-differ', { fingersticks: { ok: false, why: 'no-pairs' } }).case).toBe('absent');
    expect(looked('fingersticks-differ', { fingersticks: { ok: false, why: 'failed' } }).case).toBe('untold');
  });
});

describe('seven days or nights are enough to speak of a habit', () => {
  const seven = <T>(value: T): T[] => new Array<T>(7).fill(value);
  test.each<[FindingId, Partial<Measures>]>([
    ['overnight-fall', { overnight: overnightLike(seven(-60)) }],
    ['steady-nights', { overnight: overnightLike(seven(0)) }],
    ['dawn-rise', { dawnRise: dawnLike(seven(30)) }],
    ['best-window', { windows: windowsLike(7, 7, 0.1) }],
    ['high-after-window', { windows: windowsLike(7, 0), highs: highsLike(...seven({ startMinute: 1090 })) }],
    ['high-after-meals', { meals: mealsLike(...seven({ highMinutes: 90 })) }],
  ])('%s', (id, given) => {
    expect(looked(id, given).case).toBe('holds');
  });

  test('six are not, however often', () => {
    expect([isPattern(3, 6), isPattern(3, 7), isPattern(6, 6), isPattern(2, 7)]).toEqual([false, true, false, false]);
  });
});

test('odd stretches of both kinds are told', () => {
  expect(looked('odd-stretches', { oddStretches: oddLike(1, 1) }).case).toBe('holds');
});

test('steady nights name those that were: little change and little range', () => {
  const overnight = changed(overnightLike([0, 0, 0, 30, -30, 0, 31, 0, 0]), (value) => ({
    ...value,
    nights: value.nights.map((night, n) => ({ ...night, range: [30, 50, 51][n] ?? 30 })),
    steady: 7,
  }));
  const look = looked('steady-nights', { overnight }) as unknown as { where: { date: string }[] };
  expect(look.where.map(({ date }) => date)).toEqual([0, 1, 3, 4, 5, 7, 8].map(exampleDate));
});

describe('time in range', () => {
  const goal = (of: 'in-range' | 'low' | 'high', share: number, met: boolean) => ({ of, op: '>' as const, share, met });
  const minutes = { low: 3, 'in-range': 69, high: 28 };

  test('is held against its own goal, and time high against its own', () => {
    const timeInBands = bandsLike(
      minutes,
      goal('low', 0.04, true),
      goal('in-range', 0.7, false),
      goal('high', 0.25, false),
    );
    expect(looked('time-in-range', { timeInBands })).toMatchObject({
      variant: 'missed',
      goal: 0.7,
      aboveGoal: 0.25,
      aboveVerdict: 'missed',
      steady: 'yes',
      known: 'interval',
    });
    const met = bandsLike(minutes, goal('high', 0.3, true), goal('in-range', 0.6, true));
    expect(looked('time-in-range', { timeInBands: met })).toMatchObject({ variant: 'met', aboveVerdict: 'met' });
    expect(looked('time-in-range', { timeInBands: bandsLike(minutes, goal('low', 0.04, true)) })).toMatchObject({
      variant: 'none',
      aboveVerdict: 'none',
    });
  });

  test('says where it may shift, and gives no interval where there is none', () => {
    const timeInBands = changed(bandsLike(minutes), (value) => ({
      ...value,
      exclusive: { ...value.exclusive, 'in-range': { ...value.exclusive['in-range'], low: null, high: null } },
    }));
    const expected = { steady: 'no', known: 'point', low: 0.69, high: 0.69 };
    expect(looked('time-in-range', { timeInBands, coverage: seenCoverage(14, 0.6) })).toMatchObject(expected);
    expect(looked('time-in-range', { timeInBands, coverage: { ok: false, why: 'failed' } })).toMatchObject(expected);
  });
});

describe('a mean that is a bound', () => {
  const bounded = (bound: 'lower' | 'upper' | 'both' | null) =>
    changed(measuresWith({}).mean, (value) => ({ ...value, bound, bounded: bound !== null }));

  test.each([
    // A true mean above "at least" comes nearer to an A1C above it, and goes away from one below.
    [8.5, 'lower', 'yes'],
    [7.5, 'lower', 'no'],
    [8.5, 'upper', 'no'],
    [7.5, 'upper', 'yes'],
    [7.5, 'both', 'yes'],
    [8.5, null, 'no'],
  ] as const)('an A1C of %d beside a GMI of 8 with a bound %s', (a1c, bound, nearer) => {
    const differs = looked('a1c-differs', { labA1c: a1cLike(a1c, 8), mean: bounded(bound) });
    expect(differs).toMatchObject({ way: bound ?? 'no', nearer });
  });

  test('a coefficient of variation', () => {
    const cv = { ok: true, value: 36.4, n: 4032, of: 'readings' } as const;
    expect(looked('cv-over-limit', { cv, mean: bounded('lower') })).toMatchObject({ way: 'lower' });
    expect(looked('cv-over-limit', { cv })).toMatchObject({ way: 'no' });
  });
});

describe('the lowest number of all', () => {
  const daily = (lowest: number, beyond: -1 | 0 = 0) =>
    changed(daysLike([0.9, 0.9]), (value) =>
      value.map((day, i) =>
        i === 0 ? day : { ...day, lowest: mgPerDl(lowest), limits: { lowest: beyond, highest: 0 as const } },
      ),
    );
  const veryLow = { level: 2 as const, outerMinutes: 20, extreme: mgPerDl(47) };

  test.each([
    [46, 0, { deeper: 'yes', deepest: 46, deepestDate: [exampleDate(1)] }],
    [47, 0, { deeper: 'no' }],
    [40, -1, { deeper: 'yes', deepest: 40 }],
  ] as const)('a dip to %i of less than 15 minutes beside a low down to 47', (lowest, beyond, expected) => {
    for (const id of ['very-low', 'lows-seen'] as const) {
      const given = { lows: lowsLike(veryLow), daily: daily(lowest, beyond) };
      expect(looked(id, given)).toMatchObject({ lowest: 47, ...expected });
    }
  });

  test('very low for minutes only: the lowest is told', () => {
    const timeInBands = bandsLike({ 'in-range': 99, 'very-low': 1 });
    expect(looked('very-low', { lows: lowsLike(), timeInBands, daily: daily(51) })).toMatchObject({ lowest: 51 });
  });
});

describe('where days differ most', () => {
  const bins = (edges: Record<number, [p25: number | null, p75: number | null]>, usual = modalDayLike(100)) =>
    changed(usual, (value) => ({
      ...value,
      bins: value.bins.map((bin, hour) => {
        const [p25, p75] = edges[hour] ?? [bin.p25, bin.p75];
        return { ...bin, p25, p75 };
      }),
    }));

  test('parts of the day without readings say nothing', () => {
    const modalDay = bins({ 0: [null, null], 3: [null, 400], 5: [200, null], 12: [109, 184] });
    expect(looked('wide-spread', { modalDay })).toMatchObject({ at: 720, low: 109, high: 184, width: 75, usual: 50 });
    const none = Object.fromEntries(Array.from({ length: 24 }, (_, hour) => [hour, [null, null]])) as never;
    expect(looked('wide-spread', { modalDay: bins(none) })).toMatchObject({ case: 'untold', why: 'too-few-readings' });
  });

  test('of two as wide it is the earlier; where all is flat there is nothing to tell', () => {
    expect(looked('wide-spread', { modalDay: bins({ 8: [90, 190], 20: [90, 190] }) })).toMatchObject({ at: 480 });
    const flat = Object.fromEntries(Array.from({ length: 24 }, (_, hour) => [hour, [100, 100]])) as never;
    expect(looked('wide-spread', { modalDay: bins(flat) })).toEqual({ case: 'absent' });
  });
});

describe('high in a part of the day', () => {
  const window = (fromMinute: number, high: number) => {
    const example = windowsLike(9, 0, high);
    if (!example.ok) throw new Error(example.why);
    return { ...example.value.all[0]!, fromMinute, toMinute: fromMinute + 240 };
  };
  const windows = (...all: ReturnType<typeof window>[]) => changed(windowsLike(9, 0), (v) => ({ ...v, all }));
  const highs = (...starts: [day: number, startMinute: number][]) =>
    highsLike(...starts.map(([day, startMinute]) => ({ date: exampleDate(day), startMinute, minutes: 130 })));

  test('is the one with most such days, then the one with most time high', () => {
    const given = highs([4, 1080], [2, 1080], [1, 1080], [0, 1080], [0, 360], [1, 360], [2, 360]);
    for (const all of [
      [window(1080, 0.2), window(360, 0.6)],
      [window(360, 0.6), window(1080, 0.2)],
    ])
      expect(looked('high-after-window', { highs: given, windows: windows(...all) })).toMatchObject({
        from: 1080,
        count: 4,
        where: [0, 1, 2, 4].map((day) => ({ date: exampleDate(day), fromMinute: 1080, toMinute: 1320 })),
      });
    const equal = highs([0, 1080], [1, 1080], [2, 1080], [0, 360], [1, 360], [2, 360]);
    for (const all of [
      [window(1080, 0.2), window(360, 0.6)],
      [window(360, 0.6), window(1080, 0.2)],
    ])
      expect(looked('high-after-window', { highs: equal, windows: windows(...all) })).toMatchObject({ from: 360 });
  });

  test('is the one with the largest share of its days, however many were seen; of equals the first', () => {
    const given = highs(
      ...[0, 1, 2, 3, 4].map((day) => [day, 360] as [number, number]),
      ...[0, 1, 2, 3].map((day) => [day, 1080] as [number, number]),
    );
    const all = [{ ...window(360, 0.5), days: 14 }, window(1080, 0.5)];
    for (const order of [all, all.toReversed()])
      expect(looked('high-after-window', { highs: given, windows: windows(...order) })).toMatchObject({ from: 1080 });
    const equal = highs([0, 360], [1, 360], [2, 360], [0, 1080], [1, 1080], [2, 1080]);
    const both = windows(window(360, 0.5), window(1080, 0.5));
    expect(looked('high-after-window', { highs: equal, windows: both })).toMatchObject({ from: 360 });
  });

  test('is untold for the reason that highs or parts of the day are', () => {
    const why = (given: Partial<Measures>) => looked('high-after-window', given);
    expect(why({ highs: { ok: false, why: 'no-readings' } })).toEqual({ case: 'untold', why: 'no-readings' });
    expect(why({ windows: { ok: false, why: 'too-few-days' } })).toEqual({ case: 'untold', why: 'too-few-days' });
  });
});

describe('best days', () => {
  test('hold no minute low and none very low, and have a share in range', () => {
    const daily = changed(daysLike([0.9, 0.95, 0.99, 0.8]), (days) =>
      days.map((day, d) => ({
        ...day,
        minutes: { ...day.minutes, ...(d === 1 ? { low: 5 } : d === 2 ? { 'very-low': 5 } : {}) },
        ...(d === 3 ? { inRange: null } : {}),
      })),
    );
    expect(looked('best-days', { daily })).toMatchObject({
      dates: [exampleDate(0)],
      top: [exampleDate(0)],
      share: 0.9,
      count: 1,
      days: 3,
    });
  });

  test('without a goal are the one with most in range, of equals the first', () => {
    expect(looked('best-days', { daily: daysLike([0.5, 0.6, 0.6]) }, 'pregnancy-other')).toMatchObject({
      variant: 'top',
      dates: [exampleDate(1)],
    });
  });
});

describe('a laboratory A1C beside the GMI', () => {
  test.each([
    [7.5, 7, 'above'],
    [7, 7.5, 'below'],
  ])('%d beside %d lies %s', (a1c, gmi, side) => {
    expect(looked('a1c-differs', { labA1c: a1cLike(a1c, gmi) })).toMatchObject({ side, variant: side, a1c, gmi });
  });

  test.each([{ gmi: null }, { difference: null }, { mean: null }])('is untold without %j', (lacking) => {
    const labA1c = changed(a1cLike(7.5, 7), (value) => ({ ...value, ...lacking }));
    expect(looked('a1c-differs', { labA1c }).case).toBe('untold');
  });

  test.each(['too-few-readings', 'not-for-these-targets'] as const)('without a GMI (%s) that is why', (why) => {
    const given = { labA1c: a1cLike(7.5, null), gmi: { ok: false, why } as const };
    expect(looked('a1c-differs', given)).toEqual({ case: 'untold', why });
  });
});

describe('then and now', () => {
  const change = (of: Change['of'], before: number, now: number): Change & { verdict: 'more-than-noise' } =>
    ({ of, before, now, change: now - before, verdict: 'more-than-noise' }) as never;

  test.each([
    ['in-range', 0.5, 0.7, 'range', 'more', 'toward-range', 'high'],
    ['in-range', 0.7, 0.5, 'range', 'less', 'away-from-range', 'high'],
    ['high', 0.3, 0.4, 'high', 'more', 'away-from-range', 'high'],
    ['high', 0.4, 0.3, 'high', 'less', 'toward-range', 'high'],
  ] as const)('%s from %d to %d', (of, before, now, kind, way, variant, limit) => {
    expect(looked('changed-range', { thenAndNow: thenAndNowLike(change(of, before, now)) })).toMatchObject({
      of: kind,
      way,
      variant,
      before,
      now,
      limit: { of: limit },
    });
  });

  test('time very high alone is told with its own limit; a change of lows is no change of range', () => {
    const veryHigh = changed(thenAndNowLike(), (value) => ({
      ...value,
      changes: [...value.changes, change('very-high', 0.1, 0.02)],
    }));
    expect(looked('changed-range', { thenAndNow: veryHigh })).toMatchObject({
      limit: { of: 'very-high' },
      variant: 'toward-range',
    });
    expect(looked('changed-range', { thenAndNow: thenAndNowLike(change('low', 0.1, 0.02)) }).case).toBe('absent');
  });

  test.each([
    ['low', 0.01, 0.04, 'more', 'low', 'share'],
    ['very-low', 0.02, 0, 'less', 'very-low', 'share'],
    ['lows', 6, 1, 'less', 'low', 'count'],
  ] as const)('%s from %d to %d is told with its own limit', (of, before, now, way, limit, q) => {
    const look = findings
      .find(({ id }) => id === 'changed-lows')!
      .look(measuresWith({ thenAndNow: thenAndNowLike(change(of, before, now)) }), targetSets.adult);
    expect(look).toMatchObject({
      variant: way,
      params: { of: { value: of }, before: { q, value: before }, now: { q, value: now }, limit: { of: limit } },
    });
  });

  test('of several changes of lows time low is told, then time very low', () => {
    const three = [change('lows', 6, 1), change('very-low', 0.02, 0), change('low', 0.04, 0.01)];
    const lowsLook = (...given: Change[]) => looked('changed-lows', { thenAndNow: thenAndNowLike(...given) });
    expect(lowsLook(...three)).toMatchObject({ of: 'low', limit: { of: 'low' } });
    expect(lowsLook(...three.slice(0, 2))).toMatchObject({ of: 'very-low', limit: { of: 'very-low' } });
  });

  test.each([
    ['few-days', 'few'],
    ['none-seen', 'other'],
  ] as const)('what cannot be told for %s says so of time in range', (why, known) => {
    const thenAndNow = changed(
      thenAndNowLike({ of: 'in-range', before: 0.5, now: 0.6, verdict: 'cannot-tell', why }),
      (value) => ({ ...value, changes: value.changes.toReversed() }),
    );
    expect(looked('change-not-told', { thenAndNow })).toMatchObject({ variant: known, before: 0.5, now: 0.6 });
    const without = changed(thenAndNowLike(), (value) => ({
      ...value,
      changes: value.changes.filter(({ of }) => of !== 'in-range'),
    }));
    expect(looked('change-not-told', { thenAndNow: without }).case).toBe('absent');
  });
});

test('a coefficient of variation is judged only where the targets have a limit', () => {
  const cv: Measures['cv'] = { ok: true, value: 45, n: 4032, of: 'readings' };
  expect(looked('cv-over-limit', { cv }).case).toBe('holds');
  expect(looked('cv-over-limit', { cv }, 'pregnancy-type-1')).toEqual({ case: 'untold', why: 'not-for-these-targets' });
});

test('fast falls without a largest one are not told', () => {
  const rates = changed(ratesLike(0.02), (value) => ({ ...value, largest: null }));
  expect(looked('fast-falls', { rates }).case).toBe('absent');
});

test('days are told once each, in order', () => {
  expect(dates(['2024-01-03', '2024-01-01', '2024-01-03'] as never)).toMatchObject({
    value: ['2024-01-01', '2024-01-03'],
  });
});
