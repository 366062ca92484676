import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { walk } from '../../src/readers/json/elements.ts';
import { openJson } from '../../src/readers/json/jsonText.ts';
import { tell } from './digest.ts';

describe('Open mHealth and IEEE 1752.1 data points', () => {
  // Field names: openmhealth/schemas blood-glucose 1.0-4.0, physical-activity, single-medication-dose-taken.
  const AT = { date_time: '2026-02-03T18:00:00-05:00' };
  const point = (name: string, body: object, header: object = {}) => ({
    header: { uuid: 'x', schema_id: { namespace: 'omh', name, version: '4.0' }, modality: 'sensed', ...header },
    body: { effective_time_frame: AT, ...body },
  });
  const glucose = (body: object, header?: object) =>
    point(
      'blood-glucose',
      { blood_glucose: { value: 132, unit: 'mg/dL' }, specimen_source: 'interstitial fluid', ...body },
      header,
    );
  const read = (json: unknown) => tell(JSON.stringify(json), {}, 'points.json');

  it('reads a sensor value', () => {
    expect(read([glucose({})]).readings).toEqual(['2026-02-03 18:00 -300 132 mg/dL']);
  });

  it('reads one header with a series of bodies', () => {
    const { header, body } = glucose({});
    expect(read({ header, body: [body, body] }).readings).toHaveLength(2);
    expect(read({ header, body: { cgm: [body, body, body] } }).readings).toHaveLength(3);
  });

  test.each<[string, object, string]>([
    ['capillary blood', glucose({ specimen_source: 'capillary blood' }), 'fingerstick 132 mg/dL'],
    ['self-reported', glucose({ specimen_source: undefined }, { modality: 'self-reported' }), 'fingerstick 132 mg/dL'],
    [
      'walk',
      point('physical-activity', { activity_name: 'walking', duration: { value: 28, unit: 'min' } }),
      'exercise 28 minutes [walking]',
    ],
    [
      'walk by its interval',
      point('physical-activity', {
        activity_name: 'walking',
        effective_time_frame: {
          time_interval: { start_date_time: AT.date_time, end_date_time: '2026-02-03T18:28:00-05:00' },
        },
      }),
      'exercise 28 minutes [walking]',
    ],
    [
      'insulin',
      point('single-medication-dose-taken', { medication: { generic_name: 'insulin' }, dose: { value: 4, unit: 'U' } }),
      'insulin 4 IU [insulin]',
    ],
  ])('%s', (_, data, note) => {
    expect(read([data]).notes).toEqual([`2026-02-03 18:00 -300 ${note}`]);
  });

  it('keeps an evening without a clock as a note of that day', () => {
    const time_interval = { date: '2026-02-02', part_of_day: 'evening' };
    const digest = read([
      point('physical-activity', { activity_name: 'swimming', effective_time_frame: { time_interval } }),
    ]);
    expect(digest.notes).toEqual(['2026-02-02 exercise [swimming] "evening"']);
  });

  test.each<[string, object, string]>([
    ['an average', glucose({ descriptive_statistic: 'average' }), 'value-over-period'],
    ['saliva', glucose({ specimen_source: 'saliva' }), 'specimen-not-sensor'],
    ['no time', glucose({ effective_time_frame: undefined }), 'no-time'],
    ['no unit', glucose({ blood_glucose: { value: 132 } }), 'value-unit-unknown'],
  ])('%s is set aside', (_, data, code) => {
    const digest = read([data]);
    expect(digest.file.issues.map((issue) => issue.code)).toEqual([code]);
    expect(digest.fates).toBe('s');
  });

  it('takes a time without an offset for UTC, as the schema says, and tells', () => {
    const digest = read([glucose({ effective_time_frame: { date_time: '2026-02-03T18:00:00' } })]);
    expect(digest.readings).toEqual(['2026-02-03 18:00 +0 132 mg/dL']);
    expect(digest.choices.clock).toBe('default: utc');
  });

  it('counts schemas it does not know', () => {
    const digest = read([point('body-weight', {})]);
    expect(digest.file.issues).toMatchObject([{ code: 'schema-ignored', actual: 'omh:body-weight:4.0', count: 1 }]);
    expect(digest.fates).toBe('i');
  });
});

