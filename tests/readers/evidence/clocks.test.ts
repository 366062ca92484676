import { describe, expect, it, test } from 'vitest';
import { readInputs } from '../../../src/readers/index.ts';
import { NO_OFFSET } from '../../../src/time/offset.ts';
import { TODAY } from '../digest.ts';
import { lines, numbers, read, refusals, START, stamp, sugar, times } from './tables.ts';

const N = 400;
const RIGHT = Array.from({ length: N }, (_, i) => stamp(i));
const at = (i: number, shift = 0): Date => new Date(START + (i * 5 + shift) * 60_000);
const iso = (i: number, shift = 0): string => at(i, shift).toISOString().slice(0, 16).replace('T', ' ');
const rows = (header: string, row: (i: number) => string): string => `${header}\n${lines(N, row)}\n`;
const offsets = (file: ReturnType<typeof read>): number[] => [...new Set(file.readings.offset)];

describe('a half of the day in a column of its own', () => {
  const twelve = (i: number, part: 'time' | 'half'): string => {
    const hour = at(i).getUTCHours();
    if (part === 'half') return hour < 12 ? 'AM' : 'PM';
    return `${hour % 12 || 12}:${iso(i).slice(14)}`;
  };
  test.each(['AM/PM', 'Half', 'x'])('called %s, beside date and time', (name) => {
    const file = read(
      rows(
        `Date,Time,${name},Glucose (mg/dL)`,
        (i) => `${iso(i).slice(0, 10)},${twelve(i, 'time')},${twelve(i, 'half')},${sugar(i)}`,
      ),
    );
    expect(times(file)).toEqual(RIGHT);
  });
  it('beside a whole stamp, and in other words', () => {
    for (const [am, pm] of ['午前 午後', 'morning afternoon', 'vorm. nachm.', 'π.μ. μ.μ.', 'fm em'].map((both) =>
      both.split(' '),
    )) {
      const word = (i: number): string => (twelve(i, 'half') === 'AM' ? am! : pm!);
      const row = (i: number): string => `${iso(i).slice(0, 10)} ${twelve(i, 'time')},${word(i)},${sugar(i)}`;
      expect(times(read(rows('Time,Half,Glucose (mg/dL)', row)))).toEqual(RIGHT);
    }
  });
  it('lost, with a sum below the table whose number looks like a clock, is mended by order or asked for, never read as it stands', () => {
    for (const n of [N, 500, 900]) {
      const row = (i: number): string => `${iso(i).slice(0, 10)},${twelve(i, 'time')},${sugar(i)}`;
      const file = read(`Date,Time,Glucose (mg/dL)\n${lines(n, row)}\nTotal rows,1700\n`);
      if (refusals(file).length === 0) expect(times(file)).toEqual(Array.from({ length: n }, (_, i) => stamp(i)));
      else expect(refusals(file)).toEqual(['clock-half-lost']);
    }
  });
  it('says the same as a clock of 24 hours', () => {
    const file = read(rows('Time,AM/PM,Glucose (mg/dL)', (i) => `${iso(i)},${twelve(i, 'half')},${sugar(i)}`));
    expect([times(file), file.columns?.[1]]).toEqual([
      RIGHT,
      { name: 'AM/PM', role: 'half', why: 'witness', evidence: 'Time' },
    ]);
  });
  it('is asked about where it contradicts one', () => {
    expect(refusals(read(rows('Time,AM/PM,Glucose (mg/dL)', (i) => `${iso(i)},AM,${sugar(i)}`)))).toEqual([
      'half-of-day-unclear',
    ]);
  });
});

describe('an offset named once', () => {
  test.each<[string, number]>([
    ['Time (UTC+2)', 120],
    ['Time (GMT-05:00)', -300],
    ['Timestamp (UTC+05:30)', 330],
    ['Time (UTC)', 0],
    ['UTC', 0],
    ['GMT', 0],
    ['Zulu', 0],
    ['utc_time', 0],
    ['dateUTC', 0],
    ['Time (Z)', 0],
    ['time_utc_plus_2', 120],
    ['UTC minus 5', -300],
    ['UTC+1', 60],
  ])('in a header: %s keeps the hours and names the distance', (name, minutes) => {
    const file = read(rows(`${name},Glucose (mg/dL)`, (i) => `${iso(i)},${sugar(i)}`));
    expect([times(file), offsets(file)]).toEqual([RIGHT, [minutes]]);
    // The layout that is reported reads the same.
    expect(
      offsets(
        read(
          rows(`${name},Glucose (mg/dL)`, (i) => `${iso(i)},${sugar(i)}`),
          { layout: file.layout },
        ),
      ),
    ).toEqual([minutes]);
  });
  it('in a line above the table', () => {
    const file = read(`Time zone: UTC+02:00\n${rows('Time,Glucose (mg/dL)', (i) => `${iso(i)},${sugar(i)}`)}`);
    expect([times(file), offsets(file)]).toEqual([RIGHT, [120]]);
    const exported = read(
      `Exported 2026-02-01 10:00 UTC\n${rows('Time,Glucose (mg/dL)', (i) => `${iso(i)},${sugar(i)}`)}`,
    );
    expect(offsets(exported)).toEqual([NO_OFFSET]);
  });
});

