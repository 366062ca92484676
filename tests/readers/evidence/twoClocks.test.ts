import { describe, expect, it, test } from 'vitest';
import { lines, read, refusals, START, stamp, sugar, times } from './tables.ts';

const N = 400;
const LOCAL = Array.from({ length: N }, (_, i) => stamp(i));
const iso = (i: number, shift = 0): string =>
  new Date(START + (i * 5 + shift) * 60_000).toISOString().slice(0, 16).replace('T', ' ');
const day = (i: number): string => iso(i).slice(0, 10);
const dotted = (i: number): string => day(i).split('-').reverse().join('.');
const hour = (i: number): number => Number(iso(i).slice(11, 13));
const half = (i: number): string => (hour(i) < 12 ? 'AM' : 'PM');
const twelve = (i: number): string => `${hour(i) % 12 || 12}:${iso(i).slice(14)}`;
const usual = (i: number): string => `${day(i).slice(5).replace('-', '/')}/${day(i).slice(0, 4)}`;

/** Days since 1899-12-30, as spreadsheets count (ECMA-376 part 1, 18.17.4.1). */
const serial = (i: number, day0 = 25_569): string => ((START + i * 300_000) / 86_400_000 + day0).toFixed(10);

/** Ways a table writes the wearer's own time, beside which world time stands. */
const FORMS: [string, string, (i: number) => string][] = [
  ['a date and a time of day', 'Date,Time of day', (i) => `${day(i)},${iso(i).slice(11)}`],
  ['a date with its day first', 'Date,Time of day', (i) => `${dotted(i)},${iso(i).slice(11)}`],
  ['a date, a time to 12 and its half', 'Date,Time of day,AM/PM', (i) => `${day(i)},${twelve(i)},${half(i)}`],
  ['one time to 12 and its half', 'Time,AM/PM', (i) => `${usual(i)} ${twelve(i)},${half(i)}`],
  ['one time', 'Time', (i) => iso(i)],
  ['a day number', 'Time', (i) => serial(i)],
];
/** Minutes of clocks behind and ahead of world time, Nepal and the Line Islands among them (IANA tz database). */
const SHIFTS = [-840, -345, -120, 210, 420, 720];

describe('world time beside the wearer’s own', () => {
  const table = (head: string, own: (i: number) => string, shift: number, first: boolean, n = N) => {
    const world = (i: number) => iso(i, shift);
    return first
      ? `Time (UTC),${head},Glucose (mg/dL)\n${lines(n, (i) => `${world(i)},${own(i)},${sugar(i)}`)}\n`
      : `${head},Time (UTC),Glucose (mg/dL)\n${lines(n, (i) => `${own(i)},${world(i)},${sugar(i)}`)}\n`;
  };
  test.each(FORMS)('as %s is read as the wearer’s clock shows it, at the instant world time says', (_, head, own) => {
    for (const shift of SHIFTS)
      for (const first of [true, false]) {
        const file = read(table(head, own, shift, first));
        expect([refusals(file), times(file), [...new Set(file.readings.offset)]]).toEqual([[], LOCAL, [-shift]]);
      }
  });
  test('as a day number counted from 1904: so is the count shown', () => {
    const file = read(table('Time', (i) => serial(i, 24_107), 210, false));
    expect([refusals(file), times(file), [...new Set(file.readings.offset)]]).toEqual([[], LOCAL, [-210]]);
  });
  test('as a day number: a row of another year is told, and no instant taken', () => {
    for (const first of [true, false]) {
      const file = read(table('Time', (i) => (i === 200 ? '51582.3784722222' : serial(i)), 210, first));
      expect(times(file)).toEqual(LOCAL.filter((__, i) => i !== 200));
      expect(file.issues.some(({ code, origin }) => code === 'date-in-future' && origin?.line === 202)).toBe(true);
    }
  });
  test.each(FORMS.slice(0, 2))(
    'as %s: a row whose own date cannot be is told, and no instant taken',
    (_, head, own) => {
      for (const odd of ['31.06.2026 08:15', '01.01.1970', '22.03.2041', 'soon'])
        for (const first of [true, false]) {
          const broken = (i: number) => (i === 200 ? `${odd},${own(i).split(',')[1]}` : own(i));
          const file = read(table(head, broken, 210, first));
          expect(times(file)).toEqual(LOCAL.filter((__, i) => i !== 200));
          expect(file.issues.some(({ origin }) => origin?.line === 202)).toBe(true);
        }
    },
  );
  it('a last row cut off behind its own time is set aside with its line', () => {
    const whole = table('Time', iso, 210, false);
    const file = read(`${whole}${iso(N)}`);
    expect([times(file), file.fates.at(-1)]).toEqual([LOCAL, 'set-aside']);
    expect(file.issues.map(({ code, origin }) => [code, origin?.line])).toContainEqual(['time-unreadable', N + 2]);
  });
  it('of a clock to 12 without its half takes no instant from world time', () => {
    const file = read(table('Date,Time of day', (i) => `${day(i)},${twelve(i)}`, 210, true));
    if (refusals(file).length === 0) expect([times(file), [...new Set(file.readings.offset)]]).toEqual([LOCAL, [-210]]);
    else expect(refusals(file)).toEqual(['clock-half-lost']);
  });
});

