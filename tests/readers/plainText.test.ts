import { describe, expect, test } from 'vitest';
import type { ReadFile, ReadSettings } from '../../src/model/input.ts';
import { readInputs } from '../../src/readers/index.ts';
import { TODAY } from './digest.ts';
import { at, comma, dmy, hm, iso, mg, mm, two } from './handWritten/rows.ts';

/** Texts that people set by hand or programs log: what parts their columns and where their days stand. */
const N = 400;
const each = (line: (i: number) => string | string[]): string =>
  `${Array.from({ length: N }, (_, i) => line(i))
    .flat()
    .join('\n')}\n`;
const read = (text: string, settings: Partial<ReadSettings> = {}, name = 'a.txt'): ReadFile =>
  readInputs([{ name, bytes: new TextEncoder().encode(text) }], { today: TODAY, ...settings })[0]!;
const refusals = ({ issues }: ReadFile): string[] =>
  issues.flatMap(({ level, code }) => (level === 'refusal' ? [code] : []));

/** Every reading at its minute, in the file's own line. */
function expectTruth(file: ReadFile, value: (i: number) => number, n = N): void {
  expect(refusals(file)).toEqual([]);
  const { readings } = file;
  const found = Array.from({ length: readings.count }, (_, k) => [readings.wall[k]!, readings.native[k]!]);
  found.sort(([a], [b]) => a! - b!);
  expect(found).toEqual(Array.from({ length: n }, (_, i) => [at(i).ms, value(i)]));
}

const MONTH = ['', 'Jan', 'Feb', 'March'];
const word = (i: number): string => `${two(at(i).day)} ${MONTH[at(i).month]} ${at(i).year}`;

