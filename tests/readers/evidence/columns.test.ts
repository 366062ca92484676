import { describe, expect, it, test } from 'vitest';
import { numbers, read, refusals, stamp, sugar, table } from './tables.ts';

const N = 300;
const ALL = Array.from({ length: N }, (_, i) => sugar(i));

describe('a column of kinds whose word for the sensor is unknown', () => {
  // Rows of insulin and carbohydrate among them, as the issue found them counted: 4 and 45 "mg/dL".
  const shared = (word: string, others: [string, string] = ['Insulin', 'Carbohydrate']): string => {
    let text = 'Time,Type,Value\n';
    for (let i = 0; i < N; i++) {
      text += `${stamp(i)},${word},${sugar(i)}\n`;
      if (i % 40 === 7)
        text += `${stamp(i).replace(/.$/, '1')},${others[0]},4\n${stamp(i).replace(/.$/, '2')},${others[1]},45\n`;
    }
    return text;
  };
  test.each(['Reading', 'Measurement', 'Data', 'Messwert', 'Foo', '0', 'xyzzy'])(
    '%s is the sensor by its curve',
    (word) => {
      const file = read(shared(word));
      expect(numbers(file)).toEqual(ALL);
      expect(file.notes.map(({ kind }) => kind).filter((kind) => kind === 'insulin')).toHaveLength(8);
      expect(file.layout).toMatchObject({ kinds: { [word]: 'sensor' } });
      // What was learnt is in the layout, which reads the same without learning.
      expect(numbers(read(shared(word), { layout: file.layout }))).toEqual(ALL);
    },
  );
  test.each([
    ['Blorb', 'Fnord'],
    ['Insulin', 'Fnord'],
  ] as [string, string][])('words of doses that nobody knows are asked for: %s, %s', (a, b) => {
    const file = read(shared('Reading', [a, b]));
    expect(refusals(file)).toEqual(['kinds-unknown']);
    expect(numbers(file)).toEqual([]);
  });
  it('asks with every group, its rows and its range', () => {
    const { issues } = read(shared('Reading', ['Insulin', 'Fnord']));
    expect(issues.find(({ code }) => code === 'kinds-unknown')).toMatchObject({
      expected: 'Type',
      actual: [
        { is: 'group', word: 'Reading', rows: N },
        { is: 'group', word: 'Insulin', rows: 8, low: 4, high: 4 },
        { is: 'group', word: 'Fnord', rows: 8, low: 45, high: 45 },
      ],
      question: { of: 'layout', field: 'kinds' },
    });
  });
  it('hears calibration and manual rows between the readings', () => {
    let text = 'Time,Type,Glucose (mg/dL)\n';
    for (let i = 0; i < N; i++) {
      text += `${stamp(i)},EGV,${sugar(i)}\n`;
      if (i % 60 === 5) text += `${stamp(i).replace(/.$/, '2')},Calibration,${sugar(i) + 9}\n`;
      if (i % 60 === 30) text += `${stamp(i).replace(/.$/, '3')},Manual entry,${sugar(i) - 11}\n`;
    }
    const file = read(text);
    expect(numbers(file)).toEqual(ALL);
    expect([...new Set(file.notes.map(({ kind }) => kind))].sort()).toEqual(['calibration', 'fingerstick']);
  });
});

