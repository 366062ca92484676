import { describe, expect, it, test } from 'vitest';
import { rows, tell } from './digest.ts';

// 46036 is 2026-01-14 counted from 1899-12-30 (interchange notes of the trade, tried in a spreadsheet program).
const DAY = 46_036;
const clock = (i: number) => 7 * 60 + 2 + 5 * i;
const hhmm = (i: number) =>
  `${String(Math.floor(clock(i) / 60)).padStart(2, '0')}:${String(clock(i) % 60).padStart(2, '0')}`;

describe('date and time of day as spreadsheets write them out', () => {
  test.each<[string, (i: number) => string]>([
    ['a date and a fraction', (i) => `2026-01-14;${(clock(i) / 1440).toFixed(10)}`],
    ['a date and a fraction of all digits', (i) => `14.01.2026;${clock(i) / 1440}`],
    ['a date and a fraction with a comma', (i) => `14.01.2026;${(clock(i) / 1440).toFixed(6).replace('.', ',')}`],
    ['a day number and a fraction', (i) => `${DAY};${(clock(i) / 1440).toFixed(10)}`],
    ['a day number and a clock', (i) => `${DAY};${hhmm(i)}`],
    ['a date and a clock on day 0', (i) => `2026-01-14;1899-12-30 ${hhmm(i)}:00`],
    ['a date and a clock on day 0, in ISO', (i) => `2026-01-14;1899-12-31T${hhmm(i)}:00`],
    ['a date and a clock on day 0, day first', (i) => `14/01/2026;30/12/1899 ${hhmm(i)}`],
    ['a date and a clock on day 0 of the other count', (i) => `14/01/2026;01/01/1904 ${hhmm(i)}:00`],
    ['a midnight and a clock', (i) => `2026-01-14 00:00:00;${hhmm(i)}`],
    ['a midnight and a clock on day 0', (i) => `2026-01-14T00:00:00;1899-12-30T${hhmm(i)}:00`],
  ])('%s', (_, cells) => {
    const digest = tell(`Date;Time;Glucose (mg/dL)\n${rows(30, (i) => `${cells(i)};${100 + i}`)}`);
    expect(digest.readings).toEqual(Array.from({ length: 30 }, (_, i) => `2026-01-14 ${hhmm(i)} ${100 + i} mg/dL`));
  });

  it('takes no clock with a dot for a fraction', () => {
    const digest = tell(
      `Date;Time;Glucose (mg/dL)\n${rows(12, (i) => `2026-01-14;0.${String(5 * i).padStart(2, '0')};${100 + i}`)}`,
    );
    expect(digest.readings[11]).toBe('2026-01-14 00:55 111 mg/dL');
  });

  it('leaves readings of a clock that was never set where they are: set aside', () => {
    const digest = tell(`Time;Glucose (mg/dL)\n${rows(12, (i) => `1970-01-01 ${hhmm(i)};${100 + i}`)}`);
    expect(digest.readings).toEqual([]);
    expect(digest.issues).toContain('warning clock-not-set 2');
  });

  it('asks where two counts of days both fit', () => {
    const digest = tell(`Date;Time;Glucose (mg/dL)\n${rows(12, (i) => `40000;${hhmm(i)};${100 + i}`)}`);
    expect(digest.issues).toEqual(['refusal serial-dates-unclear 2']);
    expect(digest.readings).toEqual([]);
  });
});

test('sugar of a food is neither a reading, a finger stick nor its carbohydrate', () => {
  const digest = tell(
    `Time;Glucose (mg/dL);Sugar in food (g)\n${rows(12, (i, t) => `${t.slice(0, 16)};${100 + i};${i % 4 ? '' : 22}`)}`,
  );
  expect(digest.readings).toHaveLength(12);
  expect(digest.notes).toEqual([]);
});

test('one date whose order nobody can tell, among certain ones, is set aside and stops no file', () => {
  const digest = tell(
    `Time;Glucose (mg/dL)\n${rows(40, (i, t) => `${i === 7 ? '03/04/2026 08:00' : t.slice(0, 16)};${100 + i}`)}`,
  );
  expect(digest.readings).toHaveLength(39);
  expect(digest.issues).toEqual(['warning time-unreadable 9']);
});

test.each(['2026-01-14T08:00:00Z', '2026-01-14 08:00+02:00'])(
  'one time of another clock (%s) is set aside and stops no file',
  (odd) => {
    const digest = tell(`Time;Glucose (mg/dL)\n${rows(40, (i, t) => `${i === 7 ? odd : t.slice(0, 16)};${100 + i}`)}`);
    expect(digest.readings).toHaveLength(39);
    expect(digest.issues).toEqual(['warning time-unreadable 9']);
  },
);
