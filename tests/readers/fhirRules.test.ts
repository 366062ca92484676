import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { readInputs } from '../../src/readers/index.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { onePerson } from '../../src/timeline/order.ts';
import { type Digest, TODAY, tell } from './digest.ts';

// Rules of HL7 FHIR R4 4.0.1 (status, history, references, contained resources, modifier extensions), Bulk Data Access
// for NDJSON and its manifest. This material contains content from LOINC (http://loinc.org). LOINC is copyright
// Regenstrief Institute, Inc. and the LOINC Committee and is available at no cost under the licence at
// http://loinc.org/license. The people are invented.
const LOINC = 'http://loinc.org';
const loinc = (code: string) => ({ coding: [{ system: LOINC, code }] });
const AT = '2026-01-15T02:00:00+02:00';
const amount = (value: number, code: string) => ({ value, code, system: 'http://unitsofmeasure.org' });
const sensor = (value: number, more: object = {}) => ({
  resourceType: 'Observation',
  status: 'final',
  code: loinc('99504-3'),
  subject: { reference: 'Patient/p1' },
  effectiveDateTime: AT,
  valueQuantity: amount(value, 'mg/dL'),
  ...more,
});
const bundle = (...resources: object[]) => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: resources.map((resource) => ({ resource })),
});
const read = (json: unknown, settings = {}): Digest => tell(JSON.stringify(json), settings, 'export.json');
const codes = (digest: Digest) => digest.file.issues.map(({ code }) => code);
const values = (digest: Digest) => digest.file.readings.native.join(' ');

describe('identity', () => {
  const id = { id: 'a' };
  const named = (value: string) => ({ identifier: [{ system: 'urn:x', value }] });
  test.each<[string, object[], string, string, string[]]>([
    ['the same identifier and contents', [sensor(112, named('1')), sensor(112, named('1'))], '112', 'ud', []],
    ['the same id and contents', [sensor(112, id), sensor(112, id)], '112', 'ud', []],
    ['neither, and the same word for word', [sensor(112), sensor(112)], '112', 'ud', []],
    ['other identifiers', [sensor(112, named('1')), sensor(113, named('2'))], '112 113', 'uu', []],
    [
      'the same id, other contents, nothing newer',
      [sensor(112, id), sensor(180, id)],
      '',
      'ss',
      ['versions-contradict', 'versions-contradict'],
    ],
    [
      'the same id, a newer version',
      [sensor(112, { ...id, meta: { versionId: '1' } }), sensor(180, { ...id, meta: { versionId: '2' } })],
      '180',
      'du',
      [],
    ],
    [
      'the same id, changed later',
      [
        sensor(112, { ...id, meta: { lastUpdated: '2026-01-16T00:00:00Z' } }),
        sensor(180, { ...id, meta: { lastUpdated: '2026-01-17T00:00:00Z' } }),
      ],
      '180',
      'du',
      [],
    ],
  ])('%s', (_, resources, used, fates, issues) => {
    const digest = read(bundle(...resources));
    expect(values(digest)).toBe(used);
    expect(digest.fates).toBe(fates);
    expect(codes(digest)).toEqual(issues);
  });

  const history = (...entry: object[]) => ({ resourceType: 'Bundle', type: 'history', entry });
  const fullUrl = 'https://example.org/Observation/a';
  it('takes the newest version of a history, which stands first', () => {
    const digest = read(history({ fullUrl, resource: sensor(120) }, { fullUrl, resource: sensor(112) }));
    expect([values(digest), digest.fates]).toEqual(['120', 'ud']);
  });

  it('takes a resource that was deleted for taken back, all its versions with it', () => {
    const digest = read(
      history({ fullUrl, request: { method: 'DELETE', url: 'Observation/a' } }, { fullUrl, resource: sensor(112) }),
    );
    expect([values(digest), digest.fates, codes(digest)]).toEqual(['', 'ss', ['taken-back', 'taken-back']]);
  });
});

