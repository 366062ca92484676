import { describe, expect, test } from 'vitest';
import { type FindingId, findings } from '../../src/findings/index.ts';
import type { Look } from '../../src/model/look.ts';
import type { Measures } from '../../src/model/measures.ts';
import { targetSets } from '../../src/targets/index.ts';
import { mgPerDl } from '../../src/units.ts';
import { longHighsLike, lowsLike, reboundsLike } from '../support/examples/episodes.ts';
import { daysLike, nightsLike, seenCoverage } from '../support/examples/measures.ts';
import { onlyMeasured } from '../support/measures.ts';

function look(id: FindingId, given: Partial<Measures>) {
  const seen: Look = findings.find((one) => one.id === id)!.look(onlyMeasured(given), targetSets.adult);
  if (seen.case !== 'holds') throw new Error(`${id} is ${seen.case}`);
  return { ...seen, days: [...new Set(seen.where.map(({ date }) => date))] };
}

const overMidnight = { startMinute: 1395, minutes: 114, level: 2 as const, outerMinutes: 69 };
const both = ['2024-01-01', '2024-01-02'];

describe('what lasts over midnight is seen on every day it touches', () => {
  test('a high of three days, very high on two of them', () => {
    const days = [
      { date: '2024-01-01' as never, fromMinute: 1320, toMinute: 1440, outerMinutes: 0 },
      { date: '2024-01-02' as never, fromMinute: 0, toMinute: 1440, outerMinutes: 1050 },
      { date: '2024-01-03' as never, fromMinute: 0, toMinute: 300, outerMinutes: 60 },
    ];
    const seen = look('long-very-high', {
      longHighs: longHighsLike({}, { minutes: 1860, level: 2, outerMinutes: 1110, days }),
    });
    expect(seen.days).toEqual(['2024-01-02', '2024-01-03']);
    expect(seen.params).toMatchObject({
      span: { value: 'through' },
      dates: { value: ['2024-01-02'] },
      last: { value: ['2024-01-03'] },
    });
  });

  test('a very low glucose', () => {
    const seen = look('very-low', { lows: lowsLike(overMidnight) });
    expect(seen.days).toEqual(both);
    expect(seen.params).toMatchObject({ night: { value: 0 }, into: { value: 1 } });
    expect(seen.params).toMatchObject({ span: { value: 'through' }, dates: { value: ['2024-01-01'] } });
    expect(seen.params).toMatchObject({ last: { value: ['2024-01-02'] }, days: { value: 1 } });
  });

  test('two lows, one of them over midnight, are two days and not three', () => {
    const seen = look('very-low', {
      lows: lowsLike(overMidnight, { level: 2, outerMinutes: 20, date: '2024-01-05' as never }),
    });
    expect(seen.params).toMatchObject({
      span: { value: 'days' },
      dates: { value: ['2024-01-01', '2024-01-05'] },
      days: { value: 2 },
    });
    expect(seen.days).toEqual([...both, '2024-01-05']);
  });

  test('a long low', () => {
    expect(look('long-lows', { lows: lowsLike({ ...overMidnight, minutes: 150 }) }).days).toEqual(both);
  });

  test('lows are counted on the day they begin, as page 1 and the paper for the person count them', () => {
    const daily = daysLike([0.9, 0.9]);
    if (!daily.ok) throw new Error(daily.why);
    // The part after midnight is no "day with less than 15 minutes".
    for (const day of daily.value) day.minutes.low = 30;
    const seen = look('lows-seen', { lows: lowsLike(overMidnight), coverage: seenCoverage(14, 1), daily });
    expect(seen.days).toEqual(['2024-01-01']);
    expect(seen.params).toMatchObject({ days: { value: 1 }, often: { k: 1, n: 14 }, shortDays: { value: 0 } });
  });

  test('a high that begins after a low of the evening before', () => {
    const rebounds = reboundsLike(2, 5);
    if (!rebounds.ok) throw new Error(rebounds.why);
    for (const one of rebounds.value.list) one.highDate = '2024-01-03' as never;
    expect(look('rebound-after-lows', { rebounds }).days.sort()).toEqual([...both, '2024-01-03']);
  });

  test('what is told of beginnings names the days of beginning', () => {
    const three = [{ startMinute: 1400, minutes: 90 }, { startMinute: 1405 }, { startMinute: 1410 }];
    const seen = look('lows-clustered', { lows: lowsLike(...three), coverage: seenCoverage(9, 1) });
    expect(seen.days).toEqual([...both, '2024-01-03']);
  });

  test('one low over midnight is not two days of lows the averages hide', () => {
    const finding = findings.find(({ id }) => id === 'lows-averages-hide')!;
    const given = { lows: lowsLike(overMidnight), coverage: seenCoverage(14, 1) };
    expect(finding.look(onlyMeasured(given), targetSets.adult).case).toBe('absent');
  });
});

describe("a value at the sensor's limit is told as a bound", () => {
  test('the lowest of the nights', () => {
    const night = { state: 'very-low' as const, lowest: mgPerDl(40), lowestLimit: -1 as const };
    expect(look('lows-at-night', { nights: nightsLike(14, {}, night) }).params.lowest).toMatchObject({ limit: -1 });
  });

  test('the peak of highs after lows', () => {
    const rebounds = reboundsLike(2, 5);
    if (!rebounds.ok) throw new Error(rebounds.why);
    Object.assign(rebounds.value.list[1]!, { peak: mgPerDl(400), peakLimit: 1 });
    expect(look('rebound-after-lows', { rebounds }).params.peak).toMatchObject({ value: 400, limit: 1 });
  });
});