describe('two clocks in one table', () => {
  const two = (a: string, b: string, shift: number, cell = iso): string =>
    rows(`${a},${b},Glucose (mg/dL)`, (i) => `${iso(i)},${cell(i, shift)},${sugar(i)}`);
  test.each<[string, string, string, number]>([
    ['local beside world time', 'Local time', 'UTC time', -120],
    ['world time first', 'UTC time', 'Local time', 120],
    ['a machine beside the display', 'System time', 'Display time', 120],
    ['one that says nothing beside world time', 'Time', 'UTC time', -60],
  ])('%s: the wearer’s own is read', (_, a, b, shift) => {
    const file = read(two(a, b, shift));
    const ownIsFirst = !/UTC|System/.test(a);
    expect(times(file)[0]).toBe(ownIsFirst ? iso(0) : iso(0, shift));
    expect(file.readings.count).toBe(N);
    expect(offsets(file)).toEqual([Math.abs(shift)]);
  });
  it('neither of which is said to be the wearer’s is asked about, and either answer reads that one', () => {
    const text = two('Device time', 'Time', 180);
    const file = read(text);
    expect(refusals(file)).toEqual(['two-clocks']);
    const answered = (first: string, second: string) =>
      read(text, { layout: { meanings: { 'Device time': first, Time: second } } });
    expect(times(answered('time', 'ignore'))).toEqual(RIGHT);
    expect(times(answered('ignore', 'time'))[0]).toBe(iso(0, 180));
  });
  it('the same time written twice is no second clock', () => {
    expect(times(read(two('Time', 'Timestamp', 0)))).toEqual(RIGHT);
  });
  it('world time with a Z beside local time', () => {
    const file = read(
      two('When', 'Time', -120, (i, shift) => `${iso(i, shift).replace(' ', 'T')}:00Z`).replace(
        'When',
        'Time of reading',
      ),
    );
    expect([times(file), offsets(file)]).toEqual([RIGHT, [120]]);
  });
});

describe('days that were turned, changed or borrowed', () => {
  const dmy = (i: number): string =>
    `${iso(i * 36).slice(8, 10)}/${iso(i * 36).slice(5, 7)}/2026 ${iso(i * 36).slice(11)}`;
  const mdy = (i: number): string =>
    `${iso(i * 36).slice(5, 7)}/${iso(i * 36).slice(8, 10)}/2026 ${iso(i * 36).slice(11)}`;
  const days = Array.from({ length: N }, (_, i) => iso(i * 36));
  it('by a spreadsheet: dates up to the 12th stored turned, the others left as text', () => {
    const turned = (i: number): string => {
      const [day, clock] = iso(i * 36).split(' ') as [string, string];
      const [y, m, d] = day.split('-') as [string, string, string];
      return Number(d) <= 12 ? `${y}-${d}-${m} ${clock}` : `${d}/${m}/${y} ${clock}`;
    };
    const file = read(
      rows('Time,Sensor glucose (mg/dL)', (i) => `${turned(i)},${sugar(i)}`),
      { today: '2026-12-31' },
    );
    expect(times(file)).toEqual(days);
    expect(file.issues.map(({ code }) => code)).toContain('dates-turned');
  });
  it('half way: the order changes and no option is offered that would misread the other half', () => {
    const file = read(rows('Time,Sensor glucose (mg/dL)', (i) => `${i < 200 ? dmy(i) : mdy(i)},${sugar(i)}`));
    expect(refusals(file)).toEqual(['date-order-mixed']);
    expect(file.issues.some((issue) => 'question' in issue)).toBe(false);
    for (const dateOrder of ['day-first', 'month-first'] as const)
      expect(
        refusals(
          read(
            rows('Time,Sensor glucose (mg/dL)', (i) => `${i < 200 ? dmy(i) : mdy(i)},${sugar(i)}`),
            { dateOrder },
          ),
        ),
      ).not.toEqual([]);
  });
  it('half way with days up to 12 on the other side', () => {
    // 20 to 31 January day first, then 1 to 12 February month first: every date is one under day first.
    const from = Date.UTC(2026, 0, 20, 7);
    const text = (i: number): string => {
      const [y, m, d] = new Date(from + i * 3_600_000).toISOString().slice(0, 10).split('-') as [
        string,
        string,
        string,
      ];
      return `${m === '01' ? `${d}/${m}` : `${m}/${d}`}/${y} ${String((i + 7) % 24).padStart(2, '0')}:00`;
    };
    expect(refusals(read(`Time,Sensor glucose (mg/dL)\n${lines(24 * 23, (i) => `${text(i)},${sugar(i)}`)}\n`))).toEqual(
      ['date-order-changes'],
    );
  });
  test.each<[string, number]>([
    ['with the date that begins', 0],
    ['with the date that ends', 1],
  ])('hours from 1 to 24, %s', (_, back) => {
    const cell = (i: number): string => {
      const hour = at(i).getUTCHours();
      const date = hour === 0 ? iso(i, -back * 24 * 60).slice(0, 10) : iso(i).slice(0, 10);
      return `${date} ${String(hour === 0 ? 24 : hour).padStart(2, '0')}:${iso(i).slice(14)}`;
    };
    expect(times(read(rows('Time,Glucose (mg/dL)', (i) => `${cell(i)},${sugar(i)}`)))).toEqual(RIGHT);
  });
  it('one day that can be two takes another file’s order only with a word, and never against that file’s own days', () => {
    const bytes = (text: string) => new TextEncoder().encode(text);
    const clear = rows('Time,Sensor glucose (mg/dL)', (i) => `${dmy(i)},${sugar(i)}`);
    const both = (date: string) =>
      readInputs(
        [
          { name: 'a.csv', bytes: bytes(clear) },
          { name: 'b.csv', bytes: bytes(`Time,Carbs (g)\n${date} 08:00,30\n`) },
        ],
        { today: TODAY },
      )[1]!;
    expect(both('05/02/2026').issues.map(({ code }) => code)).toEqual([]);
    expect(both('02/05/2026').issues.map(({ code }) => code)).toEqual(['date-order-unclear']);
    expect(both('04/05/2026').issues.map(({ code }) => code)).toEqual(['date-order-borrowed']);
  });
});

