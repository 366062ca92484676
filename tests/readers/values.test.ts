import { describe, expect, it, test } from 'vitest';
import { rows, tell } from './digest.ts';

const unitless = (value: (i: number) => string | number) =>
  `Time,Glucose\n${rows(12, (i, t) => `${t.slice(0, 16)},${value(i)}`)}`;

describe('unit', () => {
  test.each<[string, string, string]>([
    ['header', 'Time,Glucose (mmol/L)\n2026-01-14 08:00,5.6\n', '2026-01-14 08:00 5.6 mmol/L'],
    ['header, square', 'Time,Glucose [mg/dl]\n2026-01-14 08:00,102\n', '2026-01-14 08:00 102 mg/dL'],
    ['header, bare', 'Time,Glucose mmol/l\n2026-01-14 08:00,5.6\n', '2026-01-14 08:00 5.6 mmol/L'],
    ['column', 'Time,Glucose,Unit\n2026-01-14 08:00,5.6,mmol/L\n', '2026-01-14 08:00 5.6 mmol/L'],
    ['cell', 'Time,Glucose\n2026-01-14 08:00,5.6 mmol/L\n', '2026-01-14 08:00 5.6 mmol/L'],
    ['mg%', 'Time,Glucose (mg%)\n2026-01-14 08:00,102\n', '2026-01-14 08:00 102 mg/dL'],
  ])('from the %s', (_, text, reading) => {
    const digest = tell(text);
    expect(digest.readings).toEqual([reading]);
    expect(digest.choices.unit).toMatch(/^file: /);
  });

  it('is taken row by row from a column', () => {
    const digest = tell(
      'Time,Glucose,Unit\n2026-01-14 08:00,5.6,mmol/L\n2026-01-14 08:05,102,mg/dL\n2026-01-14 08:10,7,furlong\n',
    );
    expect(digest.readings).toEqual(['2026-01-14 08:00 5.6 mmol/L', '2026-01-14 08:05 102 mg/dL']);
    expect(digest.issues).toContain('warning value-unit-unknown 4');
  });

  test.each<[string, (i: number) => string | number, string | RegExp]>([
    ['decimals up to 33.3 are mmol/L', (i) => (4 + i * 0.7).toFixed(1), 'file: mmol/L'],
    ['whole numbers beyond 40 are mg/dL', (i) => 70 + i * 20, 'file: mg/dL'],
    ['decimals that all lie beyond 33.3 are mg/dL', (i) => (100.5 + i * 9).toFixed(1), 'file: mg/dL'],
  ])('nobody names: %s', (_, value, choice) => {
    expect(tell(unitless(value)).choices.unit).toBe(choice);
  });

  test.each<[string, (i: number) => string | number, string]>([
    ['whole numbers from 20 to 31', (i) => 20 + i, 'refusal unit-unclear 13'],
    ['decimals on both sides of 33.3', (i) => (i % 3 ? 100.5 + i : 25.5).toFixed(1), 'refusal unit-unclear 13'],
    ['one size, then the other', (i) => (i < 6 ? 100 + i : '5.5'), 'refusal unit-changes 8'],
    ['sizes mixed', (i) => (i % 2 ? 100 + i : '5.5'), 'refusal unit-unclear 2'],
  ])('nobody names and nothing proves: %s', (_, value, issue) => {
    const digest = tell(unitless(value));
    expect(digest.readings).toEqual([]);
    expect(digest.issues).toEqual([issue]);
    expect(digest.fates).toBe(`i${'s'.repeat(12)}`);
  });

  it('refuses a header whose unit no value fits', () => {
    const digest = tell(`Time,Glucose (mg/dL)\n${rows(9, (i, t) => `${t.slice(0, 16)},${5 + i / 10}`)}`);
    expect(digest.issues).toEqual(['refusal unit-contradicts-values 2']);
  });
});