describe('columns parted by blanks alone', () => {
  test.each([
    [
      'set below their names',
      `Date        Time    Glucose\n${each((i) => `${iso(i)}  ${hm(i)}   ${`${mg(i)}`.padStart(4)}`)}`,
    ],
    ['one blank each', `date time glucose mg/dL\n${each((i) => `${iso(i)} ${hm(i)} ${mg(i)}`)}`],
    ['time in one column', `Time              Sensor glucose (mg/dL)\n${each((i) => `${iso(i)} ${hm(i)}  ${mg(i)}`)}`],
    ['days first', `Datum Uhrzeit Glukose (mg/dl)\n${each((i) => `${dmy(i)} ${hm(i)} ${mg(i)}`)}`],
    ['a month by name', `Time Glucose\n${each((i) => `${word(i)} ${hm(i)} ${mg(i)}`)}`],
    ['a title above', `My sensor log\n\ndate time glucose\n${each((i) => `${iso(i)} ${hm(i)} ${mg(i)}`)}`],
    ['no names', each((i) => `${iso(i)} ${hm(i)} ${mg(i)}`)],
  ])('%s', (_, text) => {
    expectTruth(read(text), mg);
    expect(read(text).choices).toContainEqual(expect.objectContaining({ id: 'delimiter', value: 'blanks' }));
  });

  // Blank in every line, names and dates alike, by chance.
  test.each(['Data e hora', 'When  it is', 'Date of a reading', 'Hora  da leitura'])(
    'a date is not cut where its name has a blank: %s',
    (name) => {
      const day = (i: number): string => `${two(at(i).day)} ${MONTH[at(i).month]!.slice(0, 3)} ${at(i).year}`;
      const text = `${name.padEnd(19)}Glucose (mg/dL)\n${each((i) => `${day(i)} ${hm(i)}  ${mg(i)}`)}`;
      expectTruth(
        read(text, name.startsWith('When') ? { layout: { columns: { [name.replace('  ', ' ')]: 'time' } } } : {}),
        mg,
      );
    },
  );

  test('decimal commas', () => {
    expectTruth(read(`Datum Zeit Glukose mmol/l\n${each((i) => `${dmy(i)} ${hm(i)} ${comma(mm(i))}`)}`), mm);
  });

  test('a cell that stands empty keeps its column by its place', () => {
    const carbs = (i: number): string => (i % 40 === 6 ? '35' : '');
    const dose = (i: number): string => (i % 40 === 9 ? '4' : '');
    const file = read(
      `Date        Time   Glucose  Carbs (g)  Insulin (IU)\n${each((i) => `${iso(i)}  ${hm(i)}  ${`${mg(i)}`.padEnd(9)}${carbs(i).padEnd(11)}${dose(i)}`)}`,
    );
    expectTruth(file, mg);
    const kinds = file.notes.map(({ kind, amount }) => `${kind} ${amount}`);
    expect(new Set(kinds)).toEqual(new Set(['meal 35', 'insulin 4']));
    expect(kinds).toHaveLength(20);
  });

  test('and where nothing tells whose an amount is, nothing is read', () => {
    const file = read(
      `Date Time Glucose Carbs Insulin\n${each((i) => `${iso(i)} ${hm(i)} ${mg(i)}${i % 40 === 6 ? ' 35' : ''}`)}`,
    );
    expect(refusals(file)).toEqual(['no-columns']);
    expect(file.readings.count).toBe(0);
  });

  test('two names over cells that share no edge are not one column', () => {
    const row = (i: number): string => (i % 40 === 6 ? '       45' : `${mg(i)}`);
    const file = read(`Date        Time   Glucose Carbs\n${each((i) => `${iso(i)}  ${hm(i)}  ${row(i)}`)}`);
    expect(refusals(file)).toEqual(['no-columns']);
    expect([file.readings.count, file.notes.length]).toEqual([0, 0]);
  });

  test('a column of another meaning that stays empty gives no name to the one before', () => {
    const file = read(`Date        Time   Glucose Carbs\n${each((i) => `${iso(i)}  ${hm(i)}  ${mg(i)}`)}`);
    expectTruth(file, mg);
    expect(file.notes).toEqual([]);
  });

  test.each(['Time of day', 'Day and time', 'Clock time', 'Local time', 'Uhr', 'Hora del dia', 'Heure du jour'])(
    'a name of several words of time is one: %s',
    (name) => {
      const wide = (cell: string): string => cell.padEnd(Math.max(name.length, 5) + 2);
      const text = `Date        ${wide(name)}Sensor glucose (mg/dL)\n${each((i) => `${iso(i)}  ${wide(hm(i))}${mg(i)}`)}`;
      for (const one of [text, text.replaceAll(/ (\d{2,3})$/gm, ' $1,0')]) expectTruth(read(one), mg);
    },
  );

  test('words behind the last name are one remark', () => {
    const file = read(
      `date time glucose note\n${each((i) => `${iso(i)} ${hm(i)} ${mg(i)} ${i % 40 === 6 ? 'felt a bit low' : '-'}`)}`,
    );
    expectTruth(file, mg);
    expect(new Set(file.notes.map(({ text }) => text))).toEqual(new Set(['felt a bit low']));
  });

  test('a table parted by commas keeps its commas', () => {
    for (const head of ['Time,Glucose (mg/dL)\n', '']) {
      const file = read(`${head}${each((i) => `${iso(i)} ${hm(i)},${mg(i)}`)}`);
      expectTruth(file, mg);
      expect(file.choices).toContainEqual(expect.objectContaining({ id: 'delimiter', value: ',' }));
    }
  });
});

describe('lines of name=value', () => {
  test.each([
    ['a unit behind the value', (i: number) => `${iso(i)} ${hm(i)} glucose=${mg(i)} mg/dL`],
    ['more than one pair', (i: number) => `${iso(i)}T${hm(i)}:00 level="info" sensor_glucose=${mg(i)}`],
    ['commas between', (i: number) => `${iso(i)} ${hm(i)}, glucose = ${mg(i)}, battery = 80`],
  ])('%s', (_, line) => {
    const file = read(each(line));
    expectTruth(file, mg);
    expect(Array.from(file.readings.line.subarray(0, 3))).toEqual([1, 2, 3]);
    expect(file.fates).toHaveLength(N);
  });
});

