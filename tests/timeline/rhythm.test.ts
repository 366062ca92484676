import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Timeline } from '../../src/model/timeline.ts';
import { DAY_MS, MINUTE_MS } from '../../src/time/calendar.ts';
import { slackOf, usualStep } from '../../src/timeline/steps.ts';
import { built, fileOf, type Row, rowsOf, timelineOf } from '../support/timeline.ts';

const FROM = Date.UTC(2026, 2, 2);
const sum = (values: Iterable<number>) => [...values].reduce((total, value) => total + value, 0);
const weights = ({ readings }: Timeline) => [...readings.weight];

/** A timeline from the minutes after midnight of 2026-03-02 at which readings stand, over the days given. */
function at(minutes: number[], days = 14): Timeline {
  const rows: Row[] = minutes.map((minute) => ({ wall: FROM + minute * MINUTE_MS, native: 100 }));
  return built([fileOf(rows)], {
    period: { from: '2026-03-02', to: new Date(FROM + (days - 1) * DAY_MS).toISOString().slice(0, 10) },
  });
}

const every = (step: number, from: number, to: number): number[] =>
  Array.from({ length: Math.ceil((to - from) / step) }, (_, k) => from + k * step);

describe('interval', () => {
  // 14 days hold 20160, 4032, 1344 readings at 1, 5, 15 minutes (arithmetic); the others follow the same way.
  it.each([
    [1, 20160, 20],
    [3, 6720, 20],
    [5, 4032, 20],
    [10, 2016, 20],
    [15, 1344, 30],
    [30, 672, 60],
  ])('%d minutes: %d readings in 14 days, gap rule %d', (step, count, gap) => {
    const timeline = timelineOf({ every: step, value: () => 100 });
    expect(timeline.readings.count).toBe(count);
    expect(timeline.interval).toBe(step);
    expect(timeline.gapMinutes).toBe(gap);
    expect(timeline.mixed).toBe(false);
    expect(timeline.gaps).toEqual([]);
    expect(timeline.spells).toHaveLength(1);
    expect(sum(timeline.readings.weight)).toBe(14 * 1440);
  });

  it('sees through seconds of jitter, and counts readings all the same', () => {
    const jitter = (k: number) => [0.2, -0.3, 0.1, 0, -0.15][k % 5]!;
    const timeline = at(every(5, 0.5, 14 * 1440).map((minute, k) => minute + jitter(k)));
    expect(timeline.interval).toBe(5);
    expect(timeline.mixed).toBe(false);
    expect(new Set(weights(timeline)).size).toBe(1);
    expect(timeline.readings.weight[0]).toBeCloseTo(5, 3);
  });

  it('does not stretch a clock that runs fast beyond the time there is', () => {
    const timeline = at(every(298 / 60, 0, 10 * 1440), 10);
    expect(timeline.interval).toBe(5);
    expect(sum(timeline.readings.weight)).toBeLessThanOrEqual(10 * 1440 + 5);
  });

  /** From which share on a step is the usual one is ours. */
  const usual = (...steps: number[]) => {
    const times = [0, ...steps.map((_, k) => steps.slice(0, k + 1).reduce((a, b) => a + b))];
    return usualStep(
      Float64Array.from(times, (minute) => minute * MINUTE_MS),
      0,
      times.length,
    );
  };
  const many = (times: number, ...steps: number[]): number[] => Array.from({ length: times }, () => steps).flat();

  it.each([
    ['three of five steps', many(20, 5, 8, 5, 8, 5), 5, 1],
    ['four of seven steps, where every second keeps another', many(20, 5, 8, 5, 8, 5, 8, 5), 13, 2],
    // Every third reading of 5 minutes is lost most of the time: of the second steps 1.46 or 1.54 times as many agree.
    [
      'more than half of the steps, and not 1.5 times as many of the second',
      [...many(890, 5, 10), ...many(110, 5, 5, 5)],
      5,
      1,
    ],
    [
      'more than half of the steps, and more than 1.5 times as many of the second',
      [...many(910, 5, 10), ...many(90, 5, 5, 5)],
      15,
      2,
    ],
  ])('is clear from %s', (_, steps, interval, lag) => {
    expect(usual(...steps)).toMatchObject({ interval, lag });
  });

  it.each([
    ['more than half of the steps near it', [...many(52, 5), ...many(48, 6)], 5],
    ['where none is, as their mean, to half a minute', [...many(47, 5), ...many(27, 5.5), ...many(26, 6)], 5.5],
    ['up to two hours', many(20, 120), 120],
  ])('is told from %s', (_, steps, interval) => {
    expect(usual(...steps)?.interval).toBe(interval);
  });

  it('is not told from steps of more than two hours', () => {
    expect(usual(...many(20, 120.5))).toBeUndefined();
  });

  it('is told from a lone reading by no one', () => {
    const timeline = at([600], 1);
    expect(timeline.interval).toBe(5);
    expect(weights(timeline)).toEqual([5]);
  });
});