describe('a clock under a name that nobody knows', () => {
  const withZ = (i: number): string => `${iso(i).replace(' ', 'T')}:00Z`;
  test.each([-510, -60, 180])('beside world time, %i minutes away, is asked about', (shift) => {
    for (const name of ['T2', 'Qrx'])
      expect(
        refusals(
          read(`${name},Time,Glucose (mg/dL)\n${lines(N, (i) => `${iso(i, shift)},${withZ(i)},${sugar(i)}`)}\n`),
        ),
      ).toEqual(['two-clocks']);
  });
  it('is the wearer’s where an answer says so', () => {
    const text = `T2,Time,Glucose (mg/dL)\n${lines(N, (i) => `${iso(i, 180)},${withZ(i)},${sugar(i)}`)}\n`;
    const file = read(text, { layout: { meanings: { T2: 'time', Time: 'ignore' } } });
    expect(times(file)[0]).toBe(iso(0, 180));
  });
  it('beside a date and a time of day is asked about', () => {
    const text = `Date,Time of day,T2,Glucose (mg/dL)\n${lines(N, (i) => `${day(i)},${iso(i).slice(11)},${iso(i, 180)},${sugar(i)}`)}\n`;
    expect(refusals(read(text))).toEqual(['two-clocks']);
    expect(times(read(text, { layout: { meanings: { T2: 'ignore' } } }))).toEqual(LOCAL);
  });
  it('that shows the same time is no second clock', () => {
    expect(times(read(`T2,Time,Glucose (mg/dL)\n${lines(N, (i) => `${iso(i)},${withZ(i)},${sugar(i)}`)}\n`))).toEqual(
      LOCAL,
    );
  });
});

test('a half of the day beside a clock of twelve tells which clock is asked for first: one question, not two', () => {
  const at = (i: number, hours: number): string => stamp(i + hours * 12);
  const twelve = (clock: string): string => `${((Number(clock.slice(0, 2)) + 11) % 12) + 1}${clock.slice(2)}`;
  const row = (i: number): string => {
    const [date, clock = ''] = at(i, 0).split(' ');
    return `${at(i, 3)},${date},${twelve(clock)},${Number(clock.slice(0, 2)) < 12 ? 'AM' : 'PM'},${sugar(i)}`;
  };
  const text = `T2,Date,Time,Half,Glucose (mg/dL)\n${lines(300, row)}\n`;
  const asked = read(text);
  expect(refusals(asked)).toEqual(['two-clocks']);
  const [layout] = asked.issues.flatMap((issue) =>
    issue.code === 'two-clocks' ? JSON.parse(issue.question.answer!) : [],
  );
  expect(times(read(text, { layout }))).toEqual(Array.from({ length: 300 }, (_, i) => at(i, 0)));
});
