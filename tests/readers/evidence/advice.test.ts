import { describe, expect, test } from 'vitest';
import { advice, lines, numbers, read, refusals, stamp, sugar, table, times } from './tables.ts';

/**
 * Whoever takes the program's own advice gets the truth or another question, never something else. Each file is read, its first
 * question answered as the question itself proposes, and read again.
 */
const N = 300;
const ALL = Array.from({ length: N }, (_, i) => sugar(i));
const CLOCK = Array.from({ length: N }, (_, i) => stamp(i));
const among = (word: string, value: string): string =>
  `Time,Type,Value,Unit\n${lines(N, (i) => `${stamp(i)},Reading,${sugar(i)},mg/dL${i % 40 === 7 ? `\n${stamp(i)},${word},${value}` : ''}`)}\n`;

interface Case {
  text: string;
  /** What a person who knows the file fills in. */
  fill?: string;
  truth: number[];
  unit?: number;
}

const cases: Record<string, Case> = {
  'an unknown word of doses': { text: among('Fnord', '4,IU'), fill: 'insulin', truth: ALL },
  'an unknown word of carbohydrate': { text: among('Fnord', '45,g'), fill: 'carbohydrate', truth: ALL },
  'a unit nothing names': {
    text: table('Time,Glucose', 20, (i) => `${20 + (i % 5)}`),
    truth: Array.from({ length: 20 }, (_, i) => 20 + (i % 5)),
  },
  'a name that says the wrong unit': {
    text: table('Time,Glucose (mg/dL)', N, (i) => (11 + sugar(i) / 18).toFixed(1)),
    truth: ALL.map((value) => Number((11 + value / 18).toFixed(1))),
    unit: 1,
  },
  'a unit that changes': {
    text: table('Time,Glucose', N, (i) => (i < 140 ? (sugar(i) / 18).toFixed(1) : String(sugar(i)))),
    truth: ALL.map((value, i) => (i < 140 ? Number((value / 18).toFixed(1)) : value)),
  },
  'two sensors': {
    text: table('Time,Sensor A (mg/dL),Sensor B (mg/dL)', N, (i) => `${sugar(i)},${sugar(i + 50) + 30}`),
    truth: ALL,
  },
  'a column that parts the values': {
    text: `Time,Glucose (mg/dL),W9\n${lines(N, (i) => `${stamp(i)},${sugar(i)},A${i % 30 === 11 ? `\n${stamp(i)},12,B` : ''}`)}\n`,
    fill: 'fingerstick',
    truth: ALL,
  },
};

describe('the advice of a question', () => {
  test.each(Object.entries(cases))('%s', (_, { text, fill = '', truth, unit }) => {
    const asked = read(text);
    expect(refusals(asked).length).toBeGreaterThan(0);
    const settings = advice(asked, fill);
    expect(settings).not.toEqual({});
    const answered = read(text, settings);
    if (refusals(answered).length > 0) return;
    expect(numbers(answered)).toEqual(truth);
    if (unit !== undefined) expect(answered.readings.unit[0]).toBe(unit);
  });

  test('a clock: either answer reads that clock and no third time', () => {
    const text = `Device time,Time,Glucose (mg/dL)\n${lines(N, (i) => `${stamp(i)},${stamp(i + 24)},${sugar(i)}`)}\n`;
    expect(times(read(text, advice(read(text))))).toEqual(CLOCK);
  });

  test('a series confirmed is used, and says so', () => {
    const text = table('Time,Glucose (mg/dL)', N, (i) => String(420 + Math.round(40 * Math.sin(i / 30))));
    const asked = read(text);
    expect(refusals(asked)).toEqual(['series-implausible']);
    const answered = read(text, advice(asked));
    expect(answered.issues.map(({ level, code }) => `${level} ${code}`)).toEqual(['warning series-confirmed']);
    expect(answered.readings.count).toBe(N);
  });
});
