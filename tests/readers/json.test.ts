import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { openJson } from '../../src/readers/json.ts';
import { tell } from './told.ts';

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
    const told = read([
      point('physical-activity', { activity_name: 'swimming', effective_time_frame: { time_interval } }),
    ]);
    expect(told.notes).toEqual(['2026-02-02 exercise [swimming] "evening"']);
  });

  test.each<[string, object, string]>([
    ['an average', glucose({ descriptive_statistic: 'average' }), 'value-over-period'],
    ['saliva', glucose({ specimen_source: 'saliva' }), 'specimen-not-sensor'],
    ['no time', glucose({ effective_time_frame: undefined }), 'no-time'],
    ['no unit', glucose({ blood_glucose: { value: 132 } }), 'value-unit-unknown'],
  ])('%s is set aside', (_, data, code) => {
    const told = read([data]);
    expect(told.file.issues.map((issue) => issue.code)).toEqual([code]);
    expect(told.fates).toBe('s');
  });

  it('takes a time without an offset for UTC, as the schema says, and tells', () => {
    const told = read([glucose({ effective_time_frame: { date_time: '2026-02-03T18:00:00' } })]);
    expect(told.readings).toEqual(['2026-02-03 18:00 +0 132 mg/dL']);
    expect(told.choices.clock).toBe('default: UTC');
  });

  it('counts schemas it does not know', () => {
    const told = read([point('body-weight', {})]);
    expect(told.file.issues).toMatchObject([{ code: 'schema-ignored', actual: 'omh:body-weight:4.0', count: 1 }]);
    expect(told.fates).toBe('i');
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
    const told = tell(text, {}, 'data.json');
    expect(told.readings).toEqual(expected);
    expect(told.notes).toEqual(['2026-01-14 08:00 text "two\nlines"']);
    expect(told.fates).toBe('uus');
    expect(told.file.kind).toBe('json-records');
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

describe('lines of elements', () => {
  it('match the elements for any JSON array', () => {
    fc.assert(
      fc.property(
        fc.array(fc.jsonValue(), { minLength: 1, maxLength: 8 }),
        fc.constantFrom(0, 1, 4),
        (value, indent) => {
          const opened = openJson(new TextEncoder().encode(JSON.stringify(value, null, indent)));
          if ('brokenAt' in opened) throw new Error('valid JSON was called broken');
          const lines = JSON.stringify(value, null, indent).split('\n');
          expect(opened.elements.length).toBe(value.length);
          for (const { line, value: element } of opened.elements) {
            const start = JSON.stringify(element)[0]!;
            const row = lines[line - 1]!;
            expect(line === 1 ? row.slice(1) : row).toContain(start);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});