test('of a time in front of name=value and another among them none is chosen', () => {
  const file = read(each((i) => `${iso(i + 12)} ${hm(i + 12)} at=${iso(i)}T${hm(i)} glucose=${mg(i)}`));
  expect(file.readings.count).toBe(0);
  expect(refusals(file)).toEqual(['columns-unclear']);
});

describe('days that stand as headings', () => {
  const days = (heading: (i: number) => string, row: (i: number) => string, head = '', repeated = ''): string => {
    let last = '';
    return each((i) => {
      if (iso(i) === last) return row(i);
      last = iso(i);
      return [heading(i), ...(repeated ? [repeated] : []), row(i)];
    }).replace(/^/, head);
  };
  test.each([
    [
      'with a weekday',
      days(
        (i) => `Tuesday ${at(i).day} March 2026`,
        (i) => `${hm(i)};${mg(i)}`,
        'Time;Glucose (mg/dL)\n',
      ),
    ],
    [
      'names repeated',
      days(
        (i) => dmy(i),
        (i) => `${hm(i)};${mg(i)}`,
        'Sensor log\n',
        'Time;Sensor glucose (mg/dL)',
      ),
    ],
    [
      'with a word and empty cells',
      days(
        (i) => `Date: ${iso(i)},,`,
        (i) => `${hm(i)},${mg(i)},`,
        'Time,Glucose,Note\n',
      ),
    ],
    [
      'columns parted by blanks',
      days(
        (i) => `${at(i).day} March 2026`,
        (i) => `${hm(i)}  ${mg(i)}`,
        'Time   Glucose\n',
      ),
    ],
  ])('%s', (_, text) => {
    const file = read(text);
    expectTruth(file, mg);
    expect(file.choices).toContainEqual({ id: 'day-headings', value: 2, by: 'file' });
  });

  test.each([
    ['one date alone may be the day of print', `2026-04-02\nTime;Glucose\n${each((i) => `${hm(i)};${mg(i)}`)}`],
    [
      'hours past midnight under one heading',
      `16.03.2026\nTime;Glucose\n09:00;120\n17.03.2026\n${each((i) => `${hm(i)};${mg(i)}`)}`,
    ],
    [
      'the day of print amid a day, at the head of a page',
      `Time;Glucose\n16.03.2026\n09:00;120\n09:05;121\n17.03.2026\n09:00;130\n09:05;131\nDate: 02.04.2026\n09:10;132\n09:15;133\n`,
    ],
    [
      'and at the head of each page',
      `Date: 02.04.2026\nTime;Glucose\n16.03.2026\n09:00;120\nDate: 02.04.2026\n12:00;121\n17.03.2026\n09:00;130\n`,
    ],
    [
      'days of two people',
      `Anna\nTime;Glucose\n16.03.2026\n09:00;120\n17.03.2026\n09:00;121\nBen\n16.03.2026\n09:02;90\n17.03.2026\n09:02;91\n`,
    ],
    [
      'a heading with a remark, which may be that of the rows',
      `Time;Glucose\n16.03.2026\n09:00;120\n17.03.2026 football\n09:10;121\n18.03.2026\n09:20;122\n19.03.2026\n09:00;90\n`,
    ],
  ])('%s: the day is not guessed', (_, text) => {
    const file = read(text);
    expect(file.readings.count).toBe(0);
    expect(refusals(file)).toEqual(['days-not-said']);
  });
});