describe('plain records', () => {
  const rows = [
    { time: '2026-01-14 08:00', glucose: 102, unit: 'mg/dL', note: 'two\nlines' },
    { time: '2026-01-14 08:05', glucose: 98, unit: 'mg/dL' },
    { time: '2026-01-14 08:10', glucose: 0, unit: 'mg/dL' },
  ];
  const expected = ['2026-01-14 08:00 102 mg/dL', '2026-01-14 08:05 98 mg/dL'];
  test.each<[string, string]>([
    ['array', JSON.stringify(rows)],
    ['array over lines', JSON.stringify(rows, null, 2)],
    ['lines', rows.map((row) => JSON.stringify(row)).join('\n')],
    ['list inside an object', JSON.stringify({ made: 'today', readings: rows })],
    [
      'one level deeper',
      JSON.stringify(rows.map(({ time, glucose, unit, note }) => ({ time, glucose: { value: glucose, unit }, note }))),
    ],
  ])('%s', (_, text) => {
    const digest = tell(text, {}, 'data.json');
    expect(digest.readings).toEqual(expected);
    expect(digest.notes).toEqual(['2026-01-14 08:00 text "two\nlines"']);
    expect(digest.fates).toBe('uus');
    expect(digest.file.kind).toBe('json-records');
  });

  it('names the line of the record', () => {
    expect(tell(rows.map((row) => JSON.stringify(row)).join('\n'), {}, 'x.jsonl').issues).toEqual([
      'warning sentinel-value 3',
    ]);
  });

  test.each<[string, string, string]>([
    ['empty list', '[]', 'warning file-empty'],
    ['not known', '{"hello": {"world": 1}}', 'refusal json-unknown'],
    ['cut off', '[{"time": "2026-01-14', 'refusal json-broken 1'],
    ['deep', `${'['.repeat(50_000)}${']'.repeat(50_000)}`, 'refusal json-unknown'],
  ])('%s', (_, text, issue) => {
    expect(tell(text, {}, 'x.json').issues).toEqual([issue]);
  });
});

const open = (text: string, whole?: number) => {
  const opened = openJson(new TextEncoder().encode(text), whole);
  const seen: [unknown, number][] = [];
  if ('brokenAt' in opened) return { brokenAt: opened.brokenAt, seen };
  const inside = [...opened.inside.values()].sort((a, b) => b.count - a.count);
  const elements = opened.form === 'object' && inside[0] ? inside[0] : opened.elements;
  const { brokenAt, broken } = walk(opened, elements, (value, i) => seen.push([value, elements.line(i)]));
  return { form: opened.form, brokenAt, broken, seen };
};