describe('a column that parts the values and says nothing of kinds', () => {
  const parted = (name: string, other: (i: number) => number, words = ['A', 'B']): string => {
    let text = `Time,Glucose (mg/dL),${name}\n`;
    for (let i = 0; i < N; i++) {
      text += `${stamp(i)},${sugar(i)},${words[0]}\n`;
      if (i % 30 === 11) text += `${stamp(i).replace(/.$/, '2')},${other(i)},${words[1]}\n`;
    }
    return text;
  };
  it('is asked about when its rows are of another size, or stand between the readings', () => {
    expect(refusals(read(parted('W9', () => 12)))).toEqual(['column-parts-values']);
    expect(refusals(read(parted('W9', (i) => sugar(i) + 14)))).toEqual(['column-parts-values']);
  });
  test.each<[string, (i: number) => string]>([
    ['arrows', (i) => (sugar(i + 1) - sugar(i) > 2 ? '↗' : sugar(i + 1) - sugar(i) < -2 ? '↘' : '→')],
    ['a status by size', (i) => (sugar(i) > 180 ? 'above' : 'within')],
    ['one device after another', (i) => (i < 150 ? 'SN-1' : 'SN-2')],
    ['the same in every row', () => 'x'],
  ])('is harmless: %s', (_, cell) => {
    const file = read(table('Time,Glucose (mg/dL),Extra', N, (i) => `${sugar(i)},${cell(i)}`));
    expect(numbers(file)).toEqual(ALL);
    expect(file.columns?.find(({ name }) => name === 'Extra')?.role).toBe('ignore');
  });
});

describe('other quantities beside the glucose', () => {
  const decoys = [
    'Cholesterol (mg/dL)',
    'Lactate (mmol/L)',
    'Triglycerides (mg/dL)',
    'Urine glucose (mg/dL)',
    'Glucose coverage (%)',
  ];
  const more = [
    'Predicted glucose (mg/dL)',
    'Average glucose (mg/dL)',
    'Target glucose (mg/dL)',
    'Sugar in food (g)',
    'Ketones (mmol/L)',
  ];
  test.each([
    ...decoys,
    ...more,
    'Mean glucose',
    'Glucose goal (mg/dL)',
    'Zucker in Speisen (g)',
    'Colesterol (mg/dL)',
  ])('%s is none', (name) => {
    for (const full of [1, 29]) {
      const cell = (i: number): string => (i % full === 0 ? String(90 + (i % 17)) : '');
      for (const before of [true, false]) {
        const header = before ? `Time,${name},Sensor glucose (mg/dL)` : `Time,Sensor glucose (mg/dL),${name}`;
        const file = read(table(header, N, (i) => (before ? `${cell(i)},${sugar(i)}` : `${sugar(i)},${cell(i)}`)));
        expect(numbers(file)).toEqual(ALL);
        expect(file.notes).toEqual([]);
      }
    }
  });
  it('a handful of values in a year of minutes is no column of kinds', () => {
    for (const name of ['Urine glucose (mg/dL)', 'Xyz']) {
      const cell = (i: number): string => (i % 29 === 5 ? String(79 + ((i * 7) % 57)) : '');
      const file = read(table(`Time,Sensor glucose (mg/dL),${name}`, 1700, (i) => `${sugar(i)},${cell(i)}`));
      expect([refusals(file), file.readings.count]).toEqual([[], 1700]);
    }
  });
  it('nor is sugar among the other things in food', () => {
    const file = read(
      table('Time,Food,Calories,Carbs (g),Sugar,Protein,Fat', 12, (i) => `Soup,200,${20 + i},${5 + i},9,3`),
    );
    expect(numbers(file)).toEqual([]);
    expect(file.notes.map(({ kind }) => kind)).toEqual(Array(12).fill('meal'));
  });
});

describe('columns without names', () => {
  test.each<[string, (i: number) => string]>([
    ['a limit beside values with a unit', (i) => `${sugar(i)} mg/dL,110`],
    ['a limit before them', (i) => `110,${sugar(i)} mg/dL`],
    ['a limit beside bare values', (i) => `${sugar(i)},110`],
  ])('%s is no reading', (_, cells) => {
    const file = read(Array.from({ length: N }, (_, i) => `${stamp(i)},${cells(i)}`).join('\n'));
    expect(numbers(file)).toEqual(ALL);
  });
});

