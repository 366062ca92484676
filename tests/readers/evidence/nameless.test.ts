import { describe, expect, it, test } from 'vitest';
import { readInputs } from '../../../src/readers/index.ts';
import { MGDL_PER_MMOL } from '../../../src/units.ts';
import { TODAY } from '../digest.ts';
import { lines, numbers, read, refusals, START, stamp, sugar, times } from './tables.ts';

const N = 400;
const VALUES = Array.from({ length: N }, (_, i) => sugar(i));
const TIMES = Array.from({ length: N }, (_, i) => stamp(i));
const world = (i: number): string =>
  new Date(START + (i * 5 - 120) * 60_000).toISOString().slice(0, 16).replace('T', ' ');

describe('a table without column names', () => {
  const forms: [string, (value: number) => string][] = [
    ['plain', (value) => `${value} mg/dL`],
    ['with an exponent', (value) => `${(value / 100).toFixed(2)}e2 mg/dL`],
    ['of 17 digits', (value) => `${value}.33333333333334 mg/dL`],
    ['with the unit in other letters', (value) => `${value} мг/дл`],
    ['with no space', (value) => `${value}mg/dL`],
  ];
  // Other dense numbers that run like glucose and name no unit, or another one.
  const neighbours: [string, (i: number) => string][] = [
    ['a pulse', (i) => String(70 + (i % 9))],
    ['a forecast', (i) => String(sugar(i + 6))],
    ['lactate', (i) => `${(1 + (i % 7) / 10).toFixed(1)} mmol/Lac`],
  ];
  test.each(forms)('reads the column whose cells name a unit of glucose: %s', (_, cell) => {
    for (const [, other] of neighbours)
      for (const first of [true, false]) {
        const row = (i: number) =>
          first ? `${stamp(i)},${other(i)},${cell(sugar(i))}` : `${stamp(i)},${cell(sugar(i))},${other(i)}`;
        const file = read(`${lines(N, row)}\n`);
        expect([refusals(file), times(file), numbers(file).map(Math.floor)]).toEqual([[], TIMES, VALUES]);
      }
  });
  // Neither cell of such a row begins with a digit, as names do not.
  test.each(['≤40 mg/dL', '<40 mg/dL', '≥400 mg/dL', '> 400 mg/dL'])(
    'takes no row of a time in words and a limit for names: %s',
    (limit) => {
      const month = new Intl.DateTimeFormat('en', { month: 'short', timeZone: 'UTC' });
      const day = new Intl.DateTimeFormat('en', { weekday: 'short', timeZone: 'UTC' });
      const at = (i: number) => new Date(START + i * 300_000);
      const when: ((i: number) => string)[] = [
        (i) => `"${month.format(at(i))} ${at(i).getUTCDate()}, ${at(i).getUTCFullYear()} ${stamp(i).slice(11)}"`,
        (i) =>
          `"${day.format(at(i))}, ${at(i).getUTCDate()} ${month.format(at(i))} ${at(i).getUTCFullYear()} ${stamp(i).slice(11)}"`,
      ];
      for (const time of when)
        for (const first of [0, 1, 27, 59, 100]) {
          const isLimit = (i: number) => i >= first && i < first + 3;
          const file = read(`${lines(N, (i) => `${time(i)},${isLimit(i) ? limit : `${sugar(i)} mg/dL`}`)}\n`);
          expect([refusals(file), times(file)], `${time(0)} ${first}`).toEqual([[], TIMES]);
        }
    },
  );
  it('asks which, where cells of two columns do', () => {
    const file = read(`${lines(N, (i) => `${stamp(i)},${sugar(i)} mg/dL,${sugar(i + 9)} mg/dL`)}\n`);
    expect(refusals(file)).toEqual(['two-value-columns']);
  });
  it('asks which of two clocks is the wearer’s, and reads the one answered', () => {
    for (const own of [(i: number) => stamp(i), (i: number) => stamp(i).replace(' ', ',')]) {
      const text = `Unit: mg/dL\n${lines(N, (i) => `${world(i)},${own(i)},${sugar(i)}`)}\n`;
      const file = read(text);
      expect(refusals(file)).toEqual(['two-clocks']);
      expect(times(read(text, { layout: { meanings: { '#1': 'ignore' } } }))).toEqual(TIMES);
    }
  });
  it('hears the unit that a line above it names', () => {
    const mmol = (i: number) => (sugar(i) / MGDL_PER_MMOL).toFixed(1);
    for (const [unit, code, cell] of [
      ['mg/dL', 0, sugar],
      ['mmol/L', 1, mmol],
    ] as const) {
      const file = read(`Glucose in ${unit}\n\n${lines(N, (i) => `${stamp(i)},${cell(i)}`)}\n`);
      expect([file.readings.count, new Set(file.readings.unit)]).toEqual([N, new Set([code])]);
    }
  });
  it('hears whose it is from the lines above it', () => {
    const of = (name: string) =>
      read(`Patient: ${name}\nMade: 2026-02-01 10:00\n${lines(N, (i) => `${stamp(i)},${sugar(i)} mg/dL`)}\n`);
    expect(of('Ada Fjord').persons).toEqual(['Ada Fjord']);
    expect(times(of('Ada Fjord'))).toEqual(TIMES);
    const bytes = (text: string) => new TextEncoder().encode(text);
    const two = readInputs(
      ['Ada Fjord', 'Bo Berg'].map((name) => ({
        name: `${name}.csv`,
        bytes: bytes(`Patient: ${name}\n${lines(N, (i) => `${stamp(i)},${sugar(i)} mg/dL`)}\n`),
      })),
      { today: TODAY },
    );
    expect(two.map(({ persons }) => persons)).toEqual([['Ada Fjord'], ['Bo Berg']]);
  });
  it('asks which clock is the wearer’s where one is a day number or a count of seconds, and takes the answer', () => {
    const sent = (i: number): string => stamp(i + 108);
    for (const own of [
      (i: number) => ((START + i * 300_000) / 86_400_000 + 25_569).toFixed(10),
      (i: number) => String((START + i * 300_000) / 1000),
    ]) {
      const text = lines(N, (i) => `${sent(i)},${own(i)},${sugar(i)} mg/dL`);
      expect(refusals(read(text))).toContain('two-clocks');
      const answered = read(text, { layout: { meanings: { '#2': 'time', '#1': 'ignore' } } });
      expect([refusals(answered), times(answered)]).toEqual([[], TIMES]);
    }
  });
  const arabic = (text: string) => text.replace(/\d/g, (digit) => String.fromCodePoint(0x660 + Number(digit)));
  // Ways to write a value that is no plain number in ASCII digits, and how it is written beyond the ends of a sensor.
  const odd: [string, (i: number) => string][] = [
    ['a unit', (i) => `${sugar(i)} mg/dL`],
    [
      'words for low and high beside a unit',
      (i) => (i % 5 < 2 ? ['LOW mg/dL', 'HIGH mg/dL'][i % 5]! : `${sugar(i)} mg/dL`),
    ],
    ['words alone on most rows', (i) => (i % 5 < 3 ? ['LOW', 'High', 'trop bas'][i % 5]! : String(sugar(i)))],
    ['signs', (i) => (i % 5 < 2 ? ['<40', '>400'][i % 5]! : String(sugar(i)))],
    ['digits of another script', (i) => arabic((sugar(i) / MGDL_PER_MMOL).toFixed(1))],
  ];
  test.each(odd)('finds the column of values in cells with %s, from its first row', (_, cell) => {
    for (const when of [stamp, (i: number) => stamp(i).replace(' ', ',')]) {
      const file = read(`${lines(N, (i) => `${when(i)},${cell(i)}`)}\n`);
      expect([refusals(file), times(file)], cell(0)).toEqual([[], TIMES]);
    }
  });
  it('takes no column of such words alone for values', () => {
    const file = read(`${lines(N, (i) => `${stamp(i)},${['low', 'high', 'low'][i % 3]}`)}\n`);
    expect(refusals(file)).toEqual(['columns-unclear']);
  });
  it('asks which clock is the wearer’s beside a date that stands only where it changes', () => {
    const carried = (i: number): string =>
      `${i === 0 || stamp(i).slice(0, 10) !== stamp(i - 1).slice(0, 10) ? stamp(i).slice(0, 10) : ''},${stamp(i).slice(11)}`;
    for (const first of [true, false]) {
      const text = `Unit: mg/dL\n${lines(N, (i) => (first ? `${carried(i)},${world(i)},${sugar(i)}` : `${world(i)},${carried(i)},${sugar(i)}`))}\n`;
      expect(refusals(read(text))).toEqual(['two-clocks']);
      const meanings = first ? { '#3': 'ignore' as const } : { '#1': 'ignore' as const };
      const answered = read(text, { layout: { meanings } });
      expect([refusals(answered), times(answered)]).toEqual([[], TIMES]);
    }
  });
  it('reads a date and a time of day that an answer names by their places', () => {
    const text = lines(N, (i) => `${stamp(i).replace(' ', ',')},${70 + (i % 9)},${sugar(i)}`);
    expect(refusals(read(text))).toEqual(['two-value-columns']);
    const meanings = { '#1': 'date', '#2': 'clock', '#3': 'ignore', '#4': 'sensor' } as const;
    const answered = read(text, { unit: 'mg/dL', layout: { meanings } });
    expect([refusals(answered), times(answered), numbers(answered)]).toEqual([[], TIMES, VALUES]);
  });
  it('takes numbers that stand now and then, and of many sizes, for no kinds of row, wherever they stand', () => {
    for (const [every, first] of [
      [40, 7],
      [25, 3],
      [97, 50],
      [31, 30],
    ] as const) {
      const cell = (i: number) => (i % every === first ? String(120 + ((i * 7) % 83)) : '');
      const file = read(`${lines(960, (i) => `${stamp(i)},${sugar(i)} mg/dL,${cell(i)}`)}\n`);
      expect([refusals(file), file.readings.count], `${every} ${first}`).toEqual([[], 960]);
    }
  });
});
