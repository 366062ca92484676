import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import { describe, expect, test } from 'vitest';
import { glucoseUnit } from '../../src/readers/glucose/unit.ts';
import { MGDL_PER_MMOL } from '../../src/units.ts';
import { tell } from './digest.ts';

// Conversions against a general library of UCUM units (National Library of Medicine), which knows nothing of glucose
// but the molar mass it is given: 180.156 g/mol (LOINC; C6H12O6 from standard atomic weights).
// This material contains content from LOINC (http://loinc.org); LOINC is copyright Regenstrief Institute, Inc.
const ucum = UcumLhcUtils.getInstance();
const convert = (from: string, value: number, to: string, options = {}): number => {
  const { toVal } = ucum.convertUnitTo(from, value, to, options) as { toVal: number | null };
  if (toVal === null) throw new Error(`${from} to ${to}`);
  return toVal;
};
const AT = '2026-01-15T02:00:00+02:00';

describe('UCUM', () => {
  test.each([2.2, 3.9, 5.6, 10, 13.9, 33.3])('%d mmol/L in mg/dL', (value) => {
    expect(value * MGDL_PER_MMOL).toBeCloseTo(convert('mmol/L', value, 'mg/dL', { molecularWeight: 180.156 }), 9);
  });

  test.each(['mg/dL', 'mg/dl', 'mg/(100.mL)', 'mmol/L', 'mmol/l'])('%s is the same unit here and there', (code) => {
    const ours = glucoseUnit(code)!;
    expect(convert(code, 7, ours)).toBeCloseTo(7, 9);
  });

  test.each(['%', 'g', 'g/L', 'umol/L', 'mg/L', 'kg'])('%s is a unit there and none of glucose here', (code) => {
    expect((ucum.validateUnitString(code) as { status: string }).status).toBe('valid');
    expect(glucoseUnit(code)).toBeUndefined();
  });

  const observation = (loinc: string, more: object) => ({
    resourceType: 'Observation',
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: loinc }] },
    effectiveDateTime: AT,
    ...more,
  });
  const quantity = (value: number, code: string) => ({
    valueQuantity: { value, code, system: 'http://unitsofmeasure.org' },
  });
  test.each([
    [48, 'g'],
    [0.048, 'kg'],
    [48_000, 'mg'],
  ])('%d %s of carbohydrate in grams', (value, code) => {
    const { file } = tell(JSON.stringify(observation('9059-7', quantity(value, code))), {}, 'a.json');
    expect(file.notes[0]?.amount).toBeCloseTo(convert(code, value, 'g'), 9);
  });

  test.each([
    [30, 'min'],
    [0.5, 'h'],
    [1800, 's'],
  ])('%d %s of exercise in minutes', (value, code) => {
    const component = [
      { code: { coding: [{ system: 'http://loinc.org', code: '55411-3' }] }, ...quantity(value, code) },
    ];
    const { file } = tell(JSON.stringify(observation('55409-7', { component })), {}, 'a.json');
    expect(file.notes[0]?.minutes).toBeCloseTo(convert(code, value, 'min'), 9);
  });
});
