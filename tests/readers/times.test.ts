import { describe, expect, it, test } from 'vitest';
import { inWords } from '../support/inWords.ts';
import { rows, tell } from './digest.ts';

const stamped = (format: (iso: string) => string, count = 6, start?: string): string =>
  `Time;Glucose (mg/dL)\n${rows(count, (i, iso) => `${format(iso)};${100 + i}`, start)}`;
const [year, month, day] = [(t: string) => t.slice(0, 4), (t: string) => t.slice(5, 7), (t: string) => t.slice(8, 10)];
const dmy = (t: string) => `${day(t)}/${month(t)}/${year(t)} ${t.slice(11, 16)}`;
const mdy = (t: string) => `${month(t)}/${day(t)}/${year(t)} ${t.slice(11, 16)}`;
const daily = (format: (iso: string) => string, from: number, to: number): string => {
  let text = 'Time;Sensor (mg/dL)\n';
  for (let d = from; d <= to; d++) text += `${format(`2026-03-${String(d).padStart(2, '0')}T08:00`)};${100 + d}\n`;
  return text;
};

describe('order of day and month', () => {
  test.each<[string, string, string]>([
    ['a first number over 12', daily(dmy, 10, 16), 'file: day-first'],
    ['a second number over 12', daily(mdy, 10, 16), 'file: month-first'],
    ['days that follow each other', daily(dmy, 3, 9), 'file: day-first'],
    ['days that follow each other, month first', daily(mdy, 3, 9), 'file: month-first'],
    ['midnight crossed within five minutes', stamped(dmy, 8, '2026-03-04T23:40:00Z'), 'file: day-first'],
    ['one day, the same either way', stamped(dmy, 6, '2026-03-03T08:00:00Z'), 'file: day-first'],
    ['the other order lies in the future', stamped(mdy, 6, '2026-05-12T08:00:00Z'), 'file: month-first'],
    ['two-digit years', daily((t) => `${day(t)}.${month(t)}.${year(t).slice(2)} 08:00`, 12, 28), 'file: day-first'],
  ])('%s', (_, text, choice) => {
    const digest = tell(text);
    expect(digest.choices['date-order']).toBe(choice);
    expect(digest.readings.every((line) => /^2026-0[35]/.test(line))).toBe(true);
  });

  it('refuses one day that could be two, and shows both', () => {
    const digest = tell(stamped(dmy, 6, '2026-03-04T08:00:00Z'));
    expect(digest.issues).toEqual(['refusal date-order-unclear 2']);
    expect(inWords(digest.file.issues[0]!)).toMatchObject({
      actual: '4/3/2026 (line 2) = 2026-03-04 (day-first: 2026-03-04 … 2026-03-04)',
      expected: '4/3/2026 (line 2) = 2026-04-03 (month-first: 2026-04-03 … 2026-04-03)',
      option: '--date-order day-first',
    });
  });

  it('refuses both orders in one column', () => {
    const digest = tell('Time;Glucose (mg/dL)\n14/02/2026 08:00;100\n02/17/2026 08:00;101\n');
    expect(digest.issues).toEqual(['refusal date-order-mixed 3']);
  });

  it('follows the user, who may be wrong', () => {
    const digest = tell(stamped(dmy, 2, '2026-03-04T08:00:00Z'), { dateOrder: 'month-first' });
    expect(digest.readings[0]).toBe('2026-04-03 08:00 100 mg/dL');
    expect(digest.choices['date-order']).toBe('user: month-first');
    const against = tell(daily(dmy, 10, 16), { dateOrder: 'month-first' });
    expect(against.issues[0]).toBe('warning date-order-contradicts-file');
    expect(against.fates).toBe('isssssss');
  });

  it('takes a format written in the header for a hint', () => {
    const digest = tell('Date (DD/MM/YYYY),Time,Glucose (mg/dL)\n03/04/2026,08:00,100\n03/04/2026,08:05,101\n');
    expect(digest.readings[0]).toBe('2026-04-03 08:00 100 mg/dL');
  });
});

