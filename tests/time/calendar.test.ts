import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  DAY_MS,
  dateOf,
  daysBetween,
  isLocalDate,
  midnightBefore,
  midnightOf,
  minuteOfDay,
  weekdayOf,
} from '../../src/time/calendar.ts';

describe('calendar', () => {
  it.each([
    ['2024-02-29', true],
    ['2025-02-29', false],
    ['2100-02-29', false],
    ['2025-06-31', false],
    ['2025-13-01', false],
    ['2025-1-1', false],
    ['25-01-01', false],
    ['', false],
    ['2025-01-01T00:00', false],
  ])('%s is a date: %s', (text, is) => {
    expect(isLocalDate(text)).toBe(is);
  });

  // Weekdays as ISO 8601 numbers them; 2000-01-01 was a Saturday, 1969-07-20 a Sunday (common knowledge).
  it.each([
    ['2000-01-01', 6],
    ['1969-07-20', 7],
    ['2026-03-02', 1],
  ])('%s is weekday %d', (date, weekday) => {
    expect(weekdayOf(date)).toBe(weekday);
  });

  it('refuses a day that never was', () => {
    expect(() => midnightOf('2025-02-30')).toThrow(RangeError);
  });

  it('counts days there and back', () => {
    const dates = fc.integer({ min: -20_000, max: 40_000 }).map((day) => dateOf(day * DAY_MS));
    fc.assert(
      fc.property(dates, fc.integer({ min: -5000, max: 5000 }), (date, days) => {
        const later = addDays(date, days);
        expect(daysBetween(date, later)).toBe(days);
        expect((((weekdayOf(later) - weekdayOf(date) - days) % 7) + 7) % 7).toBe(0);
      }),
    );
  });

  it('splits a wall clock into date and minute, before 1970 too', () => {
    const wall = Date.UTC(1969, 11, 31, 23, 59, 59);
    expect(dateOf(wall)).toBe('1969-12-31');
    expect(minuteOfDay(wall)).toBe(1439);
    expect(midnightBefore(wall)).toBe(Date.UTC(1969, 11, 31));
  });
});