describe('time counted from a start', () => {
  const units: [string, string, (i: number) => string][] = [
    ['minutes', 'minute', (i) => `${i * 5}`],
    ['minutes in brackets', 'Time (min)', (i) => `${i * 5}.0`],
    ['seconds', 'seconds since start', (i) => `${i * 300}`],
    ['hours', 'Elapsed time (h)', (i) => `${(i * 5) / 60}`],
  ];
  test.each(units)('%s, with the start above', (_, name, cell) => {
    const file = read(
      `Start of recording: 2026-03-17 06:10\n${name};glucose (mg/dL)\n${each((i) => `${cell(i)};${mg(i)}`)}`,
    );
    expectTruth(file, mg);
    expect(file.choices).toContainEqual({
      ...{ id: 'start', value: '2026-03-17 06:10', by: 'file' },
      evidence: { is: 'line', line: 1 },
    });
  });
  test.each(units)('%s, asked for where no line says it', (_, name, cell) => {
    const text = `Printed: 2026-04-02 09:00\n${name};glucose (mg/dL)\n${each((i) => `${cell(i)};${mg(i)}`)}`;
    expect(refusals(read(text))).toEqual(['start-not-said']);
    expectTruth(read(text, { layout: { start: '2026-03-17 06:10' } }), mg);
  });
  test('that begins anew is not read on from the first start', () => {
    const text = `Start: 2026-03-16 06:10\nminute;glucose (mg/dL)\n${each((i) => `${(i % 200) * 5 + (i < 200 ? 0 : 2)};${mg(i)}`)}`;
    const file = read(text);
    expect(file.readings.count).toBe(0);
    expect(file.issues).toContainEqual(
      expect.objectContaining({ code: 'count-runs-back', level: 'refusal', origin: { file: 'a.txt', line: 203 } }),
    );
  });
  test('of two starts none is chosen', () => {
    const text = `Start of study: 2026-01-01 00:00\nStart of sensor: 2026-03-17 06:10\nminute;glucose (mg/dL)\n${each((i) => `${i * 5};${mg(i)}`)}`;
    expect(refusals(read(text))).toEqual(['start-not-said']);
    expectTruth(read(text, { layout: { start: '2026-03-17 06:10' } }), mg);
  });
  test('what a change of the clocks does to it is said', () => {
    const text = `Start: 2026-03-28 20:10\nminute;glucose (mg/dL)\n${each((i) => `${i * 5};${mg(i)}`)}`;
    expect(read(text).issues).toContainEqual(expect.objectContaining({ code: 'counted-times', level: 'note' }));
  });
  test('the advice as it stands is no answer', () => {
    const text = `minute;glucose (mg/dL)\n${each((i) => `${i * 5};${mg(i)}`)}`;
    const [issue] = read(text).issues;
    const answer = issue && 'question' in issue && issue.question?.of === 'layout' ? issue.question.answer : undefined;
    expect(refusals(read(text, { layout: JSON.parse(answer!) }))).toContain('layout-invalid');
  });
  test('parts of a day beside day numbers are none', () => {
    const day = (i: number) => at(i).ms / 86_400_000 + 25_569;
    const text = `Dátum;Óra;Glukóz (mg/dL)\n${each((i) => `${Math.floor(day(i))};${(day(i) % 1).toFixed(10)};${mg(i)}`)}`;
    expectTruth(read(text), mg);
  });
  test('minutes of exercise beside times are none', () => {
    expectTruth(
      read(`Time,Glucose,Exercise (min)\n${each((i) => `${iso(i)} ${hm(i)},${mg(i)},${i === 7 ? 30 : ''}`)}`),
      mg,
    );
  });
});

