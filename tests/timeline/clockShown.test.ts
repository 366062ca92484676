import { describe, expect, it } from 'vitest';
import { DAY_MS, MINUTE_MS } from '../../src/time/calendar.ts';
import { AS_WRITTEN } from '../../src/time/clock.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { placeFile } from '../../src/timeline/place.ts';
import { inWords } from '../support/inWords.ts';
import { built, fileOf, type Row } from '../support/timeline.ts';

/** What is shown where clocks leave it open, and how far the clock that was chosen reaches. */

const wall = (text: string) => Date.parse(`${text}Z`);
const row = (text: string, offset?: number): Row => ({
  wall: wall(text),
  native: 100,
  ...(offset === undefined ? {} : { offset }),
});
const named = (name: string, ...rows: Row[]) => fileOf(rows, [], undefined, name);
const issuesOf = (files: ReturnType<typeof fileOf>[], settings = {}) =>
  buildTimeline(files, settings).issues.map(inWords);

describe('a refusal shows a row of each side, as it stands', () => {
  it('of two zones', () => {
    const files = [
      { ...named('a.csv', row('2026-03-02T08:00')), zone: 'Europe/Oslo' },
      named('c.csv', row('2026-03-02T07:00')),
      { ...named('b.csv', row('2026-03-02T09:30')), zone: 'Asia/Tokyo' },
    ];
    expect(issuesOf(files)).toMatchObject([
      {
        code: 'zones-differ',
        actual: 'Europe/Oslo, Asia/Tokyo',
        expected: 'Europe/Oslo: 2026-03-02 08:00 (a.csv, line 2); Asia/Tokyo: 2026-03-02 09:30 (b.csv, line 2)',
      },
    ]);
  });

  it('of rows with and without an offset', () => {
    const rows = [row('2026-03-02T08:00'), row('2026-03-02T08:05', 120), row('2026-03-02T08:10', -210)];
    expect(issuesOf([named('a.csv', ...rows)])).toMatchObject([
      {
        code: 'offsets-missing',
        actual: '2026-03-02 08:05 +02:00 (a.csv, line 3)',
        expected: '2026-03-02 08:00 (a.csv, line 2)',
        count: 1,
      },
    ]);
  });

  it('of two clocks in turns', () => {
    const turns = Array.from({ length: 8 }, (_, k) => row(`2026-03-02T0${k}:00`, k % 2 === 0 ? 0 : 90)).map(
      (each, k) => ({ ...each, wall: each.wall + (each.offset ?? 0) * MINUTE_MS + (k % 2) * MINUTE_MS }),
    );
    const { timeline, issues } = buildTimeline([named('a.csv', ...turns)], {});
    expect(timeline).toBeNull();
    expect(issues.filter(({ code }) => code === 'offsets-disagree').map(inWords)).toMatchObject([
      {
        level: 'refusal',
        count: 7,
        actual: '+00:00, +01:30',
        expected: '2026-03-02 00:00 +00:00 (a.csv, line 2); 2026-03-02 02:31 +01:30 (a.csv, line 3)',
      },
    ]);
  });
});

describe('offsets that change', () => {
  /** A reading every hour, the offset changed at each hour named. */
  const changing = (hours: number, ...changes: number[]) =>
    Array.from({ length: hours + 1 }, (_, k) => {
      const offset = changes.filter((hour) => k >= hour).length % 2 === 0 ? 60 : 120;
      return { wall: wall('2026-03-02T00:00') + (k * 60 + offset) * MINUTE_MS, native: 100, offset };
    });

  it('are counted, and none is told where there is none', () => {
    expect(issuesOf([fileOf(changing(48))])).toEqual([]);
    expect(issuesOf([fileOf(changing(48, 20))])).toMatchObject([{ code: 'offsets-change', count: 1 }]);
    expect(issuesOf([fileOf(changing(48, 20, 30))])).toMatchObject([
      { code: 'offsets-change', count: 2, actual: '+01:00, +02:00' },
    ]);
  });

  it('are a traveller up to two more than the days told of, and two clocks beyond', () => {
    const level = (...changes: number[]) => issuesOf([fileOf(changing(24, ...changes))])[0]!.level;
    expect(level(5, 10, 15)).toBe('note');
    expect(level(5, 10, 15, 20)).toBe('refusal');
  });

  it('between two days change at the midnight before, so that the day that was seen keeps its own evening', () => {
    const rows = [...Array.from({ length: 23 }, (_, h) => row(`2026-03-02T${String(h).padStart(2, '0')}:00`, 120))];
    const after = Array.from({ length: 12 }, (_, h) => row(`2026-03-03T${String(h + 8).padStart(2, '0')}:00`, 60));
    const { days } = built([fileOf([...rows, ...after])], { period: { days: 2 } });
    expect(days.map(({ date, minutes }) => [date, minutes])).toEqual([
      ['2026-03-02', 1500],
      ['2026-03-03', 1440],
    ]);
  });
});