describe('numbers', () => {
  const one = (cell: string, unit = 'mg/dL', more = '') =>
    tell(`Time;Glucose (${unit})\n2026-01-14 08:00;${cell}\n${more}`);
  test.each<[string, string]>([
    ['102', '102'],
    [' 102 ', '102'],
    ['"102"', '102'],
    ['1.12E+02', '112'],
    ["'102", '102'],
    ['١٠٢', '102'],
    ['102 mg/dl', '102'],
    ['102 мг/дл', '102'],
    ['102 毫克/分升', '102'],
    ['102\u00a0㎎/㎗', '102'],
    ['+102', '102'],
    ['102.60', '102.6'],
    ['102,6', '102.6'],
  ])('%s', (cell, number) => {
    expect(one(cell).readings).toEqual([`2026-01-14 08:00 ${number} mg/dL`]);
  });

  test.each<[string, string]>([
    ['', 'note no-value'],
    ['-', 'note no-value'],
    ['--', 'note no-value'],
    ['N/A', 'note no-value'],
    ['#REF!', 'note no-value'],
    ['0', 'warning sentinel-value'],
    ['-1', 'warning sentinel-value'],
    ['2047', 'warning sentinel-value'],
    ['65535', 'warning sentinel-value'],
    ['9999', 'warning sentinel-value'],
    ['-5', 'warning value-impossible'],
    ['9', 'warning value-impossible'],
    ['1001', 'warning value-impossible'],
    ['5/6', 'warning value-turned-date'],
    ['05-Jun', 'warning value-turned-date'],
    ['NaN', 'note no-value'],
    ['Infinity', 'warning value-not-a-number'],
    ['0x41', 'warning value-not-a-number'],
    ['1e999', 'warning value-not-a-number'],
    ['unlucky', 'warning value-not-a-number'],
    ['=1+1', 'warning value-not-a-number'],
    ['not low', 'warning value-not-a-number'],
    ['low or high', 'warning value-not-a-number'],
    ['slow 40', 'warning value-not-a-number'],
    ['40 steps', 'warning value-not-a-number'],
    ['below lunch 40', 'warning value-not-a-number'],
    ['LOW (>40)', 'warning value-not-a-number'],
    ['low (40)', 'warning value-not-a-number'],
  ])('%s is set aside', (cell, issue) => {
    const digest = one(cell);
    expect(digest.readings).toEqual([]);
    expect(digest.issues).toEqual([`${issue} 2`]);
    expect(digest.fates).toBe('is');
  });

  test.each<[string, string]>([
    ['<40', '<40 mg/dL'],
    ['< 40', '<40 mg/dL'],
    ['≤40', '<40 mg/dL'],
    ['>400', '>400 mg/dL'],
    ['LOW', '<? mg/dL'],
    ['Lo', '<? mg/dL'],
    ['HIGH', '>? mg/dL'],
    ['Hi', '>? mg/dL'],
    ['niedrig', '<? mg/dL'],
    ['élevé', '>? mg/dL'],
    ['alle 40', '<40 mg/dL'],
    ['above 400 mg/dL', '>400 mg/dL'],
    ['less than 40', '<40 mg/dL'],
    ['LOW (<40)', '<40 mg/dL'],
    ['hoch (> 400 mg/dL)', '>400 mg/dL'],
    ['low mg/dL', '<? mg/dL'],
    ['низкий мг/дл', '<? mg/dL'],
    ['mindre end 40', '<40 mg/dL'],
    ['több mint 400', '>400 mg/dL'],
    ['менее 40 мг/дл', '<40 mg/dL'],
    ['低于40', '<40 mg/dL'],
    ['more than 400 mg/dL', '>400 mg/dL'],
    ['40 or less', '<40 mg/dL'],
    ['400 mg/dL or more', '>400 mg/dL'],
    ['=<40', '<40 mg/dL'],
    ['über 400', '>400 mg/dL'],
    ['weniger als 40', '<40 mg/dL'],
    ['zu hoch', '>? mg/dL'],
    ['trop bas', '<? mg/dL'],
    ['trop élevé', '>? mg/dL'],
    ['inférieur à 40', '<40 mg/dL'],
    ['menos de 40', '<40 mg/dL'],
    ['más de 400', '>400 mg/dL'],
    ['troppo basso', '<? mg/dL'],
    ['poniżej 40', '<40 mg/dL'],
    ['méně než 40', '<40 mg/dL'],
    ['alacsony', '<? mg/dL'],
    ['40 alatt', '<40 mg/dL'],
    ['400 üstünde', '>400 mg/dL'],
    ['düşük', '<? mg/dL'],
    ['žemas', '<? mg/dL'],
    ['daugiau nei 400', '>400 mg/dL'],
    ['Низкий', '<? mg/dL'],
    ['больше 400 мг/дл', '>400 mg/dL'],
    ['χαμηλό', '<? mg/dL'],
    ['πάνω από 400', '>400 mg/dL'],
    ['منخفض', '<? mg/dL'],
    ['أقل من 40', '<40 mg/dL'],
    ['נמוך', '<? mg/dL'],
    ['מעל 400', '>400 mg/dL'],
    ['低', '<? mg/dL'],
    ['40以下', '<40 mg/dL'],
    ['大于400', '>400 mg/dL'],
    ['높음', '>? mg/dL'],
    ['400 초과', '>400 mg/dL'],
    ['ต่ำ', '<? mg/dL'],
  ])('%s is a limit', (cell, reading) => {
    expect(one(cell).readings).toEqual([`2026-01-14 08:00 ${reading}`]);
  });

  it('tells a decimal comma from a thousands comma by the other cells', () => {
    const digest = one('5,6', 'mmol/L', '2026-01-14 08:05;12,34\n');
    expect(digest.choices['decimal-mark']).toBe('file: ,');
    expect(digest.readings[1]).toBe('2026-01-14 08:05 12.34 mmol/L');
  });

  it('refuses two decimal marks in one column', () => {
    expect(one('5.6', 'mmol/L', '2026-01-14 08:05;5,7\n').issues).toEqual(['refusal decimal-marks-mixed 3']);
  });

  it.each([
    ['5.612', 'mmol/L', '5.612'],
    ['5,612', 'mmol/L', '5.612'],
    ['150.000', 'mg/dL', '150'],
    ['150,000', 'mg/dL', '150'],
  ])(
    'takes three digits behind the mark of %s for decimals: no glucose is written in thousands',
    (cell, unit, value) => {
      expect(one(cell, unit).readings).toEqual([`2026-01-14 08:00 ${value} ${unit}`]);
    },
  );

  it.each(['mg/dL', 'mmol/L'])('sets one number in thousands aside, and reads the rest (%s)', (unit) => {
    const [a, b] = unit === 'mg/dL' ? ['150', '149'] : ['5.6', '5.7'];
    const digest = one(a!, unit, `2026-01-14 08:05;"1,200"\n2026-01-14 08:10;${b}\n`);
    expect(digest.readings).toEqual([`2026-01-14 08:00 ${a} ${unit}`, `2026-01-14 08:10 ${b} ${unit}`]);
    expect(digest.issues).toEqual(['warning value-impossible 3']);
  });

  it('reads one cell of the other mark, and says so', () => {
    const digest = tell(`Time;Glucose (mmol/L)\n${rows(40, (i, t) => `${t.slice(0, 16)};${i === 7 ? '5,7' : '5.6'}`)}`);
    expect(digest.readings).toHaveLength(40);
    expect(digest.readings[7]).toMatch(/ 5\.7 mmol\/L$/);
    expect(digest.issues).toEqual(['note decimal-mark-odd 9']);
  });

  // Numbers of up to 17 digits, as doubles are written (ECMA-262, Number::toString); parsed apart from ours by the engine.
  test.each([
    ['183.33333333333334', 'mg/dL'],
    ['5.555555555555555', 'mmol/L'],
    ['10.100000000000001', 'mmol/L'],
    ['120.30000000000001', 'mg/dL'],
    ['1.0123456789012346e+2', 'mg/dL'],
  ])('%s', (cell, unit) => {
    for (const written of [cell, cell.replace('.', ',')])
      expect(one(written, unit).readings).toEqual([`2026-01-14 08:00 ${Number(cell)} ${unit}`]);
  });

  it('says that 401 may stand for above', () => {
    expect(one('401', 'mg/dL', '2026-01-14 08:05;380\n').issues).toEqual(['note at-sensor-limit']);
  });
});