describe('finger sticks', () => {
  it('never join a sensor, however they are called', () => {
    for (const name of ['Glucose', 'Blood glucose (mg/dL)', 'BG 2']) {
      for (const every of [12, 60, 120]) {
        const file = read(
          table(`Time,Sensor glucose (mg/dL),${name}`, N, (i) => `${sugar(i)},${i % every === 3 ? sugar(i) + 12 : ''}`),
        );
        expect(numbers(file)).toEqual(ALL);
        expect([...new Set(file.notes.map(({ kind }) => kind))]).toEqual(['fingerstick']);
      }
    }
  });
  it('in a log of steps of an hour are none of a sensor', () => {
    const byHand = (i: number): string =>
      new Date(Date.UTC(2026, 0, 14 + Math.floor(i / 12), 8 + (i % 12), (i * 7) % 13)).toISOString().slice(0, 16);
    let text = 'Time,Glucose (mg/dL)\n';
    for (let i = 0; i < 60; i++) text += `${byHand(i)},${90 + ((i * 37) % 90)}\n`;
    expect(numbers(read(text))).toEqual([]);
  });
});

describe('units', () => {
  const body = (at: (i: number) => number | string, header = 'Time,Glucose'): string =>
    table(header, N, (i) => `${at(i)}`);
  test.each(['g/L', 'mg/mL', 'nA', 'mmol/mol', 'mg/L'])('%s is no unit that another is taken for', (unit) => {
    expect(refusals(read(body((i) => (sugar(i) / 100).toFixed(2), `Time,Glucose (${unit})`)))).toEqual([
      'unit-foreign',
    ]);
  });
  test.each(['Unit: mmol/L', 'Glucose values in mmol/L', '"Units","mmol/L"'])(
    'a line above the table names it: %s',
    (line) => {
      // Whole numbers that fit both units: only the line tells.
      const file = read(`${line}\n${body((i) => Math.round(sugar(i) / 18))}`);
      expect([refusals(file), file.readings.count, file.readings.unit[0]]).toEqual([[], N, 1]);
    },
  );
  it('a line above the table that contradicts the column is asked about', () => {
    expect(refusals(read(`Unit: mmol/L\n${body(sugar, 'Time,Glucose (mg/dL)')}`))).toEqual(['unit-line-contradicts']);
    expect(refusals(read(`Target range: 3.9-10.0 mmol/L\n${body(sugar, 'Time,Glucose (mg/dL)')}`))).toEqual([]);
  });
  it('a name that says mg/dL is not believed of 13.7', () => {
    const file = read(body((i) => ((sugar(i) + 80) / 18).toFixed(1), 'Time,Glucose (mg/dL)'));
    expect(refusals(file)).not.toEqual([]);
  });
  it('whoever names the unit, an impossible series is refused', () => {
    const flat = body((i) => 12 + Math.round(8 * Math.sin(i / 30)));
    expect(refusals(read(flat, { unit: 'mg/dL' }))).toEqual(['series-other-unit']);
    expect(refusals(read(flat, { layout: { unit: 'mg/dL' } }))).toEqual(['series-other-unit']);
    const low = body((i) => (1.5 + 0.5 * Math.sin(i / 30)).toFixed(2));
    expect(refusals(read(low, { unit: 'mmol/L' }))).toEqual(['series-implausible']);
  });
  it.each(['Time,Glucose', 'Time,Glucose (mg/dL)', 'Time,Glucose (mmol/L)'])(
    'a change half way is found under %s',
    (header) => {
      const file = read(body((i) => (i < 140 ? (sugar(i) / 18).toFixed(1) : sugar(i)), header));
      expect(refusals(file)).toEqual(['unit-changes']);
      expect(file.issues.find(({ code }) => code === 'unit-changes')?.origin?.line).toBe(142);
    },
  );
  it('a unit beside the list of a JSON file is heard', () => {
    const readings = Array.from({ length: 40 }, (_, i) => ({
      time: stamp(i),
      glucose: 7 + Math.round(2 * Math.sin(i / 4)),
    }));
    const file = read(JSON.stringify({ unit: 'mmol/L', patient: 'Ada Fjord', readings }), {}, 'a.json');
    expect([refusals(file), file.readings.unit[0], file.persons]).toEqual([[], 1, ['Ada Fjord']]);
    const other = read(JSON.stringify({ unit: 'mg/dL', readings }), {}, 'a.json');
    expect(refusals(other)).not.toEqual([]);
  });
});
