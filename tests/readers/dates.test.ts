import { describe, expect, it, test } from 'vitest';
import { CLOCK_FLAGS } from '../../src/readers/times/clockCell.ts';
import { readStamp } from '../../src/readers/times/dates.ts';
import { dayNumber, isoDay, openDay } from '../../src/readers/times/dayOrder.ts';
import { newStamp, SHAPE } from '../../src/readers/times/stamp.ts';

function read(text: string) {
  const stamp = newStamp();
  const bytes = new TextEncoder().encode(text);
  const shape = readStamp(bytes, 0, bytes.length, stamp);
  const name = Object.entries(SHAPE).find(([, value]) => value === shape)![0];
  const { date, open } = stamp;
  const day = open ? openDay(date, 'day-first') : dayNumber(date >>> 9, (date >>> 5) & 15, date & 31);
  const ms = stamp.ms % 86_400_000;
  const clock = new Date(ms).toISOString().slice(11, 23).replace('.000', '');
  return { name, day: Number.isNaN(day) ? 'none' : isoDay(day), clock, stamp };
}

describe('time stamps', () => {
  // ISO 8601-1, RFC 3339 and RFC 9557 forms; the rest common practice, no source.
  test.each<[string, string, string]>([
    ['2026-01-14T12:00:30', '2026-01-14', '12:00:30'],
    ['2026-01-14 12:00', '2026-01-14', '12:00:00'],
    ['2026-01-14T12:00:00.250', '2026-01-14', '12:00:00.250'],
    ['2026-01-14T12:00:00,250', '2026-01-14', '12:00:00.250'],
    ['20260114T120000', '2026-01-14', '12:00:00'],
    ['2026-W03-3T12:00', '2026-01-14', '12:00:00'],
    ['2026-014T12:00', '2026-01-14', '12:00:00'],
    ['2026/01/14 12:00', '2026-01-14', '12:00:00'],
    ['14.01.2026 12:00', '2026-01-14', '12:00:00'],
    ['14. 1. 2026 12.00', '2026-01-14', '12:00:00'],
    ['14/01/26 12:00', '2026-01-14', '12:00:00'],
    ['14-01-2026, 12:00', '2026-01-14', '12:00:00'],
    ['14 Jan 2026 12:00', '2026-01-14', '12:00:00'],
    ['14-Jan-26 12:00', '2026-01-14', '12:00:00'],
    ['January 14, 2026 12:00', '2026-01-14', '12:00:00'],
    ['Wed, 14 Jan 2026 12:00', '2026-01-14', '12:00:00'],
    ['14 de enero de 2026 12:00', '2026-01-14', '12:00:00'],
    ['14 janvier 2026 12h00', '2026-01-14', '12:00:00'],
    ['14. tammikuuta 2026 12:00', '2026-01-14', '12:00:00'],
    ['14 März 2026 12:00 Uhr', '2026-03-14', '12:00:00'],
    ['14 marca 2026 12:00', '2026-03-14', '12:00:00'],
    ['14/01/2026 12:05 AM', '2026-01-14', '00:05:00'],
    ['14/01/2026 12:05 PM', '2026-01-14', '12:05:00'],
    ['14/01/2026 1:05 p.m.', '2026-01-14', '13:05:00'],
    ['14/01/2026 1:05\u202fPM', '2026-01-14', '13:05:00'],
    ['14/01/2026 14:05 PM', '2026-01-14', '14:05:00'],
    ['2026-01-14 7:5', '2026-01-14', '07:05:00'],
    ["'2026-01-14 07:05", '2026-01-14', '07:05:00'],
    ['2026. 1. 14. 07:05', '2026-01-14', '07:05:00'],
    ['2026. jan. 14. 07:05', '2026-01-14', '07:05:00'],
    ['2026年1月14日 07:05', '2026-01-14', '07:05:00'],
    ['2026년 1월 14일 07:05', '2026-01-14', '07:05:00'],
    ['14 янв. 2026 г. 07:05', '2026-01-14', '07:05:00'],
    ['14 janv. 2026 à 07:05', '2026-01-14', '07:05:00'],
    ['14.01.2026 (Mi) 07:05', '2026-01-14', '07:05:00'],
    ['14/01/2026 3:05 μ.μ.', '2026-01-14', '15:05:00'],
    ['14/01/2026 3:05 дня', '2026-01-14', '15:05:00'],
    // The half may stand in front; a time half a day off would be worse than none.
    ['2026/01/14 下午 3:05', '2026-01-14', '15:05:00'],
    ['2026년 1월 14일 오전 12:05', '2026-01-14', '00:05:00'],
    ['2026-01-14 du. 3:05', '2026-01-14', '15:05:00'],
    ['2026/01/14(水) 午後3:05', '2026-01-14', '15:05:00'],
  ])('%s', (text, day, clock) => {
    const found = read(text);
    expect([found.name, found.day, found.clock, found.stamp.flags & CLOCK_FLAGS.impossible]).toEqual([
      'stamp',
      day,
      clock,
      0,
    ]);
  });

  test.each(['2026-01-14 विकेल 3:05', '2026-01-14 3:05 विकेल', '14 ma 2026 12:00'])('%s is not read by guess', (text) => {
    expect(read(text).name).toBe('none');
  });

  test.each<[string, number]>([
    ['2026-01-14T12:00Z', 0],
    ['2026-01-14T12:00+02:00', 120],
    ['2026-01-14T12:00+0530', 330],
    ['2026-01-14T12:00-05', -300],
    ['2026-01-14 12:00:00 +02:00', 120],
    ['2026-01-14 12:00 UTC', 0],
    ['2026-01-14T12:00\u221205:00', -300],
    ['2026-01-14T12:00+02:00[Europe/Helsinki]', 120],
  ])('offset of %s', (text, offset) => {
    expect(read(text).stamp.offset).toBe(offset);
  });

  it('keeps a zone named in brackets (RFC 9557)', () => {
    expect(read('2026-01-14T12:00+02:00[Europe/Helsinki]').stamp.zone).toBe('Europe/Helsinki');
  });

  it('reads 24:00 as the end of the day and :60 as the end of the minute', () => {
    expect(read('2026-01-14 24:00').stamp.ms).toBe(86_400_000);
    const leap = read('2026-01-14 12:00:60').stamp;
    expect([leap.ms, leap.flags]).toEqual([43_259_999, CLOCK_FLAGS.second60]);
  });

  test.each(['2026-01-14 56:35', '2026-01-14 12:75', '14/01/2026 00:05 PM', '14/01/2026 14:05 AM', '2026-01-14 24:01'])(
    'impossible clock %s',
    (text) => {
      expect(read(text).stamp.flags & CLOCK_FLAGS.impossible).toBe(CLOCK_FLAGS.impossible);
    },
  );

  test.each(['2026-02-30', '31/06/2026', '29.02.2025', '2026-13-01'])('no such day %s', (text) => {
    expect(read(text).day).toBe('none');
  });

  test.each<[string, string]>([
    ['2026-01-14', 'day'],
    ['14 Jan 2026', 'day'],
    ['12:05', 'clock'],
    ['7 PM', 'none'],
    ['1768392000', 'seconds'],
    ['1768392000000', 'millis'],
    ['46036.5', 'serial'],
    ['Average', 'none'],
    ['5.6.7.8', 'none'],
    ['', 'none'],
    ['99999999999999999999', 'none'],
  ])('shape of %s is %s', (text, shape) => {
    expect(read(text).name).toBe(shape);
  });

  it('knows every day of the Gregorian calendar as JavaScript does', () => {
    for (let day = 10_000; day < 30_000; day += 13) {
      const date = new Date(day * 86_400_000);
      expect(dayNumber(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate())).toBe(day);
    }
  });
});

describe('numbers that fit no calendar are no date, and never become another one', () => {
  const two = (n: number): string => String(n).padStart(2, '0');
  // JavaScript's own calendar is the outside value: it carries over what does not exist, so a real date comes back as it was.
  const real = (m: number, d: number): string => {
    const day = new Date(Date.UTC(2026, m - 1, d));
    return day.getUTCMonth() === m - 1 && day.getUTCDate() === d ? day.toISOString().slice(0, 10) : 'none';
  };
  test.each<[string, (m: string, d: string) => string]>([
    ['2026-MM-DD', (m, d) => `2026-${m}-${d} 12:00`],
    ['2026/MM/DD', (m, d) => `2026/${m}/${d} 12:00`],
    ['2026MMDDT', (m, d) => `2026${m}${d}T120000`],
    ['DD.MM.2026', (m, d) => `${d}.${m}.2026 12:00`],
  ])('%s', (_, write) => {
    for (let m = 0; m < 100; m++) {
      for (let d = 0; d < 100; d++) {
        const found = read(write(two(m), two(d)));
        expect(found.name === 'stamp' ? found.day : 'none', write(two(m), two(d))).toBe(real(m, d));
      }
    }
  });
});