describe('dates without a year', () => {
  test.each([
    ['numbers', (i: number) => `${two(at(i).day)}/${two(at(i).month)} ${hm(i)}`],
    ['numbers with points', (i: number) => `${two(at(i).day)}.${two(at(i).month)}. ${hm(i)}`],
    ['a month by name', (i: number) => `${at(i).day} ${MONTH[at(i).month]} ${hm(i)}`],
    ['a month by name first', (i: number) => `${MONTH[at(i).month]} ${at(i).day} ${hm(i)}`],
    ['a weekday before', (i: number) => `Tue ${two(at(i).day)}/${two(at(i).month)} ${hm(i)}`],
  ])('%s: the year is asked for', (_, when) => {
    const text = `Time,Glucose (mg/dL)\n${each((i) => `${when(i)},${mg(i)}`)}`;
    expect(refusals(read(text))).toEqual(['year-not-said']);
    expectTruth(read(text, { layout: { year: 2026 } }), mg);
  });
  test('in a column of their own', () => {
    const text = `Date;Time;Glucose (mg/dL)\n${each((i) => `${at(i).day}/${at(i).month};${hm(i)};${mg(i)}`)}`;
    expect(refusals(read(text))).toEqual(['year-not-said']);
    expectTruth(read(text, { layout: { year: 2026 } }), mg);
  });
  test.each([
    [6, false],
    [6, true],
    [4, false],
    [4, true],
    [3, false],
    [3, true],
    [2, false],
    [2, true],
  ])('a new year begins among %i days, newest first: %s', (days, newest) => {
    const rows = Array.from({ length: days }, (_, k) => new Date(Date.UTC(2025, 11, 32 - (days >> 1) + k, 12, 0)));
    const lines = rows.map((d, k) => `${d.getUTCDate()}.${d.getUTCMonth() + 1}. 12:00;${100 + k}`);
    const text = `Zeit;Sensor (mg/dL)\n${(newest ? lines.reverse() : lines).join('\n')}\n`;
    const { readings } = read(text, { layout: { year: newest ? 2026 : 2025 } });
    const walls = [...readings.wall.subarray(0, readings.count)].sort((a, b) => a - b);
    expect(walls).toEqual(rows.map((d) => d.getTime()));
  });
  const stretches = (...months: [number, number][]): { text: string; walls: number[] } => {
    const walls = months.flatMap(([year, month]) =>
      Array.from({ length: 30 }, (_, k) => Date.UTC(year, month - 1, 14, k)),
    );
    const line = (wall: number, k: number): string => {
      const [, day, month, , clock] = new Date(wall).toUTCString().split(' ');
      return `${day} ${month} ${clock!.slice(0, 5)};${100 + (k % 9)}`;
    };
    return { text: `Time;Sensor (mg/dL)\n${walls.map(line).join('\n')}\n`, walls };
  };
  test('a long pause within a year begins none', () => {
    for (const months of [
      [3, 10],
      [1, 11],
      [3, 11],
      [2, 12],
    ] as const) {
      const { text, walls } = stretches([2025, months[0]], [2025, months[1]]);
      const { readings } = read(text, { layout: { year: 2025 } });
      expect([...readings.wall.subarray(0, readings.count)]).toEqual(walls);
    }
  });
  test('after a step back by months nothing tells the year, and nothing is read', () => {
    const file = read(stretches([2025, 9], [2026, 4]).text, { layout: { year: 2025 } });
    expect(file.readings.count).toBe(0);
    expect(file.issues).toContainEqual(
      expect.objectContaining({ code: 'years-unclear', level: 'refusal', origin: { file: 'a.txt', line: 32 } }),
    );
  });
  test('whether one begins is asked for where the order of day and month would tell', () => {
    const text = 'Time;Sensor (mg/dL)\n05/12 12:00;100\n06/12 12:00;101\n07/01 12:00;102\n08/01 12:00;103\n';
    expect(refusals(read(text, { layout: { year: 2025 } }))).toEqual(['year-turns-unclear']);
    const { readings } = read(text, { layout: { year: 2025 }, dateOrder: 'day-first' });
    expect(new Date(readings.wall[2]!).toISOString().slice(0, 10)).toBe('2026-01-07');
  });
});

