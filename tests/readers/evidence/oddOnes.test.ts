import { describe, expect, test } from 'vitest';
import { lines, read, refusals, START, stamp, sugar, times } from './tables.ts';

/** One odd line, or one other column, beside hundreds of rows that tell what they are. */

const N = 420;
const RIGHT = Array.from({ length: N }, (_, i) => stamp(i));
const at = (i: number, minutes = 0): Date => new Date(START + (i * 5 + minutes) * 60_000);
const codes = (file: ReturnType<typeof read>): string[] => file.issues.map(({ code }) => code);

describe('a clock of twelve hours without its half', () => {
  const twelve = (i: number): string => {
    const [date, clock] = stamp(i).split(' ') as [string, string];
    return `${date} ${((Number(clock.slice(0, 2)) + 11) % 12) + 1}${clock.slice(2)}`;
  };
  test.each(['420', '1700', '09:30', 'Sum 420'])('is none the less one for a line below that holds %s', (sum) => {
    const file = read(`Time,Glucose (mg/dL)\n${lines(N, (i) => `${twelve(i)},${sugar(i)}`)}\n${sum},\n`);
    expect([refusals(file), times(file)]).toEqual([[], RIGHT]);
    // A day that begins past noon has no place where the clock runs through twice.
    const short = read(`Time,Glucose (mg/dL)\n${lines(260, (i) => `${twelve(i)},${sugar(i)}`)}\n${sum},\n`);
    expect(refusals(short)).toEqual(['clock-half-lost']);
  });
});

describe('an order of day and month that changes among days that fit both', () => {
  const of = (i: number, dayFirst: boolean): string => {
    const [y, m, d, clock] = new Date(Date.UTC(2026, 1, 3, 7) + i * 900_000)
      .toISOString()
      .slice(0, 16)
      .split(/[-T]/) as [string, string, string, string];
    return `${dayFirst ? `${d}/${m}` : `${m}/${d}`}/${y} ${clock}`;
  };
  const notes = `Time,Insulin (IU)\n${lines(4, (i) => `02/0${i + 3}/2026 08:00,4`)}\n`;
  test.each([
    ['alone', ''],
    ['beside a table of one order', `\n${notes}`],
  ])('is heard by the clock that goes on over midnight, %s', (_, more) => {
    for (const first of [true, false]) {
      const turns = read(
        `Time,Glucose (mg/dL)\n${lines(300, (i) => `${of(i, first === i < 170)},${sugar(i)}`)}\n${more}`,
      );
      expect(refusals(turns)).toContain('date-order-changes');
      const change = turns.issues.find(({ code }) => code === 'date-order-changes');
      expect(change?.origin?.line).toBe(172);
    }
  });
  test.each([true, false])('and one that does not change is none (day first: %s)', (first) => {
    const file = read(`Time,Glucose (mg/dL)\n${lines(600, (i) => `${of(i, first)},${sugar(i)}`)}\n`);
    expect(codes(file)).not.toContain('date-order-changes');
  });
});

describe('a day between year and month', () => {
  const turned = (date: Date): string => {
    const [y, m, d, clock] = date.toISOString().slice(0, 16).split(/[-T]/) as [string, string, string, string];
    return `${y}/${d}/${m} ${clock}`;
  };
  const world = (i: number): string => at(i, -180).toISOString().slice(0, 16).replace('T', ' ');
  test.each([
    ['in one column', 'Time', (i: number) => turned(at(i))],
    ['beside a clock', 'Date,Time of day', (i: number) => turned(at(i)).replace(' ', ',')],
  ])('%s is the wearer’s beside a column of world time', (_, head, form) => {
    const text = `${head},Time (UTC),Glucose (mg/dL),Carbohydrate (g)\n${lines(N, (i) => `${form(i)},${world(i)},${i % 50 === 7 ? '#N/A' : sugar(i)},${i % 60 === 9 ? 40 : ''}`)}\n`;
    const file = read(text);
    expect(refusals(file)).toEqual([]);
    expect(times(file)).toEqual(RIGHT.filter((__, i) => i % 50 !== 7));
    expect(file.notes.map(({ wall }) => wall)).toEqual(RIGHT.flatMap((__, i) => (i % 60 === 9 ? [+at(i)] : [])));
    expect([...new Set(file.readings.offset)]).toEqual([180]);
  });
  test('is asked about beside a second clock that nothing names', () => {
    const text = lines(N, (i) => `${turned(at(i)).replace(' ', ',')},${world(i)},${sugar(i)}`);
    expect(refusals(read(`${text}\n`))).toEqual(['two-clocks']);
  });
  test('is heard although a clock was not set for a line', () => {
    const early = (i: number): Date => new Date(Date.UTC(2026, 1, 3, 7) + i * 300_000);
    const text = lines(700, (i) => `${i === 330 ? '1970/01/01 00:05' : turned(early(i))},${sugar(i)}`);
    const file = read(`Time,Glucose (mg/dL)\n${text}\n`);
    expect(times(file)).toEqual(
      Array.from({ length: 700 }, (_, i) => early(i).toISOString().slice(0, 16).replace('T', ' ')).toSpliced(330, 1),
    );
    expect(codes(file)).toContain('dates-year-day');
  });
});

describe('columns parted by blanks', () => {
  test.each(['≤2,2', '<2,2', '>= 22,2'])('hold numbers with decimal commas, a third of them %s', (limit) => {
    const text = lines(
      N,
      (i) => `${stamp(i)}  ${i % 3 === 0 ? limit : `${(sugar(i) / 18).toFixed(1)}`.replace('.', ',')}`,
    );
    const file = read(`"Invented log, for trying out"\n\nTime              Sensor glucose (mmol/L)\n${text}\n`);
    expect(refusals(file)).toEqual([]);
    expect(times(file)).toEqual(RIGHT);
  });
});
