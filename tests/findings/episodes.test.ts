import { describe, expect, test } from 'vitest';
import { daysOf, evidenceOf, extremes, minutesInWindow } from '../../src/findings/evidence/episodes.ts';
import type { Episode } from '../../src/model/measures.ts';
import { highsLike, lowsLike } from '../support/examples/episodes.ts';
import { exampleDate, mg } from '../support/examples/measures.ts';

function listOf(given: ReturnType<typeof lowsLike>): Episode[] {
  if (!given.ok) throw new Error(given.why);
  return given.value.list;
}

const furthest = (list: Episode[]) => {
  const { extreme } = extremes(list).furthest;
  return extreme;
};

describe('the furthest of several', () => {
  test.each([[[200, 240, 300]], [[300, 240, 200]], [[240, 300, 200]]])('highs: %j', (values) => {
    const list = listOf(highsLike(...values.map((value) => ({ extreme: mg(value) }))));
    expect([furthest(list), extremes(list).extreme]).toEqual([300, { q: 'glucose', value: 300, limit: 0 }]);
  });

  test('of equals the first, but for one beyond the range of the sensor', () => {
    const list = listOf(lowsLike({ extreme: mg(40) }, { extreme: mg(40) }, { extreme: mg(40), extremeLimit: -1 }));
    expect(extremes(list.slice(0, 2)).furthest).toBe(list[0]);
    for (const order of [list, list.toReversed()]) expect(extremes(order).furthest).toBe(list[2]);
    const beyond = list.map((each) => ({ ...each, extremeLimit: -1 as const }));
    expect(extremes(beyond).furthest).toBe(beyond[0]);
  });
});

describe('minutes in a clock window, by day', () => {
  const high = (startMinute: number, minutes: number) => listOf(highsLike({ startMinute, minutes }))[0]!;

  test.each<[string, number, number, [number, number][]]>([
    ['inside', 800, 60, [[0, 60]]],
    ['over its beginning', 700, 60, [[0, 40]]],
    ['over its end', 940, 60, [[0, 20]]],
    ['over all of it', 600, 600, [[0, 240]]],
    ['ends where it opens', 600, 120, []],
    ['begins where it closes', 960, 60, []],
    ['over midnight into the next', 1400, 800, [[1, 40]]],
    [
      'on two days',
      900,
      1440,
      [
        [0, 60],
        [1, 180],
      ],
    ],
    [
      'on three',
      900,
      2880,
      [
        [0, 60],
        [1, 240],
        [2, 180],
      ],
    ],
  ])('12:00 to 16:00: %s', (_, start, minutes, days) => {
    const found = [...minutesInWindow(high(start, minutes), 720, 960)];
    expect(found).toEqual(days.map(([day, inside]) => [exampleDate(day), inside]));
  });

  test('a window from midnight on', () => {
    expect([...minutesInWindow(high(1380, 120), 0, 360)]).toEqual([[exampleDate(1), 60]]);
    expect([...minutesInWindow(high(1380, 60), 0, 360)]).toEqual([]);
  });
});

test('days are told once and in order, and beyond the outer limit only those that were', () => {
  const list = listOf(lowsLike({ startMinute: 1430, minutes: 30, outerMinutes: 5 }, { date: exampleDate(0) }));
  const where = list.toReversed().flatMap((each) => evidenceOf(each));
  expect(daysOf([...where].reverse())).toEqual([exampleDate(0), exampleDate(1)]);
  expect(evidenceOf(list[0]!, true).map(({ date }) => date)).toEqual([exampleDate(0)]);
});
