import { describe, expect, it } from 'vitest';
import type { Issue } from '../../src/model/input.ts';
import { DAY_MS, MINUTE_MS } from '../../src/time/calendar.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { shown } from '../support/inWords.ts';
import { built, fileOf, type Row } from '../support/timeline.ts';

/** Places where the smallest slip in the code would move a reading, a pause or a unit. */

const FROM = Date.UTC(2026, 2, 2);
const at = (minute: number, row: Omit<Row, 'wall'> = { native: 100 }): Row => ({
  wall: FROM + minute * MINUTE_MS,
  ...row,
});
const stream = (from: number, to: number, step = 5): Row[] =>
  Array.from({ length: (to - from) / step }, (_, k) => at(from + k * step));

describe('readings at one instant', () => {
  const settled = (...rows: Row[]) => {
    const { timeline, issues, total } = buildTimeline([fileOf([...rows, at(905)])], {});
    return { values: [...timeline!.readings.native].slice(0, -1), issues, total };
  };

  it('one number in two units is two values', () => {
    const { values, total } = settled(at(900, { native: 22 }), at(900, { native: 22, unit: 'mmol/L' }));
    expect(values).toEqual([]);
    expect(total).toMatchObject({ used: 1, duplicate: 0, setAside: 2 });
  });

  it('a third that says something else is heard, though the first two agree', () => {
    const { values, total } = settled(...[130, 130, 60].map((native) => at(900, { native })));
    expect(values).toEqual([]);
    expect(total).toMatchObject({ used: 1, duplicate: 1, setAside: 2 });
  });

  it('below and above one bound are two values', () => {
    expect(settled(at(900, { native: 40, limit: -1 }), at(900, { native: 40, limit: 1 })).values).toEqual([]);
  });

  it('are told with their signs', () => {
    const low: Row = at(900, { native: 40, limit: -1 });
    const actual = ({ issues }: { issues: Issue[] }) => shown(issues[0]!.actual);
    expect(actual(settled(low, at(900, { native: Number.NaN, limit: 1 })))).toBe(
      '< 40 mg/dL (made.csv:2); > ? mg/dL (made.csv:3)',
    );
  });

  it('are listed one by one up to fifty, and then counted', () => {
    const pairs = (n: number) => Array.from({ length: n }, (_, k) => [at(k * 5), at(k * 5, { native: 200 })]).flat();
    const codes = (n: number) =>
      buildTimeline([fileOf([...pairs(n), ...stream(900, 8400)])], {}).issues.map(({ code, count }) => [code, count]);
    expect(codes(50)).toEqual(Array.from({ length: 50 }, () => ['contradiction', undefined]));
    expect(codes(60)).toEqual([
      ...Array.from({ length: 50 }, () => ['contradiction', undefined]),
      ['contradictions', 60],
    ]);
  });
});

describe('a pause', () => {
  it.each([
    [20, []],
    [21, [21]],
  ])('of %d minutes between readings every five', (pause, gaps) => {
    const { readings, gaps: found } = built([fileOf([...stream(0, 600), ...stream(595 + pause, 1195 + pause)])]);
    expect(readings.count).toBe(240);
    expect(found.filter(({ kind }) => kind === 'hole').map(({ minutes }) => minutes)).toEqual(gaps);
  });

  it('of exactly the rule at the edge of the period is none', () => {
    const { gaps } = built([fileOf(stream(20, 1425))], { period: { days: 1 } });
    expect(gaps).toEqual([]);
    const [edge] = built([fileOf(stream(25, 1425))], { period: { days: 1 } }).gaps;
    expect(edge).toMatchObject({ minutes: 25, kind: 'edge' });
  });
});

describe('the unit shown', () => {
  const units = (mgdl: number, mmol: number) =>
    built([
      fileOf(
        Array.from({ length: mgdl + mmol }, (_, k) => at(k * 5, { native: 5, unit: k < mmol ? 'mmol/L' : 'mg/dL' })),
      ),
    ]);
  it.each([
    [11, 10, 'mg/dL', 10],
    [10, 10, 'mg/dL', 10],
    [10, 11, 'mmol/L', 10],
  ] as const)('of %d readings in mg/dL and %d in mmol/L is %s', (mgdl, mmol, unit, others) => {
    const timeline = units(mgdl, mmol);
    expect(timeline.unit).toBe(unit);
    expect(timeline.issues.find(({ code }) => code === 'units-mixed')).toMatchObject({ expected: unit, count: others });
  });
});

describe('weights', () => {
  it('count readings one by one, however many between them are missing', () => {
    const rows = stream(0, 5 * 1440).filter((_, k) => k % 4 !== 3);
    const { mixed, readings } = built([fileOf(rows)]);
    expect(mixed).toBe(false);
    expect(new Set(readings.weight)).toEqual(new Set([5]));
  });

  it.each([
    [20, false],
    [21, true],
  ])('go by time where more than a twentieth of 400 steps are uneven (ours): %d', (uneven, mixed) => {
    let minute = 0;
    const rows = Array.from({ length: 401 }, (_, k) => {
      minute += k === 0 ? 0 : k % 19 === 0 && k <= 19 * uneven ? 7 : 5;
      return at(minute);
    });
    expect(built([fileOf(rows)]).mixed).toBe(mixed);
  });

  it('take no notice of how long pauses last', () => {
    const hours = Array.from({ length: 60 }, (_, k) => stream(k * 93, k * 93 + 25)).flat();
    expect(built([fileOf(hours)]).mixed).toBe(false);
  });
});

