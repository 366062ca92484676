import { describe, expect, it, test } from 'vitest';
import { type Digest, tell } from './digest.ts';

// Codes, profiles and status lists: HL7 CGM guide 1.0.0 on FHIR R4 4.0.1, LOINC, UCUM. This material contains content
// from LOINC (http://loinc.org). LOINC is copyright Regenstrief Institute, Inc. and the LOINC Committee and is available
// at no cost under the licence at http://loinc.org/license. The people are invented.
const LOINC = 'http://loinc.org';
const UCUM = 'http://unitsofmeasure.org';
const AT = '2026-01-15T02:00:00+02:00';
const loinc = (code: string) => ({ coding: [{ system: LOINC, code }] });
const quantity = (value: number, code: string, more = {}) => ({
  value,
  code,
  system: UCUM,
  unit: code.toLowerCase(),
  ...more,
});
const observation = (code: string, more: object) => ({
  resourceType: 'Observation',
  status: 'final',
  code: loinc(code),
  subject: { reference: 'Patient/p1' },
  effectiveDateTime: AT,
  ...more,
});
const sensor = (more: object) => observation('99504-3', more);
const bundle = (...resources: object[]) => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: resources.map((resource) => ({ resource })),
});
const read = (json: unknown): Digest => tell(JSON.stringify(json), {}, 'export.json');

describe('sensor readings', () => {
  test.each<[string, object, string]>([
    ['mass', sensor({ valueQuantity: quantity(112, 'mg/dL') }), '112 mg/dL'],
    ['molar', observation('105272-9', { valueQuantity: quantity(5.6, 'mmol/L') }), '5.6 mmol/L'],
    ['unit before code', sensor({ valueQuantity: quantity(5.6, 'mmol/L') }), '5.6 mmol/L'],
    ['unit as text only', sensor({ valueQuantity: { value: 112, unit: 'mg/dl' } }), '112 mg/dL'],
    ['below by comparator', sensor({ valueQuantity: quantity(40, 'mg/dL', { comparator: '<' }) }), '<40 mg/dL'],
    ['above by comparator', sensor({ valueQuantity: quantity(400, 'mg/dL', { comparator: '>=' }) }), '>400 mg/dL'],
    [
      'off scale by interpretation',
      sensor({ valueQuantity: quantity(40, 'mg/dL'), interpretation: [{ coding: [{ code: '<' }] }] }),
      '<40 mg/dL',
    ],
    [
      'an opinion passed over',
      sensor({ valueQuantity: quantity(60, 'mg/dL'), interpretation: [{ coding: [{ code: 'L' }] }] }),
      '60 mg/dL',
    ],
    ['absent: below the scale', sensor({ dataAbsentReason: { coding: [{ code: 'negative-infinity' }] } }), '<? mg/dL'],
    ['corrected', sensor({ status: 'corrected', valueQuantity: quantity(112, 'mg/dL') }), '112 mg/dL'],
    [
      'device code of 11073',
      {
        ...sensor({ valueQuantity: quantity(112, 'mg/dL') }),
        code: { coding: [{ system: 'urn:iso:std:iso:11073:10101', code: '160212' }] },
      },
      '112 mg/dL',
    ],
  ])('%s', (_, resource, reading) => {
    const digest = read(bundle(resource));
    expect(digest.readings).toEqual([`2026-01-15 02:00 +120 ${reading}`]);
    expect(digest.fates).toBe('u');
  });

  test.each<[string, object, string]>([
    [
      'entered in error',
      sensor({ status: 'entered-in-error', valueQuantity: quantity(112, 'mg/dL') }),
      'status-not-usable',
    ],
    ['cancelled', sensor({ status: 'cancelled', valueQuantity: quantity(112, 'mg/dL') }), 'status-not-usable'],
    [
      'unknown modifier',
      sensor({ modifierExtension: [{ url: 'x' }], valueQuantity: quantity(112, 'mg/dL') }),
      'meaning-modified',
    ],
    ['absent', sensor({ dataAbsentReason: { coding: [{ code: 'error' }], text: 'No signal' } }), 'value-absent'],
    ['a unit of something else', sensor({ valueQuantity: quantity(112, '%') }), 'value-unit-unknown'],
    ['impossible', sensor({ valueQuantity: quantity(5000, 'mg/dL') }), 'value-impossible'],
    [
      'no time',
      { ...sensor({ valueQuantity: quantity(112, 'mg/dL') }), effectiveDateTime: undefined, issued: AT },
      'no-time',
    ],
    [
      'date only',
      sensor({ effectiveDateTime: '2026-01-15', valueQuantity: quantity(112, 'mg/dL') }),
      'reading-without-clock',
    ],
    [
      'over a period',
      {
        ...sensor({ valueQuantity: quantity(112, 'mg/dL') }),
        effectiveDateTime: undefined,
        effectivePeriod: { start: AT, end: '2026-01-15T03:00:00+02:00' },
      },
      'value-over-period',
    ],
  ])('%s is set aside', (_, resource, code) => {
    const digest = read(bundle(resource));
    expect(digest.readings).toEqual([]);
    expect(digest.file.issues.map((issue) => issue.code)).toEqual([code]);
    expect(digest.fates).toBe('s');
  });

  it('unpacks a sampled series', () => {
    const valueSampledData = {
      origin: quantity(0, 'mg/dL'),
      period: 300000,
      factor: 0.1,
      dimensions: 1,
      lowerLimit: 400,
      data: '1120 L E 1200',
    };
    const digest = read(sensor({ valueSampledData }));
    expect(digest.readings).toEqual([
      '2026-01-15 02:00 +120 112 mg/dL',
      '2026-01-15 02:05 +120 <40 mg/dL',
      '2026-01-15 02:15 +120 120 mg/dL',
    ]);
    expect(digest.issues).toEqual(['note points-left-out 1']);
  });

  it('decides codes that meters share by how often values come', () => {
    const every = (minutes: number) =>
      bundle(
        ...Array.from({ length: 12 }, (_, i) => {
          const effectiveDateTime = new Date(Date.UTC(2026, 0, 15, 2, i * minutes)).toISOString();
          return observation('14745-4', { effectiveDateTime, valueQuantity: quantity(5 + i / 10, 'mmol/L') });
        }),
      );
    expect(read(every(5)).readings).toHaveLength(12);
    expect(read(every(240)).notes).toHaveLength(12);
  });
});