describe('spells', () => {
  it('split where the interval changes, at the very reading', () => {
    const change = 6 * 1440 + 617;
    const timeline = at([...every(5, 0, change), ...every(15, change, 14 * 1440)]);
    expect(timeline.spells.map(({ interval }) => interval)).toEqual([5, 15]);
    expect((timeline.spells[1]!.from - FROM) / MINUTE_MS).toBe(change);
    expect(timeline.mixed).toBe(true);
    expect(timeline.interval).toBe(15);
  });

  it('split after five days at a pause of an hour, called a change', () => {
    const timeline = at([...every(5, 0, 6 * 1440), ...every(5, 6 * 1440 + 62, 14 * 1440)]);
    expect(timeline.spells.map(({ count }) => count)).toEqual([6 * 288, 8 * 288 - 12]);
    expect(timeline.gaps.map(({ kind, minutes }) => [kind, minutes])).toEqual([['change', 67]]);
    expect(timeline.mixed).toBe(false);
  });

  it.each([
    [60, 1],
    [65, 1],
    [75, 1],
    [85, 1],
    [90, 2],
    [120, 2],
    [67, 2],
    [72, 2],
  ])('after six days and a pause of %d minutes on a grid of five are %d', (pause, spells) => {
    const timeline = at([...every(5, 0, 6 * 1440), ...every(5, 6 * 1440 - 5 + pause, 14 * 1440)]);
    expect(timeline.spells).toHaveLength(spells);
    expect(timeline.gaps.map(({ kind }) => kind)).toEqual([spells === 1 ? 'hole' : 'change']);
  });

  it('of two wears a year apart are two, however short the first', () => {
    const year = 365 * 1440;
    const timeline = at([...every(5, 0, 2 * 1440), ...every(5, year, year + 3 * 1440)], 370);
    expect(timeline.spells.map(({ count }) => count)).toEqual([2 * 288, 3 * 288]);
    expect(timeline.gaps[0]).toMatchObject({ kind: 'change', minutes: year - 2 * 1440 + 5 });
    expect(at([...every(5, 0, 2 * 1440), ...every(5, 15 * 1440, 18 * 1440)], 18).spells).toHaveLength(1);
  });

  it('do not split before five days, nor at a shorter pause', () => {
    const timeline = at([
      ...every(5, 0, 4 * 1440),
      ...every(5, 4 * 1440 + 120, 8 * 1440),
      ...every(5, 8 * 1440 + 50, 14 * 1440),
    ]);
    expect(timeline.spells).toHaveLength(1);
    expect(timeline.gaps.map(({ kind }) => kind)).toEqual(['hole', 'hole']);
  });

  it('do not take an interval from a handful of readings', () => {
    const timeline = at([...every(5, 0, 6 * 1440), ...every(20, 6 * 1440 + 120, 6 * 1440 + 200)], 7);
    expect(timeline.spells.map(({ interval, count }) => [interval, count])).toEqual([
      [5, 1728],
      [5, 4],
    ]);
    expect(timeline.mixed).toBe(false);
  });

  it('split on the last day, so that a new sensor counts for what it is', () => {
    const timeline = at([...every(3, 0, 3 * 1440 + 600), ...every(15, 4 * 1440 - 180, 4 * 1440)], 4);
    expect(timeline.spells.map(({ interval, count }) => [interval, count])).toEqual([
      [3, 1640],
      [15, 12],
    ]);
    expect(weights(timeline).at(-1)).toBe(15);
  });

  it('are not made by readings lost on a day with pauses', () => {
    // Every second reading of a morning between two pauses of an hour: half an hour between them, and still one sensor.
    const morning = [...every(30, 3 * 1440 + 60, 3 * 1440 + 360), 3 * 1440 + 375, 3 * 1440 + 390, 3 * 1440 + 405];
    const rest = every(15, 3 * 1440 + 480, 6 * 1440);
    const timeline = at([...every(15, 0, 3 * 1440), ...morning, ...rest], 6);
    expect(timeline.spells.map(({ interval }) => interval)).toEqual([15]);
    expect(timeline.mixed).toBe(false);
  });

  it('begin after the pause where steps before it are of neither sensor', () => {
    const lost = every(10, 5 * 1440 - 5, 5 * 1440 + 15);
    const timeline = at([...every(5, 0, 5 * 1440 - 10), ...lost, ...every(15, 5 * 1440 + 120, 10 * 1440)], 10);
    expect((timeline.spells[1]!.from - FROM) / MINUTE_MS).toBe(5 * 1440 + 120);
  });

  it('have the interval of the one before when too short to tell their own', () => {
    const worn = [...every(3, 0, 2 * 1440), ...every(15, 2 * 1440 + 90, 8 * 1440)];
    const timeline = at([...worn, ...every(15, 8 * 1440 + 67, 8 * 1440 + 127)], 9);
    expect(timeline.spells.map(({ interval }) => interval)).toEqual([3, 15, 15]);
  });

  it('tell the interval of most time together, however often a sensor was changed', () => {
    const fifteen = [0, 6, 12].flatMap((day) => every(15, (8 + day) * 1440 + 90, (14 + day) * 1440));
    const timeline = at([...every(5, 0, 8 * 1440), ...fifteen], 26);
    expect(timeline.spells.map(({ interval }) => interval)).toEqual([5, 15, 15, 15]);
    expect(timeline.interval).toBe(15);
  });

  it.each([
    ['as long, after five days to the minute', 5 * 1440 + 8, 60, 2],
    ['a minute shorter', 5 * 1440 + 8, 59, 1],
    ['as long, a reading before five days are over', 5 * 1440, 60, 1],
  ])('split at a pause of an hour, called a change: %s', (_, worn, pause, spells) => {
    // Eight minutes never fill an hour, so the grid behind the pause is another.
    const next = worn - 8 + pause;
    expect(at([...every(8, 0, worn), ...every(8, next, 9 * 1440)], 9).spells).toHaveLength(spells);
  });

  it('count their days anew after each change', () => {
    const worn = [
      ...every(5, 0, 6 * 1440),
      ...every(5, 6 * 1440 + 90, 8 * 1440),
      ...every(5, 8 * 1440 + 90, 10 * 1440),
    ];
    expect(at(worn, 10).gaps.map(({ kind }) => kind)).toEqual(['change', 'hole']);
  });

  it('stand in the order of time, whether a pause or another interval tells them', () => {
    const pause = [...every(5, 0, 6 * 1440), ...every(5, 6 * 1440 + 90, 10 * 1440)];
    const timeline = at([...pause, ...every(15, 10 * 1440 + 90, 12 * 1440)], 12);
    expect(timeline.spells.map(({ interval, count }) => [interval, count])).toEqual([
      [5, 6 * 288],
      [5, 4 * 288 - 18],
      [15, 2 * 96 - 6],
    ]);
  });

  it('tell the interval of most time, not the last one nor that of fewest readings', () => {
    expect(at([...every(5, 0, 8 * 1440), ...every(15, 8 * 1440, 14 * 1440)]).interval).toBe(5);
  });

  it('tell the interval of a new sensor from twelve readings, though a few among them are lost', () => {
    // Nine of eleven steps are of 15 minutes: 82 %, where four fifths are asked.
    const began = 4 * 1440 - 240;
    const seen = every(15, began, began + 15 * 14).filter((_, k) => k !== 4 && k !== 8);
    const timeline = at([...every(3, 0, 3 * 1440 + 600), ...seen], 4);
    expect(timeline.spells.map(({ interval, count }) => [interval, count])).toEqual([
      [3, 1640],
      [15, 12],
    ]);
  });

  it.each([
    [12, [3, 15]],
    [11, [3]],
  ])('tell the interval of a new sensor from %d readings: %j', (readings, intervals) => {
    const began = 4 * 1440 - 15 * readings;
    const timeline = at([...every(3, 0, 3 * 1440 + 600), ...every(15, began, 4 * 1440)], 4);
    expect(timeline.spells.map(({ interval }) => interval)).toEqual(intervals);
  });

  it.each([
    // 15, 15, 30, 30 minutes all day: 32 of 63 steps are of 15 minutes; 28 of 59 where twice a day 45 and 45 stand for them.
    ['half of the steps', 0, [5, 15]],
    ['less than half of them', 2, [5]],
  ])('change with the interval of whole days in which it is %s', (_, longer, intervals) => {
    const days = every(90, 5 * 1440, 10 * 1440).flatMap((minute, block) =>
      (block % 16 < longer ? [0, 45] : [0, 15, 30, 60]).map((after) => minute + after),
    );
    expect(at([...every(5, 0, 5 * 1440), ...days], 10).spells.map(({ interval }) => interval)).toEqual(intervals);
  });

  it('change with the interval of whole days of which a third is lost', () => {
    // Two of three steps are of 15 minutes: more than half, as a whole day needs, and less than a part of a day needs.
    const thinned = every(15, 5 * 1440, 10 * 1440).filter((_, k) => k % 4 !== 3);
    const timeline = at([...every(5, 0, 5 * 1440), ...thinned], 10);
    expect(timeline.spells.map(({ interval }) => interval)).toEqual([5, 15]);
  });

  it('begin after the longest pause, though steps of neither sensor follow it', () => {
    const began = 5 * 1440 + 120;
    const timeline = at([...every(5, 0, 5 * 1440), began, ...every(15, began + 30, 10 * 1440)], 10);
    expect((timeline.spells[1]!.from - FROM) / MINUTE_MS).toBe(began);
  });

  it.each([
    [1, 0.4],
    [3, 1],
    [5, 1.25],
    [15, 3.75],
  ])('keep an interval of %d minutes within %d of it (rule ours)', (interval, slack) => {
    expect(slackOf(interval)).toBe(slack);
  });

  it('are not made by a day with many extra rows', () => {
    const extra = every(7, 3 * 1440 + 600, 3 * 1440 + 700);
    const timeline = at([...new Set([...every(15, 0, 14 * 1440), ...extra])]);
    expect(timeline.spells).toHaveLength(1);
    expect(timeline.interval).toBe(15);
  });
});