describe('sensor or finger stick', () => {
  it('takes a sparse column of plain glucose for finger sticks and says so', () => {
    const digest = tell(`Time,Glucose (mg/dL)\n${rows(8, (i) => `2026-01-${10 + i} 08:00,${100 + i}`)}`);
    expect(digest.readings).toEqual([]);
    expect(digest.notes[0]).toBe('2026-01-10 08:00 fingerstick 100 mg/dL');
    expect(digest.issues).toEqual(['warning sparse-glucose']);
  });

  it.each([
    ['every 5 minutes', 5, 'sensor', 0],
    ['every 5 hours', 300, 'finger-stick', 40],
  ])('takes plain glucose %s alike in whatever order its rows stand', (_, minutes, kind, sticks) => {
    const at = (i: number) => new Date(Date.UTC(2026, 0, 10) + i * minutes * 60_000).toISOString().slice(0, 16);
    // 17 and 40 have no divisor in common, so every row comes once.
    for (const place of [(i: number) => i, (i: number) => 39 - i, (i: number) => (i * 17) % 40]) {
      const digest = tell(
        `Time,Glucose (mg/dL)\n${rows(40, (i) => `${at(place(i)).replace('T', ' ')},${100 + place(i)}`)}`,
      );
      expect(digest.file.choices).toContainEqual({
        id: 'glucose-kind',
        value: kind,
        by: 'file',
        evidence: { is: 'minutes-between', minutes },
      });
      expect([digest.readings.length, digest.notes.length]).toEqual([40 - sticks, sticks]);
    }
  });

  it('reads both from their own columns in one row', () => {
    const digest = tell('Time,Sensor glucose (mg/dL),Fingerstick (mg/dL)\n2026-01-14 08:00,102,110\n');
    expect(digest.readings).toEqual(['2026-01-14 08:00 102 mg/dL']);
    expect(digest.notes).toEqual(['2026-01-14 08:00 fingerstick 110 mg/dL']);
  });
});
