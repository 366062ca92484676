import { describe, expect, it } from 'vitest';
import { readInputs } from '../../src/readers/index.ts';
import { buildTimeline } from '../../src/timeline/index.ts';
import { inWords } from '../support/inWords.ts';
import { rows, TODAY } from './digest.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const csv = (name: string, offset: string, from = '2026-01-14T00:00:00Z', count = 300) => ({
  name,
  bytes: bytes(
    `Time,Sensor glucose (mg/dL)\n${rows(count, (i, t) => `${t.slice(0, 16)}${offset},${100 + (i % 9)}`, from)}`,
  ),
});
const diary = (...times: string[]) => ({
  name: 'diary.csv',
  bytes: bytes(`Time,Carbs (g)\n${times.map((time) => `${time},30`).join('\n')}\n`),
});
const observation = (time: string, code = '99504-3') => ({
  resourceType: 'Observation',
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code }] },
  effectiveDateTime: time,
  valueQuantity: { value: 100, system: 'http://unitsofmeasure.org', code: 'mg/dL' },
});
const fhir = (...resources: unknown[]) => ({
  name: 'a.ndjson',
  bytes: bytes(resources.map((resource) => JSON.stringify(resource)).join('\n')),
});
const point = (time: string) => ({
  header: { id: time, schema_id: { namespace: 'omh', name: 'blood-glucose', version: '4.0' } },
  body: {
    blood_glucose: { value: 100, unit: 'mg/dL' },
    specimen_source: 'interstitial fluid',
    effective_time_frame: { date_time: time },
  },
});

function read(inputs: { name: string; bytes: Uint8Array }[], zone?: string) {
  const files = readInputs(inputs, { today: TODAY, ...(zone ? { zone } : {}) });
  const { timeline, issues } = buildTimeline(files, zone ? { zone } : {});
  const clocks = files.map(({ choices }) => choices.find(({ id }) => id === 'offset'));
  return { codes: issues.map(({ code, level }) => `${level} ${code}`), minute: timeline?.readings.minute[0], clocks };
}

describe('times in world time', () => {
  it.each([
    ['delimited text', [csv('a.csv', 'Z')]],
    ['delimited text with +00:00', [csv('a.csv', '+00:00')]],
    ['seconds since 1970', [{ name: 'a.csv', bytes: bytes(`Time,Glucose (mg/dL)\n1768377600,100\n1768377900,101\n`) }]],
    ['a column named UTC', [{ name: 'a.csv', bytes: bytes('Time (UTC),Glucose (mg/dL)\n2026-01-14 08:00,100\n') }]],
    ['FHIR', [fhir(observation('2026-01-14T08:00:00Z'), observation('2026-01-14T08:05:00Z'))]],
    ['Open mHealth', [{ name: 'a.json', bytes: bytes(JSON.stringify([point('2026-01-14T08:00:00Z')])) }]],
    [
      'Open mHealth without any offset',
      [{ name: 'a.json', bytes: bytes(JSON.stringify([point('2026-01-14T08:00:00')])) }],
    ],
    ['JSON records', [{ name: 'a.json', bytes: bytes('[{"time":"2026-01-14T08:00:00Z","glucose (mg/dL)":100}]') }]],
  ])('%s: asked for the zone, and read with one', (_, inputs) => {
    expect(read(inputs).codes).toEqual(['refusal clock-utc']);
    expect(read(inputs, 'UTC').codes).toEqual([]);
    expect(read(inputs, 'Europe/Helsinki').minute).toBe((read(inputs, 'UTC').minute! + 120) % 1440);
  });

  it('takes the clock of another file over the same days, and says which', () => {
    const result = read([csv('world.csv', 'Z'), diary('2026-01-14T08:00+02:00', '2026-01-15T00:30+02:00')]);
    expect(result.codes).toEqual([]);
    expect(result.minute).toBe(120);
    expect(result.clocks[0]).toEqual({
      id: 'offset',
      value: '+02:00',
      by: 'file',
      evidence: { is: 'named', name: 'diary.csv' },
    });
  });

  it('takes the clock of finger sticks in the same FHIR file', () => {
    const sensor = [0, 5, 10].map((m) => observation(`2026-01-14T08:${String(m).padStart(2, '0')}:00Z`));
    const result = read([fhir(...sensor, observation('2026-01-14T10:02:00+02:00', '41653-7'))]);
    expect(result.codes).toEqual([]);
    expect(result.minute).toBe(600);
    expect(result.clocks[0]).toMatchObject({ value: '+02:00', by: 'file' });
  });

  it.each([
    ['that ends days before', ['2026-01-02T08:00+02:00']],
    ['that changes its offset', ['2026-01-14T08:00+02:00', '2026-01-14T20:00+01:00']],
    ['that is in world time too', ['2026-01-14T08:00Z']],
  ])('does not take the clock of a file %s', (_, times) => {
    expect(read([csv('world.csv', 'Z'), diary(...times)]).codes).toEqual(['refusal clock-utc']);
  });

  it('puts notes in world time on the clock of the readings', () => {
    const result = read([csv('a.csv', '+02:00'), diary('2026-01-14T08:00Z')]);
    expect(result.codes).toEqual([]);
    expect(result.clocks[1]).toMatchObject({ value: '+02:00', evidence: { is: 'named', name: 'a.csv' } });
  });

  it('takes a zone that another file names before any offset', () => {
    const named = { name: 'b.csv', bytes: bytes('Europe/Helsinki\nTime,Carbs (g)\n2026-01-14 08:00,30\n') };
    expect(read([csv('a.csv', 'Z'), named]).minute).toBe(120);
  });

  it('refuses a table with two clocks, naming a line for each', () => {
    const text =
      'Time,Time zone,Glucose (mg/dL)\n2026-01-14 08:00,Europe/Helsinki,100\n2026-01-14 08:05,Asia/Tokyo,101\n';
    const [file] = readInputs([{ name: 'a.csv', bytes: bytes(text) }], { today: TODAY });
    expect(file!.issues.map(inWords)).toMatchObject([
      { code: 'zones-in-file', level: 'refusal', actual: 'Europe/Helsinki (line 2); Asia/Tokyo (line 3)' },
    ]);
  });
});