test.each(['Unit: mg/dL', 'Time,W9,Glucose (mg/dL)'])(
  'an offset in a column without a name for it, under %s',
  (head) => {
    const file = read(rows(head, (i) => `${iso(i)},${i < 200 ? '+02:00' : '+01:00'},${sugar(i)}`));
    expect(times(file)).toEqual(RIGHT);
    expect(offsets(file)).toEqual([120, 60]);
  },
);

it('numbers stay with their times throughout', () => {
  expect(numbers(read(rows('Time,Glucose (mg/dL)', (i) => `${iso(i)},${sugar(i)}`)))).toEqual(
    Array.from({ length: N }, (_, i) => sugar(i)),
  );
});

describe('dates that put the day between year and month', () => {
  const from = (i: number, day: number): Date => new Date(Date.UTC(2026, 4, day, 22) + i * 300_000);
  const parts = (date: Date) => date.toISOString().slice(0, 16).split(/[-T]/) as [string, string, string, string];
  const one = (date: Date): string => {
    const [year, month, day, clock] = parts(date);
    return `${year}/${day}/${month} ${clock}`;
  };
  test.each([
    ['one column', 'Time', one],
    ['two columns', 'Date,Time', (date: Date) => one(date).replaceAll('/', '-').replace(' ', ',')],
  ])('in %s are read where the days are none otherwise, or go on only so', (_, head, form) => {
    for (const day of [1, 11, 14])
      for (const newest of [false, true]) {
        const all = Array.from({ length: 700 }, (__, i) => `${form(from(i, day))},${sugar(i)}`);
        if (newest) all.reverse();
        const file = read(`${head},Glucose (mg/dL)\n${all.join('\n')}\n`);
        const expected = all.map((__, i) => from(i, day).toISOString().slice(0, 16).replace('T', ' '));
        expect([refusals(file), times(file).sort()]).toEqual([[], expected]);
        expect(file.issues.map(({ code }) => code)).toContain('dates-year-day');
      }
  });
  test('are so in a further table and in another file of the person, whose own dates tell nothing', () => {
    const readings = `Time,Glucose (mg/dL)\n${lines(700, (i) => `${one(from(i, 3))},${sugar(i)}`)}\n`;
    const notes = `Time,Insulin (IU)\n${one(from(20, 3))},4\n${one(from(400, 3))},6\n`;
    const encoded = (text: string) => new TextEncoder().encode(text);
    const inputs = [readings, notes].map((text, i) => ({ name: `${i}.csv`, bytes: encoded(text) }));
    for (const files of [[read(`${readings}\n${notes}`)], readInputs(inputs, { today: TODAY })])
      expect(files.flatMap((file) => file.notes.map(({ wall }) => wall))).toEqual([+from(20, 3), +from(400, 3)]);
  });
  test('are none where values of single days stand a month apart, or one date is mistyped', () => {
    const monthly = read(`Time,Glucose (mg/dL)\n${lines(5, (i) => `2026-0${i + 1}-01 07:00,${sugar(i)}`)}\n`);
    expect(monthly.issues.map(({ code }) => code)).not.toContain('dates-year-day');
    const typed = lines(12, (i) => `2026-${i === 6 ? '13' : '05'}-${String(i + 1).padStart(2, '0')} 07:00,${sugar(i)}`);
    const codes = read(`Time,Glucose (mg/dL)\n${typed}\n`).issues.map(({ code }) => code);
    expect([codes.includes('dates-year-day'), codes.includes('date-impossible')]).toEqual([false, true]);
  });
});