describe('days side by side, times down', () => {
  const table = (corner: string): string =>
    `${corner},${[0, 1, 2].map((d) => `${17 + d} Mar 2026`).join(',')}\n${Array.from(
      { length: 96 },
      (_, k) => `${two(k >> 2)}:${two((k & 3) * 15)},${[0, 1, 2].map((d) => mg(d * 96 + k)).join(',')}`,
    ).join('\n')}\n`;
  const truth = (file: ReadFile): void => {
    const { readings } = file;
    expect(refusals(file)).toEqual([]);
    const found = Array.from({ length: readings.count }, (_, k) => [readings.wall[k]!, readings.native[k]!]);
    found.sort(([a], [b]) => a! - b!);
    expect(found).toEqual(Array.from({ length: 288 }, (_, i) => [Date.UTC(2026, 2, 17) + i * 900_000, mg(i)]));
  };
  test('named as glucose', () => {
    truth(read(table('Glucose (mg/dL)')));
    truth(read(`Sensor glucose\n${table('Time')}`));
  });
  test('further days below, each with their own rows', () => {
    const block = (from: number): string =>
      `Glucose (mg/dL),${[0, 1].map((d) => `${17 + from + d} Mar 2026`).join(',')},Mean\n${Array.from(
        { length: 96 },
        (_, k) => `${two(k >> 2)}:${two((k & 3) * 15)},${[0, 1].map((d) => mg((from + d) * 96 + k)).join(',')},111`,
      ).join('\n')}\n`;
    const file = read(`${block(0)}\n${block(2)}`);
    const { readings } = file;
    const found = Array.from({ length: readings.count }, (_, k) => [readings.wall[k]!, readings.native[k]!]);
    found.sort(([a], [b]) => a! - b!);
    expect(found).toEqual(Array.from({ length: 384 }, (_, i) => [Date.UTC(2026, 2, 17) + i * 900_000, mg(i)]));
    // A column beside the days is no reading, and is told.
    expect(file.issues).toContainEqual(expect.objectContaining({ code: 'columns-ignored', actual: ['Mean'] }));
  });
  test('further hours below, and means in a row of their own', () => {
    const block = (from: number): string =>
      `Glucose mmol/L,${Array.from({ length: 12 }, (_, h) => `${two(from + h)}:00`).join(',')}\n${Array.from(
        { length: 7 },
        (_, d) => `2026-03-${two(d + 1)},${Array.from({ length: 12 }, (_, h) => mm(d * 24 + from + h)).join(',')}`,
      ).join('\nMean,7.20,6.10,7.30,5.40,8.20,7.50,7.20,6.10,7.30,5.40,8.20,7.50\n')}\n`;
    const { readings } = read(`${block(0)}\n${block(12)}`);
    const found = Array.from({ length: readings.count }, (_, k) => [readings.wall[k]!, readings.native[k]!]);
    found.sort(([a], [b]) => a! - b!);
    expect(found).toEqual(Array.from({ length: 168 }, (_, i) => [Date.UTC(2026, 2, 1) + i * 3_600_000, mm(i)]));
  });
  test('what nothing names is asked for, and the advice gives the truth', () => {
    const file = read(table('Time'));
    expect(refusals(file)).toEqual(['column-like-glucose']);
    expect(file.readings.count).toBe(0);
    truth(read(table('Time'), { layout: { meanings: { Value: 'sensor' } } }));
  });
});

describe('readings and notes in one column', () => {
  const text = `When,What\n${each((i) => [`${iso(i)} ${hm(i)},${mg(i)}`, ...(i % 40 === 6 ? [`${iso(i)} ${hm(i)},lunch 45 g`] : [])])}`;
  test('are asked for, and the advice keeps both', () => {
    const asked = read(text);
    expect(refusals(asked)).toEqual(['column-of-both']);
    const file = read(text, { layout: { columns: { When: 'time', What: 'mixed' } } });
    expectTruth(file, mg);
    expect(file.notes.map(({ kind, text: words }) => `${kind} ${words}`)).toEqual(Array(10).fill('text lunch 45 g'));
    expect(file.fates).not.toContain('set-aside');
    // What was settled leads to the same once more.
    const again = read(text, { layout: file.layout });
    expect([again.readings.count, again.notes.length]).toEqual([N, 10]);
  });
});

describe('names that nobody knows, over cells that tell', () => {
  test('a time by its cells, glucose by its unit', () => {
    const samples = Array.from({ length: N }, (_, i) => ({ t: `${iso(i)}T${hm(i)}:00`, mgdl: mg(i) }));
    expectTruth(read(JSON.stringify({ device: 'homemade', samples }), {}, 'a.json'), mg);
    expectTruth(read(`Qwx,Glucose\n${each((i) => `${iso(i)} ${hm(i)},${mg(i)}`)}`), mg);
  });
  test('of two such times none is chosen', () => {
    const file = read(`Qwx,Zrt,Glucose\n${each((i) => `${iso(i)} ${hm(i)},${iso(i)} ${hm(i + 1)},${mg(i)}`)}`);
    expect(file.readings.count).toBe(0);
  });
});