describe('an hour the clocks showed twice, passed once (Helsinki, 26 October 2025, 03:00 to 04:00)', () => {
  const night = Date.UTC(2025, 9, 26);
  const once = (before: number, after: number): Row[] => {
    const wall = (minute: number): Row => ({ wall: night + minute * MINUTE_MS, native: 100 });
    const earlier = Array.from({ length: 20 }, (_, k) => wall(180 - before - (19 - k) * 5));
    const within = Array.from({ length: 12 }, (_, k) => wall(180 + k * 5));
    const later = Array.from({ length: 20 }, (_, k) => wall(235 + after + k * 5));
    return [...earlier, ...within, ...later];
  };
  const FIRST = night;
  const SECOND = night + 60 * MINUTE_MS;

  it.each([
    ['joins what is before', 5, 40, FIRST, false],
    ['joins what is after', 40, 5, SECOND, false],
    ['half an hour still joins', 30, 40, FIRST, false],
    ['half an hour still joins, after', 40, 30, SECOND, false],
    ['a minute more does not', 31, 40, FIRST, true],
    ['a minute more does not, after', 40, 31, FIRST, true],
    ['joins neither: the first, and it is said', 40, 40, FIRST, true],
    ['joins both: the first, and it is said', 5, 5, FIRST, true],
  ])('%s', (_, before, after, start, noticed) => {
    const { timeline, issues } = buildTimeline([fileOf(once(before, after))], { zone: 'Europe/Helsinki' });
    expect(timeline!.readings.at[20]).toBe(start);
    const notes = issues.filter(({ code }) => code === 'doubled-hour');
    expect(notes.map(({ level, count }) => [level, count])).toEqual(noticed ? [['note', 12]] : []);
  });

  /** The night as a file has it that goes on through both passes; `from` and `hours` in real time. */
  const both = (from: number, hours: number): Row[] =>
    Array.from({ length: hours * 12 }, (_, k) => {
      const instant = from + k * 5 * MINUTE_MS;
      const offset = instant < SECOND ? 180 : 120;
      return { wall: instant + offset * MINUTE_MS, native: 100 + (k % 7) };
    });

  it('a night given twice in one file is a night and its copy, not one long riddle', () => {
    const whole = both(night - 120 * MINUTE_MS, 6);
    const { timeline, total, issues } = buildTimeline([fileOf([...whole, ...whole])], { zone: 'Europe/Helsinki' });
    expect(total).toMatchObject({ used: 72, duplicate: 72, setAside: 0 });
    expect(timeline!.readings.count).toBe(72);
    expect(issues.filter(({ code }) => code === 'doubled-hour')).toEqual([]);
  });

  it('a row given twice within the hour is a copy, and no third pass', () => {
    const whole = both(night - 120 * MINUTE_MS, 6);
    const k = whole.findIndex(({ wall }) => wall === night + 210 * MINUTE_MS);
    const { timeline, total, issues } = buildTimeline([fileOf([...whole.slice(0, k), whole[k]!, ...whole.slice(k)])], {
      zone: 'Europe/Helsinki',
    });
    expect(total).toMatchObject({ used: 72, duplicate: 1, setAside: 0 });
    expect([...timeline!.readings.at]).toEqual(Array.from({ length: 72 }, (_, n) => night + (n * 5 - 120) * MINUTE_MS));
    expect(issues.filter(({ code }) => code === 'doubled-hour')).toEqual([]);
  });

  it('two autumns side by side are two nights', () => {
    const year = 364 * DAY_MS;
    const hour = both(FIRST, 2).filter(({ wall }) => wall >= night + 180 * MINUTE_MS && wall < night + 240 * MINUTE_MS);
    const before = hour.map((row) => ({ ...row, wall: row.wall - year }));
    const { readings } = built([fileOf([...before, ...hour])], { zone: 'Europe/Helsinki', period: { days: 400 } });
    expect(readings.at[0]).toBe(FIRST - year);
    expect([...readings.at].slice(-24)).toEqual(Array.from({ length: 24 }, (_, k) => FIRST + k * 5 * MINUTE_MS));
  });

  it('says once for a file what it could not tell, and looks no further than the night', () => {
    const rows = [...once(40, 40), ...stream(1440, 2000).map((row) => ({ ...row, wall: row.wall - 120 * DAY_MS }))];
    const { issues } = buildTimeline([fileOf(rows)], { zone: 'Europe/Helsinki' });
    expect(issues.filter(({ code }) => code === 'doubled-hour')).toHaveLength(1);
  });
});
