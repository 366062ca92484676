import type { Making } from './columns.ts';
import { type OpenRecord, timeText } from './openRecords.ts';
import type { TrueNote, TrueReading } from './truth.ts';

const LOINC = 'http://loinc.org';
const UCUM = 'http://unitsofmeasure.org';
const ATC = 'http://www.whocc.no/atc';
/** Readings in one series of samples. */
const SERIES = 24;

const code = (loinc: string): object => ({ coding: [{ system: LOINC, code: loinc }] });
const quantity = (value: number, unit: string): object => ({ value, unit, system: UCUM, code: unit });
const SENSOR = { 'mg/dL': '99504-3', 'mmol/L': '105272-9' } as const;
const FINGER = { 'mg/dL': '41653-7', 'mmol/L': '14743-9' } as const;

/** FHIR R4: Observations of a sensor (LOINC, UCUM) one by one or as SampledData, and what else a day holds. */
export function fhirRecords(making: Making): OpenRecord[] {
  const { truth, shape } = making;
  const middle = truth.readings[Math.floor(truth.readings.length / 2)]!.wall;
  const subject = (wall: number): object => {
    if (shape.person === 'none') return {};
    return { subject: { reference: `Patient/${shape.person.startsWith('two-') && wall > middle ? 'bo' : 'ada'}` } };
  };
  const records: (OpenRecord & { wall: number })[] = [];
  let count = 0;
  const add = (wall: number, json: object, more: Partial<OpenRecord> = {}): void => {
    const base = { id: `x${count++}`, ...subject(wall) };
    records.push({ wall, json: { ...json, ...base }, readings: [], notes: [], ...more });
  };
  const observation = (loinc: string, wall: number, more: object): object => ({
    resourceType: 'Observation',
    status: 'final',
    code: code(loinc),
    effectiveDateTime: timeText(making, wall),
    ...more,
  });
  const sampled = shape.recordForm === 'series' && evenly(truth.readings);
  if (sampled) for (let k = 0; k < truth.readings.length; k += SERIES) series(truth.readings.slice(k, k + SERIES));
  else for (const [k, reading] of truth.readings.entries()) single(reading, k);
  for (const note of truth.notes) noted(note);
  decoys();
  if (shape.notes === 'columns-zeros') rates();
  return records.sort((a, b) => a.wall - b.wall);

  function single(reading: TrueReading, k: number): void {
    const { wall, native, unit, limit, bound } = reading;
    const value =
      limit !== 0 && !bound
        ? { dataAbsentReason: { coding: [{ code: limit < 0 ? 'negative-infinity' : 'positive-infinity' }] } }
        : {
            valueQuantity: { ...quantity(native, unit), ...(limit === 0 ? {} : { comparator: limit < 0 ? '<' : '>' }) },
          };
    add(wall, observation(SENSOR[unit], wall, value), { readings: [reading] });
    if (shape.defect === 'no-value-words' && k % 150 === 40)
      add(
        wall + 60_000,
        observation(SENSOR[unit], wall + 60_000, { dataAbsentReason: { coding: [{ code: 'error' }] } }),
        {
          bad: true,
        },
      );
    if (shape.defect === 'sentinel' && k % 150 === 60)
      add(wall + 60_000, observation(SENSOR[unit], wall + 60_000, { valueQuantity: quantity(-1, unit) }), {
        bad: true,
      });
    if (shape.defect === 'clock-reset' && k % 150 === 90)
      add(
        wall + 60_000,
        { ...observation(SENSOR[unit], wall + 60_000, value), status: 'entered-in-error' },
        { bad: true },
      );
  }

  function series(readings: TrueReading[]): void {
    const [{ wall, unit }] = readings as [TrueReading];
    const step = readings.length > 1 ? readings[1]!.wall - wall : 300_000;
    const limits = { lowerLimit: unit === 'mg/dL' ? 40 : 22, upperLimit: unit === 'mg/dL' ? 400 : 222 };
    const factor = unit === 'mg/dL' ? 1 : 0.1;
    const data = readings.map(({ native, limit }) =>
      limit < 0 ? 'L' : limit > 0 ? 'U' : String(Math.round(native / factor)),
    );
    for (const reading of readings)
      if (reading.limit === 0) reading.native = Math.round(reading.native / factor) * factor;
    const valueSampledData = {
      origin: quantity(0, unit),
      period: step,
      factor,
      ...limits,
      dimensions: 1,
      data: data.join(' '),
    };
    const last = timeText(making, readings.at(-1)!.wall);
    const { effectiveDateTime, ...rest } = observation(SENSOR[unit], wall, { valueSampledData }) as Record<
      string,
      string
    >;
    add(wall, { ...rest, effectivePeriod: { start: effectiveDateTime, end: last } }, { readings });
  }

  function noted(note: TrueNote): void {
    const { wall, kind, word, amount, minutes, unit, words } = note;
    const own = { notes: [note] };
    const when = timeText(making, wall);
    const text = words.join(' ');
    if (kind === 'fingerstick')
      add(wall, observation(FINGER[unit as 'mg/dL'], wall, { valueQuantity: quantity(amount!, unit!) }), own);
    else if (kind === 'meal')
      add(wall, observation('9059-7', wall, { valueQuantity: quantity(amount!, 'g'), note: [{ text }] }), own);
    else if (kind === 'exercise') {
      const lasting = [{ code: code('55411-3'), valueQuantity: quantity(minutes!, 'min') }];
      add(wall, observation('73985-4', wall, { valueCodeableConcept: { text }, component: lasting }), own);
    } else if (kind === 'text') {
      const { code: _, ...rest } = observation('', wall, { valueString: text }) as Record<string, unknown>;
      add(wall, { ...rest, code: { text: 'Diary' } }, own);
    } else {
      const concept =
        kind === 'insulin'
          ? { coding: [{ system: ATC, code: word === 'long' ? 'A10AE' : 'A10AB' }], text: word }
          : { text };
      const dosage = amount === undefined ? {} : { dosage: { dose: quantity(amount, '[iU]') } };
      const common = { status: 'completed', medicationCodeableConcept: concept, effectiveDateTime: when };
      if (kind === 'insulin') add(wall, { resourceType: 'MedicationAdministration', ...common, ...dosage }, own);
      else add(wall, { resourceType: 'MedicationStatement', ...common }, own);
    }
  }

  /** Observations of other things: pulse, a laboratory's glucose, ketones, cholesterol. LOINC codes from memory. */
  function decoys(): void {
    const all: Record<string, [string, string, number]> = {
      pulse: ['8867-4', '/min', 72],
      ketones: ['53060-9', 'mmol/L', 0.4],
      cholesterol: ['2093-3', 'mg/dL', 180],
      target: ['2345-7', 'mg/dL', 110],
    };
    const found = all[shape.decoy];
    if (!found) return;
    const [loinc, unit, value] = found;
    truth.readings.forEach(({ wall }, k) => {
      if (k % 20 === 3) add(wall, observation(loinc, wall, { valueQuantity: quantity(value, unit) }));
    });
  }

  /** A pump's background, as a rate by a quantity and by a ratio: it is no dose. */
  function rates(): void {
    truth.readings.forEach(({ wall }, k) => {
      if (k % 36 !== 5) return;
      const value = 0.5 + (k % 5) / 10;
      const dosage =
        k % 72 === 5
          ? { rateQuantity: quantity(value, '[iU]/h') }
          : { rateRatio: { numerator: quantity(value, '[iU]'), denominator: quantity(1, 'h') } };
      const rate: TrueNote = { wall, kind: 'insulin-rate', word: 'long', amount: value, unit: 'IU/h', words: [] };
      const common = { resourceType: 'MedicationAdministration', status: 'completed', dosage };
      const concept = { medicationCodeableConcept: { coding: [{ system: ATC, code: 'A10AB' }] } };
      add(wall, { ...common, ...concept, effectiveDateTime: timeText(making, wall) }, { notes: [rate] });
    });
  }
}

/** Whether the steps of a series are all alike. */
function evenly(readings: TrueReading[]): boolean {
  const step = readings[1]!.wall - readings[0]!.wall;
  return readings.every(({ wall }, k) => k === 0 || wall - readings[k - 1]!.wall === step);
}