describe('gaps', () => {
  it.each([
    [15, []],
    [20, ['hole']],
  ])('a pause of %d missing minutes at 5: %j', (missing, kinds) => {
    // The pause between readings is one interval longer than the minutes left out; the rule is longer than 20.
    const timeline = timelineOf({ days: 3, value: () => 100, without: [{ day: 1, from: 600, to: 600 + missing }] });
    expect(timeline.gaps.map(({ kind }) => kind)).toEqual(kinds);
  });

  it('reach from the edges of the period', () => {
    const timeline = at(every(5, 1440 + 600, 3 * 1440 - 300), 4);
    expect(timeline.gaps.map(({ kind, minutes }) => [kind, minutes])).toEqual([
      ['edge', 1440 + 600],
      ['edge', 1440 + 305],
    ]);
  });
});

describe('weights', () => {
  it('count a reading before a missing one as any other', () => {
    const timeline = timelineOf({ days: 2, value: () => 100, without: [{ from: 600, to: 605 }] });
    expect(timeline.mixed).toBe(false);
    expect(new Set(weights(timeline))).toEqual(new Set([5]));
  });

  it('share the interval with rows in between, never beyond the time there is', () => {
    const grid = every(15, 0, 14 * 1440);
    const scans = every(15, 0, 14 * 1440)
      .filter((_, k) => k % 40 === 0)
      .map((minute) => minute + 4);
    const timeline = at([...grid, ...scans]);
    expect(timeline.mixed).toBe(false);
    expect(sum(timeline.readings.weight)).toBeCloseTo(14 * 1440, 6);
  });

  it('are min(time to next, 1.5 intervals) where steps are mixed', () => {
    const between = every(15, 0, 7 * 1440).map((minute, k) => minute + [3, 7, 10][k % 3]!);
    const timeline = at([...every(15, 0, 7 * 1440), ...between], 7);
    expect(timeline.mixed).toBe(true);
    expect(timeline.interval).toBe(15);
    expect(new Set(weights(timeline).slice(0, -1))).toEqual(new Set([3, 12, 7, 8, 10, 5]));
    const split = at([
      ...every(5, 0, 7 * 1440),
      ...every(15, 7 * 1440, 10 * 1440),
      ...every(15, 10 * 1440 + 67, 14 * 1440),
    ]);
    expect(split.mixed).toBe(true);
    expect(Math.max(...weights(split))).toBe(22.5);
  });

  it('of any stretch never exceed the time it lasts by more than one interval', () => {
    const steps = fc.array(fc.constantFrom(0.25, 1, 2, 4, 5, 5, 5, 5, 5.1, 7, 10, 15, 45, 600), {
      minLength: 1,
      maxLength: 300,
    });
    fc.assert(
      fc.property(steps, (gaps) => {
        let minute = 0;
        const minutes = gaps.map((step) => {
          minute += step;
          return minute;
        });
        const { readings, interval, spells } = at(minutes, 120);
        let from = 0;
        let total = 0;
        const most = Math.max(interval, ...spells.map((spell) => spell.interval));
        for (let i = 0; i < readings.count; i++) {
          total += readings.weight[i]!;
          const lasted = (readings.at[i]! - readings.at[from]!) / MINUTE_MS;
          expect(total).toBeLessThanOrEqual(lasted + 1.5 * most + 1e-6);
        }
        from = 0;
      }),
      { numRuns: 60 },
    );
  });
});

it('keeps rows on the builder in step with what it promises', () => {
  const rows = rowsOf({ days: 2, every: 15, value: (minute) => (minute < 60 ? null : 100) });
  expect(rows).toHaveLength(2 * 92);
});