describe('values', () => {
  const part = (value: number, code = '99504-3') => ({ code: loinc(code), valueQuantity: amount(value, 'mg/dL') });
  it('reads each glucose component as a value of its own', () => {
    const { valueQuantity: _, ...panel } = sensor(0, { code: { text: 'Panel' } });
    const digest = read({ ...panel, component: [part(112), part(109, '41653-7'), part(60, '8867-4')] });
    expect(values(digest)).toBe('112');
    expect(digest.notes).toEqual(['2026-01-15 02:00 +120 fingerstick 109 mg/dL']);
    expect(digest.fates).toBe('u');
  });

  it('keeps the fault of a part beside its other parts', () => {
    const digest = read(sensor(112, { component: [part(5000)] }));
    expect([values(digest), codes(digest), digest.fates]).toEqual(['112', ['value-impossible'], 'u']);
  });

  it.each([{ valueQuantity: { value: 21 } }, { valueInteger: 21 }, { valueString: '21' }])(
    'asks for the unit of a bare number: %j',
    (more) => {
      const { valueQuantity: _, ...rest } = sensor(0);
      const digest = read({ ...rest, ...more });
      expect(digest.fates).toBe('s');
      expect(digest.file.issues.at(-1)).toMatchObject({
        code: 'unit-unclear',
        level: 'refusal',
        question: { of: 'unit', answer: 'mg/dL' },
      });
      expect(read({ ...rest, ...more }, { unit: 'mmol/L' }).readings).toEqual(['2026-01-15 02:00 +120 21 mmol/L']);
    },
  );

  it('sets one bare number aside beside others with a unit', () => {
    const digest = read(
      bundle(sensor(112), sensor(0, { valueQuantity: { value: 113 }, effectiveDateTime: '2026-01-15T02:05:00+02:00' })),
    );
    expect([digest.fates, codes(digest)]).toEqual(['us', ['value-without-unit']]);
  });

  it('reads by the unit where the code speaks of another, and says so', () => {
    const digest = read(sensor(0, { valueQuantity: amount(5.6, 'mmol/L') }));
    expect([values(digest), codes(digest)]).toEqual(['5.6', ['unit-not-of-code']]);
  });

  it('says where the unit stood as words only', () => {
    const digest = read(sensor(0, { valueQuantity: { value: 112, unit: 'mg/dl' } }));
    expect(digest.file.choices.find(({ id }) => id === 'unit')).toMatchObject({
      by: 'file',
      evidence: { is: 'unit-text' },
    });
  });

  it('uses early estimates and counts them', () => {
    const digest = read(sensor(112, { status: 'preliminary' }));
    expect([values(digest), codes(digest)]).toEqual(['112', ['early-estimates']]);
  });

  it.each(['not-a-number', 'error', 'unknown', 'temp-unknown', 'not-performed', 'masked', 'unsupported'])(
    'sets a value aside that is absent: %s',
    (code) => {
      const { valueQuantity: _, ...rest } = sensor(0);
      const digest = read({ ...rest, dataAbsentReason: { coding: [{ code }] } });
      expect(digest.fates).toBe('s');
      expect(digest.file.issues[0]).toMatchObject({ code: 'value-absent', actual: code });
    },
  );

  it('counts ready-made results beside readings', () => {
    const digest = read(
      bundle(sensor(112), sensor(0, { code: loinc('97507-8') }), sensor(0, { code: loinc('107931-8') })),
    );
    expect(digest.file.issues).toMatchObject([{ code: 'results-ignored', count: 2 }]);
    expect(digest.fates).toBe('uii');
  });
});

