import { describe, expect, it, test } from 'vitest';
import { tell } from './digest.ts';

// The user's word for the unit is for files that name none. A file that names another is refused with both in sight:
// 5.6 read as mg/dL or 102 read as mmol/L would be a report about somebody else.
const RECORD = { time: '2026-01-14T08:00:00+02:00' };
const omh = {
  header: { id: '1', schema_id: { namespace: 'omh', name: 'blood-glucose', version: '4.0' } },
  body: {
    blood_glucose: { value: 112, unit: 'mg/dL' },
    specimen_source: 'interstitial fluid',
    effective_time_frame: { date_time: '2026-01-14T08:00:00+02:00' },
  },
};
const sensor = (value: object) => ({
  resourceType: 'Observation',
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '99504-3' }] },
  effectiveDateTime: '2026-01-14T08:00:00+02:00',
  ...value,
});
const ucum = { value: 112, code: 'mg/dL', system: 'http://unitsofmeasure.org' };

describe('a file that says another unit than the user', () => {
  test.each<[string, string, string, string]>([
    ['in the name of a column', 'a.csv', 'Time,Glucose (mg/dL)\n2026-01-14 08:00,22\n', 'unit-contradicts-file 1'],
    [
      'in a row of units',
      'a.csv',
      'Time,Glucose\n,mg/dL\n2026-01-14 08:00,22\n2026-01-14 08:05,22\n',
      'unit-contradicts-file 1',
    ],
    [
      'in a column of units',
      'a.csv',
      'Time,Glucose,Unit\n2026-01-14 08:00,22,\n2026-01-14 08:05,22,mg/dL\n',
      'unit-contradicts-file 3',
    ],
    ['in a cell', 'a.csv', 'Time,Glucose\n2026-01-14 08:00,22\n2026-01-14 08:05,22 mg/dL\n', 'unit-contradicts-file 3'],
    [
      'in a wide table',
      'a.csv',
      'Glucose (mg/dL),08:00,08:05,08:10,08:15\n2026-01-14,22,23,24,22\n2026-01-15,22,23,24,22\n',
      'unit-contradicts-file 1',
    ],
    ['in a plain record', 'a.json', JSON.stringify([{ ...RECORD, 'glucose (mg/dL)': 22 }]), 'unit-contradicts-file 1'],
    ['in a UCUM code', 'a.json', JSON.stringify(sensor({ valueQuantity: ucum })), 'unit-coded 1'],
    [
      'in a sampled series',
      'a.json',
      JSON.stringify(
        sensor({ valueSampledData: { origin: { ...ucum, value: 0 }, period: 1000, dimensions: 1, data: '112' } }),
      ),
      'unit-coded 1',
    ],
    ['in a data point', 'a.json', JSON.stringify([omh]), 'unit-coded 1'],
  ])('%s is refused with its line', (_, name, text, issue) => {
    const digest = tell(text, { unit: 'mmol/L' }, name);
    expect(digest.issues.filter((one) => one.startsWith('refusal'))).toEqual([`refusal ${issue}`]);
    const refusal = digest.file.issues.find(({ level }) => level === 'refusal');
    expect(refusal).toMatchObject({ actual: 'mg/dL', expected: 'mmol/L', question: { of: expect.any(String) } });
    expect(tell(text, { unit: 'mg/dL' }, name).issues.filter((one) => one.startsWith('refusal'))).toEqual([]);
  });

  it('is settled by a layout of that file', () => {
    const text = 'Time,Glucose (mg/dL)\n2026-01-14 08:00,12.2\n';
    const digest = tell(text, { unit: 'mmol/L', layout: { unit: 'mmol/L' } });
    expect(digest.readings).toEqual(['2026-01-14 08:00 12.2 mmol/L']);
    expect(digest.issues).toEqual(['warning unit-contradicts-layout 1']);
    expect(digest.choices.unit).toBe('user: mmol/L');
  });

  it('is settled by a layout for plain records too', () => {
    const text = JSON.stringify([{ ...RECORD, 'glucose (mg/dL)': 12.2 }]);
    expect(tell(text, { layout: { unit: 'mmol/L' } }, 'a.json').readings[0]).toContain('12.2 mmol/L');
  });
});

describe('a file that names no unit', () => {
  const text = 'Time,Glucose\n2026-01-14 08:00,22\n2026-01-14 08:05,23\n';
  test.each(['mg/dL', 'mmol/L'] as const)('is read in the unit the user names: %s', (unit) => {
    const digest = tell(text, { unit });
    expect(digest.readings[0]).toBe(`2026-01-14 08:00 22 ${unit}`);
    expect(digest.choices.unit).toBe(`user: ${unit}`);
  });

  it('is said to look wrong where its numbers are of the other size', () => {
    const rows = Array.from({ length: 9 }, (_, i) => `2026-01-14 08:0${i},${100 + i}`).join('\n');
    const digest = tell(`Time,Glucose\n${rows}`, { unit: 'mmol/L' });
    expect(digest.issues[0]).toBe('warning unit-contradicts-user 2');
  });

  it('keeps what other rows say when they agree', () => {
    const mixed = 'Time,Glucose\n2026-01-14 08:00,22\n2026-01-14 08:05,9.1 mmol/L\n';
    expect(tell(mixed, { unit: 'mmol/L' }).readings).toHaveLength(2);
  });
});