describe('notes', () => {
  const insulin = (more: object) => ({
    resourceType: 'MedicationAdministration',
    status: 'completed',
    medicationCodeableConcept: {
      coding: [{ system: 'http://www.whocc.no/atc', code: 'A10AB' }],
      text: 'Mealtime insulin',
    },
    subject: { reference: 'Patient/p1' },
    effectiveDateTime: AT,
    ...more,
  });
  test.each<[string, object, string]>([
    ['finger stick', observation('41653-7', { valueQuantity: quantity(109, 'mg/dL') }), 'fingerstick 109 mg/dL'],
    [
      'carbohydrate',
      observation('9059-7', { valueQuantity: quantity(48, 'g'), note: [{ text: 'soup' }] }),
      'meal 48 g [soup]',
    ],
    ['carbohydrate in mg', observation('9060-5', { valueQuantity: quantity(48000, 'mg') }), 'meal 48 g'],
    ['insulin', insulin({ dosage: { dose: quantity(5, '[iU]') } }), 'insulin 5 IU [Mealtime insulin]'],
    ['insulin coded U', insulin({ dosage: { dose: quantity(5, 'U') } }), 'insulin 5 IU [Mealtime insulin]'],
    [
      'insulin in mL stays words',
      insulin({ dosage: { dose: quantity(5, 'mL') } }),
      'insulin [Mealtime insulin] "5 ml"',
    ],
    [
      'insulin not given is no dose',
      insulin({ status: 'not-done', dosage: { dose: quantity(5, '[iU]') } }),
      'insulin [Mealtime insulin] "not-done"',
    ],
    [
      'other medicine',
      { ...insulin({ dosage: { dose: quantity(500, 'mg') } }), medicationCodeableConcept: { text: 'Metformin' } },
      'medication 500 mg [Metformin]',
    ],
    [
      'statement of a dose',
      {
        ...insulin({}),
        resourceType: 'MedicationStatement',
        dosage: [{ doseAndRate: [{ doseQuantity: quantity(6, '[iU]') }] }],
      },
      'insulin 6 IU [Mealtime insulin]',
    ],
    [
      'diary words',
      { ...observation('', { valueString: 'felt fine' }), code: { text: 'Diary note' } },
      'text "felt fine"',
    ],
    [
      'exercise panel',
      observation('55409-7', {
        component: [
          { code: loinc('73985-4'), valueCodeableConcept: { text: 'Cycling' } },
          { code: loinc('55411-3'), valueQuantity: quantity(75, 'min') },
        ],
      }),
      'exercise 75 minutes [Cycling]',
    ],
    [
      'exercise of a length in no unit of time',
      observation('73985-4', {
        valueString: 'Walk',
        component: [{ code: loinc('55411-3'), valueQuantity: quantity(75, 'constructor') }],
      }),
      'exercise [Walk]',
    ],
    [
      'exercise over a period',
      {
        ...observation('73985-4', { valueCodeableConcept: { text: 'Walk' } }),
        effectiveDateTime: undefined,
        effectivePeriod: { start: AT, end: '2026-01-15T02:18:00+02:00' },
      },
      'exercise 18 minutes [Walk]',
    ],
  ])('%s', (_, resource, note) => {
    const digest = read(bundle(resource));
    expect(digest.notes).toEqual([`2026-01-15 02:00 +120 ${note}`]);
    expect(digest.fates).toBe('n');
  });

  it('keeps a note with a date only as a note of that day', () => {
    expect(
      read(observation('9059-7', { effectiveDateTime: '2026-01-15', valueQuantity: quantity(48, 'g') })).notes,
    ).toEqual(['2026-01-15 meal 48 g']);
  });
});