describe('elements', () => {
  const lists = fc.array(fc.jsonValue(), { minLength: 1, maxLength: 8 });
  const indents = fc.constantFrom(0, 1, 4);

  it('of any JSON array stand on the lines told', () => {
    fc.assert(
      fc.property(lists, indents, (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        const lines = text.split('\n');
        const { seen } = open(text);
        expect(seen.length).toBe(value.length);
        for (const [element, line] of seen) {
          const row = lines[line - 1]!;
          expect(line === 1 ? row.slice(1) : row).toContain(JSON.stringify(element)[0]!);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('are the same whether a text is parsed whole or element by element', () => {
    const shapes = fc.constantFrom('array', 'object', 'lines');
    fc.assert(
      fc.property(lists, indents, shapes, fc.jsonValue(), (value, indent, shape, other) => {
        const objects = value.map((element) => ({ element }));
        const text =
          shape === 'array'
            ? JSON.stringify(value, null, indent)
            : shape === 'object'
              ? JSON.stringify({ other, more: { x: [1, 2] }, 'en\\try "x"': value }, null, indent)
              : objects.map((object) => JSON.stringify(object)).join('\r\n');
        expect(open(text, 0)).toEqual(open(text));
      }),
      { numRuns: 200 },
    );
  });

  it('of a list with a long name are not taken for those of the list before', () => {
    const text = JSON.stringify({ entry: [1, 2, 3], [`${'x'.repeat(80)}"`]: [4] });
    const inside = (whole?: number) => {
      const opened = openJson(new TextEncoder().encode(text), whole);
      return 'inside' in opened ? [...opened.inside].map(([key, { count }]) => [key.length, count]) : [];
    };
    expect(inside(0)).toEqual([
      [5, 3],
      [81, 1],
    ]);
    expect(inside()).toEqual(inside(0));
  });

  it.each([
    '[1, 2,, 3]',
    '[1, 2',
    '[1, 2]]',
    '[{"a": 1} {"b": 2}]',
    '{"a": [1, {"b": }], "c": 1}',
    '{"a": [1, 2], "c" 1}',
    '{"a": [1, 2]',
    '\n\n[1,\n tru]\n',
  ])('of %j are broken either way', (text) => {
    expect(open(text).brokenAt).toBeGreaterThan(0);
    expect(open(text, 0).brokenAt).toBe(open(text).brokenAt);
  });

  it('of lines: the broken ones are told, unless most are', () => {
    const text = '{"a":1}\n{"b":\n\n{"c":3}\r{"d":4}\n7\n';
    for (const whole of [0, undefined]) {
      expect(open(text, whole)).toMatchObject({ form: 'lines', broken: [2, 6], brokenAt: 0 });
      expect(open(text, whole).seen.map(([, line]) => line)).toEqual([1, 4, 5]);
      expect(open('{"a":1}\n{\n{\n', whole).brokenAt).toBeGreaterThan(0);
    }
  });
});

describe('a text of more than 4 MB', () => {
  const sensor = (i: number) => ({
    resourceType: 'Observation',
    id: `o${i}`,
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '99504-3', display: 'x'.repeat(400) }] },
    subject: { reference: 'Patient/p' },
    effectiveDateTime: new Date(Date.UTC(2026, 0, 1) + i * 60_000).toISOString().replace('Z', '+00:00'),
    valueQuantity: { value: 90 + (i % 100), system: 'http://unitsofmeasure.org', code: 'mg/dL' },
  });
  const patient = { resourceType: 'Patient', id: 'p', identifier: [{ use: 'official', value: 'K-1' }] };
  const point = (i: number) => ({
    header: {
      uuid: `u${i}`,
      more: 'x'.repeat(400),
      schema_id: { namespace: 'omh', name: 'blood-glucose', version: '4.0' },
    },
    body: {
      blood_glucose: { value: 90 + (i % 100), unit: 'mg/dL' },
      specimen_source: 'interstitial fluid',
      effective_time_frame: { date_time: sensor(i).effectiveDateTime },
    },
  });
  const record = (i: number) => ({
    time: sensor(i).effectiveDateTime,
    'sensor glucose (mg/dL)': 90 + (i % 100),
    more: 'x'.repeat(500),
  });
  const COUNT = 8000;
  const all = <T>(make: (i: number) => T): T[] => Array.from({ length: COUNT }, (_, i) => make(i));
  const lines = (values: unknown[]): string => values.map((value) => JSON.stringify(value)).join('\n');

  it.each<[string, string, string, number]>([
    [
      'a Bundle',
      'fhir',
      JSON.stringify(
        {
          resourceType: 'Bundle',
          type: 'collection',
          entry: [patient, ...all(sensor)].map((resource) => ({ resource })),
        },
        null,
        1,
      ),
      COUNT + 1,
    ],
    ['FHIR as NDJSON', 'fhir', lines([patient, ...all(sensor), sensor(5)]), COUNT + 2],
    ['data points', 'open-mhealth', JSON.stringify(all(point)), COUNT],
    ['data points a line', 'open-mhealth', lines(all(point)), COUNT],
    ['records', 'json-records', JSON.stringify(all(record), null, 1), COUNT],
    ['records a line', 'json-records', lines(all(record)), COUNT],
  ])('%s is read like a small one', (_, kind, text, rows) => {
    expect(text.length).toBeGreaterThan(4_000_000);
    const { file, readings } = tell(text, {}, 'x.json');
    expect(file.kind).toBe(kind);
    expect(file.issues.filter(({ level }) => level !== 'note')).toEqual([]);
    expect(readings).toHaveLength(COUNT);
    expect(readings[17]).toBe('2026-01-01 00:17 +0 107 mg/dL');
    expect(file.fates).toHaveLength(rows);
    expect(file.fates.filter((fate) => fate === 'used')).toHaveLength(COUNT);
    if (kind === 'fhir') expect(file.persons).toEqual(['K-1']);
    if (rows === COUNT + 2) expect(file.fates.at(-1)).toBe('duplicate');
  });
});

describe('lists beside the one that is read', () => {
  const time = Array.from(
    { length: 30 },
    (_, i) => `2026-01-14 ${String(8 + Math.floor(i / 12)).padStart(2, '0')}:${String((i % 12) * 5).padStart(2, '0')}`,
  );
  const glucose = time.map((_, i) => 100 + i);
  it.each<[string, object]>([
    ['a column that is too short', { time, 'glucose mg/dL': glucose, carbs: [30, 0, 45] }],
    [
      'doses as records of their own',
      { readings: time.map((t, i) => ({ time: t, 'glucose mg/dL': glucose[i] })), doses: [{}, {}, {}] },
    ],
  ])('are told: %s', (_, data) => {
    const digest = tell(JSON.stringify(data), {}, 'data.json');
    expect(digest.readings).toHaveLength(30);
    expect(digest.issues).toEqual(['warning json-list-unread']);
    expect(digest.file.issues[0]).toMatchObject({ count: 3 });
  });
});