describe('date and clock', () => {
  const first = '2026-01-14 08:00 100 mg/dL';
  test.each<[string, string, string]>([
    ['two columns', 'Date;Time;Glucose (mg/dL)\n2026-01-14;08:00;100\n', first],
    ['two columns, clock first', 'Time;Date;Glucose (mg/dL)\n08:00;2026-01-14;100\n', first],
    ['clock of four digits', 'Date;Time;Glucose (mg/dL)\n2026-01-14;0800;100\n', first],
    ['clock with a dot', 'Date;Time;Glucose (mg/dL)\n2026-01-14;8.00;100\n', first],
    ['clock with an h', 'Date;Time;Glucose (mg/dL)\n2026-01-14;8h00;100\n', first],
    ['halves of the day', 'Time;Glucose (mg/dL)\n2026-01-14 12:05 AM;100\n', '2026-01-14 00:05 100 mg/dL'],
    ['an offset', 'Time;Glucose (mg/dL)\n2026-01-14T08:00:00+02:00;100\n', '2026-01-14 08:00 +120 100 mg/dL'],
    ['Z', 'Time;Glucose (mg/dL)\n2026-01-14T08:00:00Z;100\n', '2026-01-14 08:00 +0 100 mg/dL'],
    ['UTC in the header', 'Time (UTC);Glucose (mg/dL)\n2026-01-14 08:00;100\n', '2026-01-14 08:00 +0 100 mg/dL'],
    ['offset column', 'Time;Offset;Glucose (mg/dL)\n2026-01-14 08:00;+02:00;100\n', '2026-01-14 08:00 +120 100 mg/dL'],
    // 1768377600 = 2026-01-14T08:00:00Z (GNU date).
    ['epoch seconds', 'Time;Glucose (mg/dL)\n1768377600;100\n', '2026-01-14 08:00 +0 100 mg/dL'],
    ['epoch milliseconds', 'Time;Glucose (mg/dL)\n1768377600000;100\n', '2026-01-14 08:00 +0 100 mg/dL'],
  ])('%s', (_, text, reading) => {
    expect(tell(text).readings).toEqual([reading]);
  });

  it('reads spreadsheet day numbers when the other count lies in the future', () => {
    // 45658 is 2025-01-01 and .13541666 of a day 03:15 in the 1900 system (ECMA-376 / ISO 29500, from memory).
    const digest = tell('Time;Glucose (mg/dL)\n45658.13541666;100\n46027.5;101\n');
    expect(digest.readings).toEqual(['2025-01-01 03:15 100 mg/dL', '2026-01-05 12:00 101 mg/dL']);
    expect(tell('Time;Glucose (mg/dL)\n43000.5;100\n').issues).toEqual(['refusal serial-dates-unclear 2']);
  });

  it('carries a date down over blanks and says so', () => {
    const digest = tell('Date;Time;Glucose (mg/dL)\n2026-01-14;08:00;100\n;08:05;101\n');
    expect(digest.readings[1]).toBe('2026-01-14 08:05 101 mg/dL');
    expect(digest.choices['date-carried']).toBe('default: 1');
  });

  it('refuses times with and without an offset, unless the user names the zone', () => {
    const text = 'Time;Glucose (mg/dL)\n2026-01-14T08:00+02:00;100\n2026-01-14T08:05;101\n';
    expect(tell(text).issues).toEqual(['refusal offsets-mixed 3']);
    expect(tell(text, { zone: 'Europe/Helsinki' }).readings).toHaveLength(2);
  });

  it('mends a 12-hour clock without its halves by the order of rows, or refuses', () => {
    const twelve = (t: string) => `2026-01-${day(t)} ${((Number(t.slice(11, 13)) + 11) % 12) + 1}:${t.slice(14, 16)}`;
    const inOrder = tell(stamped(twelve, 576, '2026-01-14T00:00:00Z'));
    expect(inOrder.readings[144]).toMatch(/^2026-01-14 12:00 /);
    expect(inOrder.readings[575]).toMatch(/^2026-01-15 23:55 /);
    const twice =
      stamped(twelve, 576, '2026-01-14T00:00:00Z') + rows(288, (_, t) => `${twelve(t)};90`, '2026-01-15T00:00:00Z');
    const digest = tell(twice);
    expect(digest.issues).toEqual(['refusal clock-half-lost 2']);
    expect(inWords(digest.file.issues[0]!).expected).toMatch(/^line 2 = (\d\d):(\d\d) \| \d\d:\2$/);
    const layout = { clock: '24-hour' };
    const asWritten = tell(twice, { layout });
    expect(asWritten.readings).toHaveLength(864);
    expect(tell(twice, { layout: asWritten.file.layout }).readings).toEqual(asWritten.readings);
    const [head, ...cells] = twice
      .trimEnd()
      .split('\n')
      .map((line) => line.split(';'));
    const records = JSON.stringify(cells.map((row) => Object.fromEntries(row.map((cell, i) => [head![i]!, cell]))));
    expect(tell(records, {}, 'a.json').issues).toEqual(['refusal clock-half-lost 1']);
    expect(tell(records, { layout }, 'a.json').readings).toEqual(asWritten.readings);
  });

  it('does not take a row out of order in one morning for a lost half of the day', () => {
    const text = `Time;Glucose (mg/dL)\n${rows(20, (i, t) => `${t.slice(0, 16)};${100 + i}`)}2026-01-14 08:10;99\n`;
    expect(tell(text).readings.at(-1)).toBe('2026-01-14 08:10 99 mg/dL');
  });

  test.each<[string, string]>([
    ['31/06/2026 08:00', 'warning date-impossible 3'],
    ['29/02/2026 08:00', 'warning date-impossible 3'],
    ['15/01/2026 56:35', 'warning date-impossible 3'],
    ['15/01/2204 08:00', 'warning date-in-future 3'],
    ['03/07/2026 08:00', 'warning date-in-future 3'],
    ['01/01/1970 00:00', 'warning clock-not-set 3'],
    ['01/01/2000 00:10', 'warning clock-not-set 3'],
    ['15?01?2026', 'warning time-unreadable 3'],
    ['sometime', 'note no-time 3'],
  ])('%s is set aside', (cell, issue) => {
    const digest = tell(`Time;Glucose (mg/dL)\n14/01/2026 08:00;100\n${cell};101\n15/01/2026 08:00;102\n`);
    expect(digest.issues).toEqual([issue]);
    expect(digest.readings).toHaveLength(2);
  });

  it('allows tomorrow: somewhere it is later', () => {
    expect(tell('Time;Glucose (mg/dL)\n2026-07-02 08:00;100\n').readings).toHaveLength(1);
  });

  it('takes a zone named above the table for the file’s own', () => {
    const digest = tell('Zone,Europe/Helsinki\nTime,Glucose (mg/dL)\n2026-01-14 08:00,100\n');
    expect(digest.file.zone).toBe('Europe/Helsinki');
    expect(digest.choices.zone).toBe('file: Europe/Helsinki');
  });

  it('leaves newest-first order as it stands', () => {
    const digest = tell('Time;Glucose (mg/dL)\n2026-01-14 08:05;101\n2026-01-14 08:00;100\n');
    expect(digest.readings.map((line) => line.slice(11, 16))).toEqual(['08:05', '08:00']);
  });
});