describe('files', () => {
  const one = sensor({ valueQuantity: quantity(112, 'mg/dL') });
  it.each<[string, string]>([
    ['bundle', JSON.stringify(bundle(one), null, 2)],
    ['resource', JSON.stringify(one)],
    ['array', JSON.stringify([one])],
    ['NDJSON', `${JSON.stringify(one)}\n${JSON.stringify({ resourceType: 'Patient', id: 'p1' })}\n`],
    ['with a byte-order mark', `\ufeff${JSON.stringify(one)}`],
  ])('%s', (_, text) => {
    expect(tell(text, {}, 'export.json').readings).toEqual(['2026-01-15 02:00 +120 112 mg/dL']);
  });

  it('names the physical line of an entry', () => {
    const digest = tell(JSON.stringify(bundle(sensor({ status: 'cancelled' })), null, 1), {}, 'x.json');
    expect(digest.issues).toEqual(['warning status-not-usable 5']);
  });

  it('sets a broken line aside and reads the rest', () => {
    const two = sensor({ valueQuantity: quantity(113, 'mg/dL'), effectiveDateTime: '2026-01-15T02:05:00+02:00' });
    const digest = tell(`${JSON.stringify(one)}\n{"resourceType":\n${JSON.stringify(two)}\n`, {}, 'x.ndjson');
    expect(digest.readings).toHaveLength(2);
    expect(digest.issues).toEqual(['warning json-line-broken 2']);
    expect(digest.fates).toBe('uus');
  });

  it('refuses JSON cut off in the middle', () => {
    expect(tell(JSON.stringify(bundle(one)).slice(0, 150), {}, 'x.json').issues).toEqual(['refusal json-broken 1']);
  });

  it('finds two people, by code and never by name', () => {
    const patient = {
      resourceType: 'Patient',
      id: 'p1',
      identifier: [{ use: 'official', value: 'P-1' }],
      name: [{ family: 'Example' }],
    };
    const other = { ...one, subject: { reference: 'Patient/p2' } };
    const digest = read(bundle(patient, one, other));
    expect(digest.file.persons).toEqual(['P-1', 'Patient/p2']);
    expect(JSON.stringify(digest.file)).not.toContain('Example');
  });

  it('takes the zone written beside a time', () => {
    const extension = [{ url: 'http://hl7.org/fhir/StructureDefinition/tz-code', valueCode: 'Europe/Helsinki' }];
    expect(read({ ...one, _effectiveDateTime: { extension } }).file.zone).toBe('Europe/Helsinki');
  });

  it('says when there are results and no readings, and counts what it does not read', () => {
    expect(read(observation('107931-8', {})).issues).toEqual(['warning results-only']);
    expect(read(bundle(one, observation('8867-4', { valueQuantity: quantity(60, '/min') }))).file.issues).toMatchObject(
      [{ code: 'resource-ignored', actual: 'Observation 8867-4', count: 1 }],
    );
  });
});