describe('medicines that were not taken, or not yet', () => {
  const dose = (resourceType: string, status: string, more: object = {}) => ({
    resourceType,
    status,
    medicationCodeableConcept: { coding: [{ system: 'http://www.whocc.no/atc', code: 'A10AB' }] },
    effectiveDateTime: AT,
    dosage:
      resourceType === 'MedicationAdministration'
        ? { dose: amount(5, '[iU]') }
        : [{ doseAndRate: [{ doseQuantity: amount(5, '[iU]') }] }],
    ...more,
  });
  test.each<[string, object, string, string]>([
    ['administration done', dose('MedicationAdministration', 'completed'), 'n', 'insulin 5 IU'],
    ['administration stopped', dose('MedicationAdministration', 'stopped'), 'n', 'insulin 5 IU'],
    ['administration not done', dose('MedicationAdministration', 'not-done'), 'n', 'insulin "not-done"'],
    ['administration on hold', dose('MedicationAdministration', 'on-hold'), 's', ''],
    ['administration in error', dose('MedicationAdministration', 'entered-in-error'), 's', ''],
    ['administration of unknown state', dose('MedicationAdministration', 'unknown'), 's', ''],
    ['statement of a dose', dose('MedicationStatement', 'completed'), 'n', 'insulin 5 IU'],
    ['statement of a dose not taken', dose('MedicationStatement', 'not-taken'), 'n', 'insulin "not-taken"'],
    ['statement of an intention', dose('MedicationStatement', 'intended'), 's', ''],
    [
      'a regimen',
      dose('MedicationStatement', 'active', { effectiveDateTime: undefined, effectivePeriod: { start: '2026-01-01' } }),
      'i',
      '',
    ],
    [
      'an unknown modifier',
      dose('MedicationAdministration', 'completed', { modifierExtension: [{ url: 'x' }] }),
      's',
      '',
    ],
  ])('%s', (_, resource, fates, note) => {
    const digest = read(resource);
    expect(digest.fates).toBe(fates);
    expect(digest.notes).toEqual(note === '' ? [] : [`2026-01-15 02:00 +120 ${note}`]);
  });
});

describe('exercise told in several Observations', () => {
  const part = (id: string, code: string, more: object) => {
    const { valueQuantity: _, ...rest } = sensor(0);
    return { ...rest, id, code: loinc(code), ...more };
  };
  const walk = part('w', '73985-4', { valueCodeableConcept: { text: 'Walk' } });
  const half = part('d', '55411-3', { valueQuantity: amount(30, 'min') });
  it('is joined by its members', () => {
    const panel = part('p', '55409-7', { hasMember: [{ reference: 'Observation/w' }, { reference: 'Observation/d' }] });
    for (const order of [
      [panel, walk, half],
      [half, walk, panel],
    ]) {
      const digest = read(bundle(...order));
      expect(digest.notes).toEqual(['2026-01-15 02:00 +120 exercise 30 minutes [Walk]']);
      expect([...digest.fates].sort().join('')).toBe('ddn');
    }
  });

  it('is joined by an equal time', () => {
    const digest = read(bundle(half, walk));
    expect(digest.notes).toEqual(['2026-01-15 02:00 +120 exercise 30 minutes [Walk]']);
    expect(digest.fates).toBe('dn');
  });

  it('adds moderate and vigorous minutes, and leaves out a member made in error', () => {
    const members = ['m', 'v', 'x'].map((id) => ({ reference: `Observation/${id}` }));
    const digest = read(
      bundle(
        { ...walk, hasMember: members },
        part('m', '77592-4', { valueQuantity: amount(20, 'min') }),
        part('v', '77593-2', { valueQuantity: amount(10, 'min') }),
        part('x', '77593-2', { status: 'entered-in-error', valueQuantity: amount(99, 'min') }),
      ),
    );
    expect(digest.notes).toEqual(['2026-01-15 02:00 +120 exercise 30 minutes [Walk]']);
    expect(digest.fates).toBe('ndds');
  });
});

const data = (path: string) => join(import.meta.dirname, '../data', path);
const input = (folder: string, name: string) => ({
  name,
  bytes: new Uint8Array(readFileSync(data(join(folder, name)))),
});
const bulk = ['Device', 'DeviceUseStatement', 'MedicationAdministration', 'Observation', 'Patient'];

