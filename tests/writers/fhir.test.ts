import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Analysis, analyse } from '../../src/analyse.ts';
import type { Settings } from '../../src/model/settings.ts';
import { uuid } from '../../src/writers/fhir/entries.ts';
import { type Bundle, fhirBundle, fhirLeft } from '../../src/writers/fhir/index.ts';
import { breaches, RANGES } from './cgmGuide.ts';

const PDF = new TextEncoder().encode('%PDF-1.7\n%%EOF\n');
const STORY = new URL('../../sample-data/steady-fortnight/', import.meta.url);

const known = new Map<string, Analysis>();

/** Made once of the same text and settings. */
function analysed(text: string | undefined, part: Partial<Settings> = {}): Analysis {
  const key = JSON.stringify([text, part]);
  const analysis = known.get(key) ?? analysedAnew(text, part);
  known.set(key, analysis);
  return analysis;
}

function analysedAnew(text: string | undefined, part: Partial<Settings>): Analysis {
  const settings: Settings = { targets: 'adult', today: '2026-06-01', person: { code: 'P-1' }, ...part };
  const inputs =
    text === undefined
      ? ['readings.csv', 'logbook.csv'].map((name) => ({ name, bytes: readFileSync(new URL(name, STORY)) }))
      : [{ name: 'a.csv', bytes: new TextEncoder().encode(text) }];
  const analysis = analyse(inputs, settings, 'test');
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  return analysis;
}

/** An invented clinic's own system of identifiers. */
const SYSTEM = 'https://harbour-lane.example/people';

const bundled = (analysis: Analysis, readings = false, system = SYSTEM): Bundle =>
  // Through JSON, as a receiver gets it.
  JSON.parse(JSON.stringify(fhirBundle(analysis, { pdf: PDF, readings, system })));

// biome-ignore lint/suspicious/noExplicitAny: parsed JSON of a standard's shape.
type Json = any;
const byProfile = (bundle: Bundle, profile: string): Json[] =>
  bundle.entry.map(({ resource }) => resource as Json).filter(({ meta }) => meta?.profile[0].endsWith(`/${profile}`));

/** Some days of readings: mg/dL every five minutes from midnight. */
function lines(days: number, cell: (i: number) => string, unit = 'mg/dL', start = Date.UTC(2026, 2, 27)): string {
  const rows = Array.from({ length: days * 288 }, (_, i) => {
    const at = new Date(start + i * 300_000).toISOString().slice(0, 16).replace('T', ' ');
    return `${at},${cell(i)}`;
  });
  return `Time,Sensor glucose (${unit})\n${rows.join('\n')}\n`;
}

test('a story becomes a bundle that breaks nothing of the guide', () => {
  const analysis = analysed(undefined, { zone: 'Europe/Madrid' });
  const bundle = bundled(analysis, true);
  expect(breaches(bundle)).toEqual([]);
  expect(bundle.entry.map(({ resource }) => resource.resourceType).slice(0, 3)).toEqual([
    'Patient',
    'DiagnosticReport',
    'Observation',
  ]);
  const { mean, timeInBands } = analysis.measures;
  expect(byProfile(bundle, 'cgm-summary-mean-glucose-mass-per-volume')[0].valueQuantity.value).toBeCloseTo(
    mean.ok ? mean.value.mgdl.value : 0,
    8,
  );
  const parts: number[] = byProfile(bundle, 'cgm-summary-times-in-ranges')[0].component.map(
    (one: Json) => one.valueQuantity.value,
  );
  expect(Math.abs(parts.reduce((sum, part) => sum + part, 0) - 100)).toBeLessThan(0.01);
  const exclusive = timeInBands.ok ? timeInBands.value.exclusive : undefined;
  expect(parts[RANGES.indexOf('104642-4')]! / 100).toBeCloseTo(exclusive!['very-low'].value, 10);
  expect(parts[RANGES.indexOf('104639-0')]! / 100).toBeCloseTo(exclusive!['very-high'].value, 10);
  expect(byProfile(bundle, 'cgm-sensor-reading-mass-per-volume').length).toBe(analysis.timeline.readings.count);
  expect(Buffer.from(byProfile(bundle, 'cgm-summary-pdf')[0].presentedForm[0].data, 'base64')).toEqual(
    Buffer.from(PDF),
  );
});

