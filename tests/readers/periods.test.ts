import { describe, expect, it } from 'vitest';
import { tell } from './digest.ts';

const point = (name: string, body: object) => ({
  header: { uuid: 'x', schema_id: { namespace: 'omh', name, version: '4.0' }, modality: 'sensed' },
  body,
});
const over = (time_interval: object) => ({ effective_time_frame: { time_interval } });

// IEEE 1752.1 and Open mHealth, time-interval: start and end, start and duration, end and duration, or a date with a part of day.
describe('intervals of data points', () => {
  const walk = (interval: object, more = {}) =>
    tell(
      JSON.stringify([point('physical-activity', { activity_name: 'walking', ...over(interval), ...more })]),
      {},
      'points.json',
    );
  it.each<[string, object, string]>([
    [
      'a start and an end',
      { start_date_time: '2026-01-14T08:00:00+01:00', end_date_time: '2026-01-14T08:40:00+01:00' },
      '2026-01-14 08:00 +60 exercise 40 minutes [walking]',
    ],
    [
      'a start and a length',
      { start_date_time: '2026-01-14T08:00:00+01:00', duration: { value: 40, unit: 'min' } },
      '2026-01-14 08:00 +60 exercise 40 minutes [walking]',
    ],
    [
      'an end and a length',
      { end_date_time: '2026-01-14T08:40:00+01:00', duration: { value: 40, unit: 'min' } },
      '2026-01-14 08:00 +60 exercise 40 minutes [walking]',
    ],
    ['a start alone', { start_date_time: '2026-01-14T08:00:00+01:00' }, '2026-01-14 08:00 +60 exercise [walking]'],
  ])('%s', (_, interval, note) => {
    const digest = walk(interval);
    expect(digest.notes).toEqual([note]);
    expect(digest.issues.filter((issue) => issue.includes('interval-without-end'))).toHaveLength(
      note.includes('minutes') ? 0 : 1,
    );
  });

  it('keeps a length that stands beside the interval', () => {
    const digest = walk({ start_date_time: '2026-01-14T08:00:00+01:00' }, { duration: { value: 25, unit: 'min' } });
    expect(digest.notes).toEqual(['2026-01-14 08:00 +60 exercise 25 minutes [walking]']);
    expect(digest.issues).toEqual([]);
  });

  it('takes a value that only began for that moment and says so, and one over a stretch for none', () => {
    const glucose = (interval: object) =>
      point('blood-glucose', {
        blood_glucose: { value: 102, unit: 'mg/dL' },
        specimen_source: 'interstitial fluid',
        ...over(interval),
      });
    const digest = tell(
      JSON.stringify([
        glucose({ start_date_time: '2026-01-14T08:00:00+01:00' }),
        glucose({ start_date_time: '2026-01-14T08:05:00+01:00', duration: { value: 3, unit: 'h' } }),
        glucose({ end_date_time: '2026-01-14T08:10:00+01:00', duration: { value: 1, unit: 'h' } }),
      ]),
      {},
      'points.json',
    );
    expect(digest.readings).toHaveLength(1);
    expect(digest.issues.map((issue) => issue.replace(/ \d+$/, ''))).toEqual([
      'warning value-over-period',
      'warning value-over-period',
      'note interval-without-end',
    ]);
  });
});

// HL7 CGM guide 1.0.0: summaries carry the period they are about (effectivePeriod).
describe('results that another system made ready', () => {
  const summary = (effective: object) => ({
    resourceType: 'Observation',
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '97507-8' }] },
    subject: { reference: 'Patient/1' },
    valueQuantity: { value: 154, code: 'mg/dL', system: 'http://unitsofmeasure.org' },
    ...effective,
  });
  const notesOf = (...list: object[]) =>
    tell(
      JSON.stringify({ resourceType: 'Bundle', type: 'collection', entry: list.map((resource) => ({ resource })) }),
      {},
      'results.json',
    ).file.issues;
  it('tell the days they are about', () => {
    expect(
      notesOf(
        summary({ effectivePeriod: { start: '2026-01-08T00:00:00+01:00', end: '2026-01-21' } }),
        summary({ effectivePeriod: { start: '2026-01-01', end: '2026-01-14' } }),
      ),
    ).toMatchObject([{ code: 'results-only', actual: { is: 'days', from: '2026-01-01', to: '2026-01-21' } }]);
  });
  it('say where no days are given', () => {
    expect(notesOf(summary({}))).toMatchObject([{ code: 'results-only', actual: { is: 'no-period' } }]);
  });
});