describe('a bulk export', () => {
  const files = () => bulk.map((kind) => input('fhir/ndjson', `${kind}.ndjson`));
  const manifest = () => input('fhir/ndjson', 'manifest.json');
  const settings = { zone: 'Europe/Madrid' };

  it('gives the same timeline as the same records in one Bundle', () => {
    const many = readInputs([...files(), manifest()], { today: TODAY, ...settings });
    const one = readInputs([input('fhir', 'one-hour-molar.json')], { today: TODAY, ...settings });
    const [a, b] = [many, one].map((read) => buildTimeline(read, settings).timeline!);
    expect(a!.readings).toEqual(b!.readings);
    const plain = (timeline: typeof a) => timeline!.notes.map(({ origin: _, row: __, ...note }) => note);
    expect(plain(a)).toEqual(plain(b));
    expect(many.flatMap(({ issues }) => issues).filter(({ code }) => code.startsWith('export'))).toEqual([]);
  });

  it('knows the person by the identifier that stands in another file', () => {
    const read = readInputs(files(), { today: TODAY });
    expect(new Set(read.flatMap(({ persons }) => persons))).toEqual(new Set(['P-0002']));
  });

  it('counts what the manifest promises', () => {
    const short = files().filter(({ name }) => name !== 'Device.ndjson');
    const observations = short.find(({ name }) => name === 'Observation.ndjson')!;
    const lines = new TextDecoder().decode(observations.bytes).trimEnd().split('\n');
    observations.bytes = new TextEncoder().encode(lines.slice(0, -2).join('\n'));
    const read = readInputs([...short, manifest()], { today: TODAY });
    const notices = read.flatMap(({ issues }) => issues).filter(({ code }) => code.startsWith('export'));
    expect(notices).toMatchObject([
      { code: 'export-file-missing', actual: 'Device.ndjson', expected: 1 },
      { code: 'export-count', actual: { is: 'file-rows', file: 'Observation.ndjson', rows: 21 }, expected: 23 },
    ]);
  });

  it('refuses two Patients', () => {
    const other = { ...sensor(112, { subject: { reference: 'Patient/other' } }) };
    const read = readInputs([...files(), { name: 'b.json', bytes: new TextEncoder().encode(JSON.stringify(other)) }], {
      today: TODAY,
    });
    const { timeline, issues } = buildTimeline(read, settings);
    expect(timeline).toBeNull();
    expect(issues.map(({ code }) => code)).toEqual(['two-persons']);
  });
});

describe('the example files', () => {
  const sum = (digest: Digest) => digest.file.readings.native.reduce((a, b) => a + b, 0);
  const digestOfFile = (path: string) => tell(new Uint8Array(readFileSync(data(path))), {}, 'export.json');

  it('an hour in mg/dL', () => {
    const found = digestOfFile('fhir/one-hour-mass.json');
    expect([found.readings.length, sum(found), found.file.zone]).toEqual([20, 3060, 'Europe/Helsinki']);
    expect(found.file.notes.map(({ kind }) => kind).sort()).toEqual(
      ['exercise', 'fingerstick', 'insulin', 'meal', 'medication', 'text'].sort(),
    );
    expect(codes(found)).toContain('test-data');
  });

  it('an hour in mmol/L with a limit and an absent value', () => {
    const found = digestOfFile('fhir/one-hour-molar.json');
    const numbers = Array.from(found.file.readings.native).filter((_, i) => found.file.readings.limit[i] === 0);
    expect(numbers.length).toBe(18);
    expect(numbers.reduce((a, b) => a + b, 0)).toBeCloseTo(68.8, 6);
    expect(found.readings).toContain('2026-01-15 02:24 +0 <2.2 mmol/L');
    expect(found.file.issues.find(({ code }) => code === 'value-absent')?.actual).toContain('No signal');
    expect(found.file.notes.filter(({ kind }) => kind === 'insulin').map(({ amount: n }) => n)).toEqual([
      18,
      0.7,
      undefined,
    ]);
  });

  it('results only', () => {
    expect(codes(digestOfFile('fhir/summary-14-days-mass.json'))).toContain('results-only');
  });

  it.each(['one-hour-data-points.json', 'one-hour-data-points.ndjson'])('data points: %s', (name) => {
    const found = digestOfFile(`openmhealth/${name}`);
    expect([found.readings.length, sum(found), found.notes.length]).toEqual([20, 2300, 3]);
    expect(found.file.issues).toMatchObject([
      { code: 'schema-ignored', actual: 'org.example:carbohydrate-intake:0.1' },
    ]);
  });

  it('data points with the older header', () => {
    const found = digestOfFile('openmhealth/older-header.json');
    expect(found.readings).toHaveLength(6);
    expect(codes(found).sort()).toEqual(['no-offset-means-utc', 'value-over-period']);
    expect(found.notes).toHaveLength(2);
  });
});