describe('the clock of a zone', () => {
  const helsinki = { zone: 'Europe/Helsinki' };
  /** Helsinki's clocks went back on 26 October 2025 at four. */
  const change = '2025-10-26';
  const minutesOf = (rows: Row[], period: object) =>
    built([fileOf(rows)], { ...helsinki, period: period as never }).days.find(({ date }) => date === change)!.minutes;

  it('is taken where one file names it and another does not', () => {
    const files = [
      named('a.csv', row('2026-03-02T08:00')),
      { ...named('b.csv', row('2026-03-02T09:00')), ...helsinki },
    ];
    expect(built(files).zone).toBe('Europe/Helsinki');
  });

  it('is right on days before all readings, after the last of them, and on the day of the last', () => {
    const march = [row('2026-03-02T08:00'), row('2026-03-02T08:05')];
    expect(minutesOf(march, { days: 200 })).toBe(1500);
    expect(minutesOf(march, { from: '2025-10-20', to: '2026-03-02' })).toBe(1500);
    expect(minutesOf([row('2025-06-02T08:00')], { from: '2025-06-01', to: '2025-11-02' })).toBe(1500);
    expect(minutesOf([row('2025-10-26T01:00')], { days: 1 })).toBe(1500);
  });

  it('has no day that it left out, and no readings in a period of nothing else', () => {
    // Apia had no 30 December 2011 (zone database).
    const rows = [...Array(6).keys()].map((k) => ({ wall: wall('2011-12-28T08:00') + k * DAY_MS, native: 100 }));
    const apia = { zone: 'Pacific/Apia' };
    const { days } = built([fileOf(rows)], { ...apia, period: { from: '2011-12-29', to: '2011-12-31' } });
    expect(days.map(({ date, minutes }) => [date, minutes])).toEqual([
      ['2011-12-29', 1440],
      ['2011-12-31', 1440],
    ]);
    const none = buildTimeline([fileOf(rows)], { ...apia, period: { from: '2011-12-30', to: '2011-12-30' } });
    expect(none.timeline).toBeNull();
    expect(none.issues.at(-1)).toMatchObject({
      code: 'no-readings-in-period',
      actual: '2011-12-28 / 2012-01-02',
    });
  });
});

describe('a file that lists its newest first', () => {
  const backwards = (...rows: Row[]) => placeFile(fileOf(rows), AS_WRITTEN).newestFirst;

  it('is told by its steps in real time, not by its clock', () => {
    expect(backwards(row('2026-03-02T08:05'), row('2026-03-02T08:00'))).toBe(true);
    expect(backwards(row('2025-10-26T03:30', 180), row('2025-10-26T03:00', 120))).toBe(false);
    expect(backwards(row('2025-10-26T03:00', 120), row('2025-10-26T03:30', 180))).toBe(true);
  });

  it('is one also where each row stands twice', () => {
    const rows = ['08:10', '08:10', '08:05', '08:05', '08:00', '08:00'].map((time) => row(`2026-03-02T${time}`));
    expect(backwards(...rows)).toBe(true);
    expect(backwards(...rows.toReversed())).toBe(false);
  });
});
