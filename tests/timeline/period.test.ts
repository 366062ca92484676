import { describe, expect, it } from 'vitest';
import { buildTimeline } from '../../src/timeline/index.ts';
import { built, fileOf, rowsOf } from '../support/timeline.ts';

// Readings on 2026-03-02 … 2026-03-21, none on 2026-03-20.
const file = fileOf(rowsOf({ days: 20, every: 15, value: (_, day) => (day === 18 ? null : 100) }), [
  { day: 0, minute: 480, kind: 'meal' },
  { day: 19, kind: 'text', text: 'flat all day' },
]);

describe('the days looked at', () => {
  it.each([
    ['by default the 14 days up to the last reading', {}, '2026-03-08', '2026-03-21', 14],
    ['so many days back', { period: { days: 7 } }, '2026-03-15', '2026-03-21', 7],
    ['more days than there are readings', { period: { days: 30 } }, '2026-02-20', '2026-03-21', 30],
    ['from and to', { period: { from: '2026-03-05', to: '2026-03-06' } }, '2026-03-05', '2026-03-06', 2],
    ['only from', { period: { from: '2026-03-10' } }, '2026-03-10', '2026-03-21', 12],
    ['only to', { period: { to: '2026-03-18' } }, '2026-03-05', '2026-03-18', 14],
  ])('%s', (_, settings, from, to, count) => {
    const timeline = built([file], settings);
    expect([timeline.from, timeline.to, timeline.days.length]).toEqual([from, to, count]);
    expect(timeline.chosenBy).toBe('period' in settings ? 'user' : 'default');
    expect(timeline.days[0]!.date).toBe(from);
    expect(timeline.days.at(-1)!.date).toBe(to);
    expect(timeline.allDays).toHaveLength(19);
  });

  it('have index ranges that hold just their readings', () => {
    const { days, readings } = built([file]);
    let next = 0;
    days.forEach((day, d) => {
      expect(day.from).toBe(next);
      next = day.to;
      expect(day.to - day.from).toBe(day.date === '2026-03-20' ? 0 : 96);
      for (let i = day.from; i < day.to; i++) {
        expect(readings.day[i]).toBe(d);
        expect(readings.minute[i]).toBe((i - day.from) * 15);
        expect(readings.at[i]).toBe(day.start + readings.minute[i]! * 60_000);
      }
    });
    expect(next).toBe(readings.count);
    expect(days.map(({ weekday }) => weekday)).toEqual([7, 1, 2, 3, 4, 5, 6, 7, 1, 2, 3, 4, 5, 6]);
  });

  it('leave the rest used but outside', () => {
    const { readingsOutside, notesOutside, timeline, total } = buildTimeline([file], {});
    expect(readingsOutside).toBe(6 * 96);
    expect(notesOutside).toBe(1);
    expect(timeline!.notes.map(({ day, timed }) => [day, timed])).toEqual([[13, false]]);
    expect(total).toMatchObject({ used: 19 * 96, notes: 2 });
  });

  it.each([
    [{ from: '2026-02-30' }, 'bad-period'],
    [{ to: '2026-02-30' }, 'bad-period'],
    [{ from: '2026-03-02', to: '2026-3-9' }, 'bad-period'],
    [{ days: 36_526 }, 'bad-period'],
    [{ from: '1926-03-09', to: '2026-03-09' }, 'bad-period'],
    [{ from: '2026-03-10', to: '2026-03-09' }, 'bad-period'],
    [{ from: '1800-01-01', to: '2026-03-09' }, 'bad-period'],
    [{ days: 0 }, 'bad-period'],
    [{ days: 2.5 }, 'bad-period'],
    [{ days: Number.NaN }, 'bad-period'],
    [{ from: '2026-05-01', to: '2026-05-14' }, 'no-readings-in-period'],
    [{ from: '2026-05-01' }, 'no-readings-in-period'],
    [{ from: '2026-03-20', to: '2026-03-20' }, 'no-readings-in-period'],
  ])('refuses %j: %s', (period, code) => {
    const { timeline, issues, total } = buildTimeline([file], { period });
    expect(timeline).toBeNull();
    expect(issues.map((issue) => issue.code)).toEqual([code]);
    expect(total.rows).toBe(file.fates.length);
  });

  it('may be a hundred years, and begin with the last day that holds a reading', () => {
    expect(built([file], { period: { days: 36_525 } }).days).toHaveLength(36_525);
    expect(built([file], { period: { from: '1926-03-22' } }).days[0]!.date).toBe('1926-03-22');
    const last = built([file], { period: { from: '2026-03-21' } });
    expect([last.from, last.to]).toEqual(['2026-03-21', '2026-03-21']);
  });

  it('know the clock of days long before the first reading', () => {
    // Helsinki's clocks went forward on 29 March 2026 (IANA).
    const late = fileOf(rowsOf({ from: '2026-04-11', days: 20, value: () => 100 }));
    const { days } = built([late], { zone: 'Europe/Helsinki', period: { to: '2026-04-11' } });
    expect([days[0]!.date, days[0]!.minutes, days[1]!.minutes]).toEqual(['2026-03-29', 1380, 1440]);
  });

  it('refuses when there is no reading at all', () => {
    expect(buildTimeline([], {}).issues).toEqual([{ code: 'no-readings', level: 'refusal' }]);
    expect(buildTimeline([fileOf([])], { zone: 'Europe/Helsinki' }).issues.map(({ code }) => code)).toEqual([
      'no-readings',
    ]);
  });
});