test('readings are left out unless asked for, or where no zone says how far the clock was from UTC', () => {
  const reading = 'cgm-sensor-reading-mass-per-volume';
  expect(
    byProfile(
      bundled(
        analysed(
          lines(1, () => '100'),
          { zone: 'Europe/Madrid' },
        ),
      ),
      reading,
    ),
  ).toEqual([]);
  expect(byProfile(bundled(analysed(lines(1, () => '100')), true), reading)).toEqual([]);
});

test('a reading keeps its unit, its bound and the wearer’s clock over a change of it', () => {
  const zone = 'Europe/Helsinki';
  const cell = (i: number): string => (i === 0 ? '<2.2' : i === 1 ? '>22.2' : i === 2 ? 'Low' : '6.7');
  const analysis = analysed(lines(3, cell, 'mmol/L', Date.UTC(2026, 2, 28)).replaceAll(/^2026-03-29 03:.*\n/gm, ''), {
    zone,
  });
  const bundle = bundled(analysis, true);
  expect(breaches(bundle)).toEqual([]);
  const readings = byProfile(bundle, 'cgm-sensor-reading-moles-per-volume');
  expect(readings[0]).toMatchObject({
    effectiveDateTime: '2026-03-28T00:00:00+02:00',
    _effectiveDateTime: { extension: [{ valueCode: zone }] },
    valueQuantity: { value: 2.2, comparator: '<', unit: 'mmol/l', code: 'mmol/L' },
  });
  expect(readings[1].valueQuantity).toMatchObject({ value: 22.2, comparator: '>' });
  if (readings[2].valueQuantity === undefined) {
    expect(readings[2].dataAbsentReason.coding[0].code).toBe('negative-infinity');
  } else expect(readings[2].valueQuantity.comparator).toBe('<');
  expect(readings[3].valueQuantity).toEqual({
    value: 6.7,
    unit: 'mmol/l',
    system: 'http://unitsofmeasure.org',
    code: 'mmol/L',
  });
  // Clocks went from 03:00 to 04:00 on 29 March 2026 (IANA time zone database).
  expect(
    readings.find(({ effectiveDateTime }) => effectiveDateTime.startsWith('2026-03-29T04:00'))?.effectiveDateTime,
  ).toBe('2026-03-29T04:00:00+03:00');
});

test('where a member is withheld there is no summary, and the others go out one by one', () => {
  const analysis = analysed(undefined, { targets: 'pregnancy-type-1' });
  const bundle = bundled(analysis);
  expect(breaches(bundle)).toEqual([]);
  expect(byProfile(bundle, 'cgm-summary')).toEqual([]);
  expect(byProfile(bundle, 'cgm-summary-gmi')).toEqual([]);
  const results = bundle.entry.slice(2).map(({ fullUrl }) => ({ reference: fullUrl }));
  expect(results).toHaveLength(6);
  expect(bundle.entry[1]!.resource.result).toEqual(results);
  expect(fhirLeft(analysis, { readings: false, system: SYSTEM })).toEqual({
    readings: 0,
    notes: 0,
    results: ['gmi'],
    unidentified: false,
  });
});

test('no day of printing becomes an instant of issue', () => {
  expect(JSON.stringify(bundled(analysed(undefined)))).not.toContain('"issued"');
});