it('refuses XML with what to do', () => {
  const xml = '<?xml version="1.0"?><Bundle xmlns="http://hl7.org/fhir"><type value="collection"/></Bundle>';
  expect(tell(xml, {}, 'export.txt').issues).toEqual(['refusal fhir-xml']);
});

describe('two Patients in one file', () => {
  const patient = (id: string, value?: string) => ({
    resourceType: 'Patient',
    id,
    ...(value ? { identifier: [{ use: 'official', value }] } : {}),
  });
  const bare = {
    resourceType: 'Observation',
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '99504-3' }] },
    effectiveDateTime: '2026-01-14T08:00:00+02:00',
    valueQuantity: { value: 100, system: 'http://unitsofmeasure.org', code: 'mg/dL' },
  };
  it.each<[string, unknown[], number]>([
    ['whose readings name no subject', [patient('a'), patient('b'), bare], 2],
    [
      'of whom only one has readings',
      [patient('a'), patient('b'), { ...bare, subject: { reference: 'Patient/a' } }],
      2,
    ],
    [
      'with one official identifier',
      [patient('a', '1'), patient('b', '1'), { ...bare, subject: { reference: 'Patient/a' } }],
      1,
    ],
    ['that are one given twice', [patient('a'), patient('a'), { ...bare, subject: { reference: 'Patient/a' } }], 1],
  ])('%s', (_, resources, persons) => {
    const entry = resources.map((resource) => ({ resource }));
    const { file } = tell(JSON.stringify({ resourceType: 'Bundle', type: 'collection', entry }), {}, 'a.json');
    expect(file.persons).toHaveLength(persons);
    expect(onePerson([file])?.level).toBe(persons > 1 ? 'refusal' : undefined);
  });

  it('or in two files', () => {
    const input = (name: string, ...resources: unknown[]) => ({
      name,
      bytes: new TextEncoder().encode(resources.map((resource) => JSON.stringify(resource)).join('\n')),
    });
    const files = (id: string) =>
      readInputs([input('a.ndjson', patient('a'), bare), input('b.ndjson', patient(id))], { today: TODAY });
    expect(onePerson(files('b'))?.code).toBe('two-persons');
    expect(onePerson(files('a'))).toBeUndefined();
  });
});

test('a resource nested deeper than can be written out is read, and compared by the rest of it', () => {
  const deep = '['.repeat(100_000) + ']'.repeat(100_000);
  const line = (id: string, value: number) =>
    `{"resourceType":"Observation",${id}"status":"final","code":{"coding":[{"system":"http://loinc.org","code":"99504-3"}]},"effectiveDateTime":"2026-01-14T08:00:00+02:00","valueQuantity":{"value":${value},"system":"http://unitsofmeasure.org","code":"mg/dL"},"note":${deep}}`;
  const fates = (id: string, ...values: number[]) =>
    tell(values.map((value) => line(id, value)).join('\n'), {}, 'a.ndjson').file.fates;
  expect(fates('', 100)).toEqual(['used']);
  expect(fates('"id":"a",', 100, 100)).toEqual(['used', 'duplicate']);
  expect(fates('"id":"a",', 100, 101)).toEqual(['set-aside', 'set-aside']);
});