test('without the clinic’s own system nothing has an identifier, so that the P-1 of two clinics never meet', () => {
  const analysis = analysed(undefined, { zone: 'Europe/Madrid' });
  const bare: Bundle = JSON.parse(JSON.stringify(fhirBundle(analysis, { pdf: PDF, readings: true })));
  expect(breaches(bare)).toEqual([]);
  expect(JSON.stringify(bare)).not.toMatch(/"identifier"|ifNoneExist|P-1"/);
  expect(fhirLeft(analysis, { readings: true }).unidentified).toBe(true);
  const of = (system: string): Set<unknown> =>
    new Set(bundled(analysis, true, system).entry.map(({ resource }) => (resource as Json).identifier[0].value));
  const [one, two] = [of(SYSTEM), of('https://other.example/people')];
  expect([...one].filter((value) => two.has(value))).toEqual(['P-1']);
  expect((bundled(analysis).entry[0]!.resource as Json).identifier).toEqual([{ system: SYSTEM, value: 'P-1' }]);
  expect(bundled(analysis, true).entry.length).toBe(bare.entry.length);
});

test('visits that overlap, and other goals, send no reading and no note twice', () => {
  const zone = 'Europe/Madrid';
  const sent = (part: Partial<Settings>): Set<string> =>
    new Set(
      bundled(analysed(undefined, { zone, ...part }), true)
        .entry.filter(({ resource }) => (resource as Json).effectiveDateTime !== undefined)
        .map(({ request }) => request.ifNoneExist!),
    );
  const whole = sent({});
  const week = sent({ period: { days: 7 } });
  expect(week.size).toBeGreaterThan(1500);
  expect([...week].filter((one) => !whole.has(one))).toEqual([]);
  expect(sent({ targets: 'older' })).toEqual(whole);
  // Another unit is another reading.
  const text = lines(2, () => '6.0', 'mmol/L');
  const same = (unit: string): string[] =>
    bundled(
      analysed(text.replace('mmol/L', unit).replaceAll(',6.0', unit === 'mg/dL' ? ',108' : ',6.0'), { zone }),
      true,
    )
      .entry.slice(-5)
      .map(({ request }) => request.ifNoneExist!);
  expect(same('mg/dL').filter((one) => same('mmol/L').includes(one))).toEqual([]);
});

test('readings with an offset of their own go out without a zone', () => {
  const text = lines(1, () => '100').replaceAll(/^(\d{4}-\d\d-\d\d) (\d\d:\d\d)/gm, '$1T$2:00-03:00');
  const analysis = analysed(text);
  expect(analysis.timeline.zone).toBeNull();
  const readings = byProfile(bundled(analysis, true), 'cgm-sensor-reading-mass-per-volume');
  expect(readings).toHaveLength(288);
  expect(readings[0].effectiveDateTime).toBe('2026-03-27T00:00:00-03:00');
  expect(readings[0]._effectiveDateTime).toBeUndefined();
  expect(fhirLeft(analysis, { readings: true, system: SYSTEM }).readings).toBe(0);
  expect(fhirLeft(analysed(lines(1, () => '100')), { readings: true, system: SYSTEM }).readings).toBe(288);
});

test('the same analysis gives the same bundle; another person’s or another period’s shares no id but the person’s', () => {
  const text = lines(15, (i) => String(100 + (i % 50)));
  const ids = (part: Partial<Settings>): string[] => bundled(analysed(text, part)).entry.map(({ fullUrl }) => fullUrl);
  expect(bundled(analysedAnew(text, {})).entry.map(({ fullUrl }) => fullUrl)).toEqual(ids({}));
  expect(ids({ person: { code: 'P-2' } }).filter((id) => ids({}).includes(id))).toEqual([]);
  const shared = ids({ period: { days: 7 } }).filter((id) => ids({}).includes(id));
  expect(shared).toEqual([ids({})[0]]);
});

test('no name unless one was given to be printed', () => {
  const text = lines(15, () => '100');
  const coded = JSON.stringify(bundled(analysed(text)));
  expect(coded).not.toContain('"name"');
  const named = bundled(analysed(text, { person: { code: 'P-1', name: 'Nadia' } }));
  expect(named.entry[0]!.resource.name).toEqual([{ text: 'Nadia' }]);
});

test('ids are version 5 of RFC 9562', () => {
  expect(uuid('a')).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(uuid('a')).not.toBe(uuid('b'));
});

test('the checks find what is wrong', () => {
  const spoil = (change: (bundle: Json) => void): string[] => {
    const bundle = bundled(analysed(lines(15, () => '100')));
    change(bundle);
    return breaches(bundle);
  };
  const summary = (bundle: Json, profile: string): Json => byProfile(bundle, profile)[0];
  const mean = 'cgm-summary-mean-glucose-mass-per-volume';
  for (const change of [
    (b: Json) => (summary(b, mean).valueQuantity.unit = 'mg/dL'),
    (b: Json) => (summary(b, mean).code.coding[0].code = '2345-7'),
    (b: Json) => summary(b, 'cgm-summary').hasMember.splice(2, 2),
    (b: Json) => summary(b, 'cgm-summary-times-in-ranges').component.reverse(),
    (b: Json) => delete summary(b, 'cgm-summary-gmi').valueQuantity,
    (b: Json) => (summary(b, 'cgm-summary-days-of-wear').effectivePeriod.end = '2026-06-01T00:00:00Z'),
    (b: Json) => delete summary(b, 'cgm-summary-pdf').presentedForm[0].data,
    (b: Json) => (b.entry[0].resource.identifier = []),
    (b: Json) => delete b.entry[0].request.ifNoneExist,
    (b: Json) => (b.type = 'batch'),
  ]) {
    expect(spoil(change), String(change)).not.toEqual([]);
  }
});

test('a dose that was not given, and words about one, never come out as something given; other units of food stay in words', () => {
  const analysis = analysed(
    lines(1, () => '100'),
    { zone: 'Europe/Madrid' },
  );
  const { timeline } = analysis;
  const note = {
    at: timeline.readings.at[5]!,
    day: timeline.readings.day[5]!,
    minute: timeline.readings.minute[5]!,
    timed: true,
    wall: 0,
    offset: 0,
    row: 1,
    origin: { file: 'a', line: 1 },
  };
  const notes = [
    { ...note, kind: 'insulin', label: 'rapid', text: 'not-done' },
    { ...note, kind: 'medication', label: 'tablet', text: 'forgot' },
    { ...note, kind: 'insulin', label: 'rapid', amount: 4, unit: 'IU', text: 'late' },
    { ...note, kind: 'meal', amount: 2, unit: 'exchanges' },
    { ...note, kind: 'alarm' },
  ] as unknown as Analysis['timeline']['notes'];
  const bundle = bundled({ ...analysis, timeline: { ...timeline, notes } }, true);
  expect(breaches(bundle)).toEqual([]);
  const sent = bundle.entry.slice(-4).map(({ resource }) => resource as Json);
  expect(sent.map(({ resourceType }) => resourceType)).toEqual([
    'Observation',
    'Observation',
    'MedicationAdministration',
    'Observation',
  ]);
  expect(sent.slice(0, 2).map(({ valueString }) => valueString)).toEqual(['rapid: not-done', 'tablet: forgot']);
  expect(sent[2].note).toEqual([{ text: 'late' }]);
  expect(sent[3].note).toEqual([{ text: '2 exchanges' }]);
});

/** What a note says, whatever file it came from. */
const saying = ({ at, timed, kind, amount, unit, label, text, minutes }: Analysis['timeline']['notes'][number]) => ({
  at: timed ? at : null,
  kind,
  amount,
  unit,
  label,
  text,
  minutes,
});

test.each(['steady-fortnight', 'evening-exercise', 'long-highs', 'autumn-clock-change', 'pregnancy'])(
  'our own reader takes %s back: the same numbers, the same notes',
  (story) => {
    const folder = new URL(`../../sample-data/${story}/`, import.meta.url);
    const inputs = readdirSync(folder)
      .filter((name) => /\.(csv|tsv|json|txt)$/.test(name) && name !== 'settings.json')
      .map((name) => ({ name, bytes: readFileSync(new URL(name, folder)) }));
    const analysis = analyse(
      inputs,
      { targets: 'adult', today: '2026-12-01', zone: 'Europe/Madrid', person: {} },
      'test',
    );
    if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
    const bytes = new TextEncoder().encode(JSON.stringify(fhirBundle(analysis, { pdf: PDF, readings: true })));
    const again = analyse([{ name: 'b.json', bytes }], analysis.settings, 'test');
    if (!again.ok) throw new Error(JSON.stringify(again.issues));
    expect([...again.timeline.readings.at]).toEqual([...analysis.timeline.readings.at]);
    expect([...again.timeline.readings.native]).toEqual([...analysis.timeline.readings.native]);
    const kinds = new Set(['alarm', 'calibration']);
    const sent = analysis.timeline.notes.filter(({ kind }) => !kinds.has(kind)).map(saying);
    expect(again.timeline.notes.map(saying)).toEqual(sent);
    expect(fhirLeft(analysis, { readings: true }).notes).toBe(analysis.timeline.notes.length - sent.length);
    for (const name of [
      'mean',
      'timeInBands',
      'cv',
      'gmi',
      'lows',
      'highs',
      'nights',
      'daily',
      'meals',
      'exercise',
    ] as const)
      expect(again.measures[name], name).toEqual(analysis.measures[name]);
  },
);
