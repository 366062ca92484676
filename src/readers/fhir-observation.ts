import type { GlucoseUnit } from '../model/glucose.ts';
import type { NoteEntry } from '../model/input.ts';
import type { FhirReading } from './fhir.ts';
import type { Resource } from './fhir-bundle.ts';
import { codeName, observationKind } from './fhir-codes.ts';
import { exerciseOf } from './fhir-exercise.ts';
import { readSampled } from './fhir-sampled.ts';
import { readWritten, type WrittenTime } from './instant.ts';
import { type Json, listIn, numberIn, objectIn, textIn } from './json.ts';
import { glucoseUnit, PLAUSIBLE } from './unit.ts';

const USABLE = new Set(['final', 'amended', 'corrected', 'preliminary']);

/** A number of glucose with its side when it is only a limit. */
export interface GlucoseValue {
  value: number;
  unit: GlucoseUnit;
  limit: -1 | 0 | 1;
}

/** Reads an Observation: a reading, a finger stick, food, exercise, a diary note; else counted as ignored by its code. */
export function readObservation(reading: FhirReading, resource: Resource): void {
  const { body, row } = resource;
  const kind = observationKind(body.code);
  const status = textIn(body, 'status');
  const freeText = !kind && listIn(body.code, 'coding').length === 0 && textIn(body, 'valueString') !== '';
  if (kind === 'summary' || kind === 'laboratory' || (!kind && !freeText)) {
    reading.ignore(kind === 'summary' ? 'summary' : `Observation ${codeName(body.code)}`);
    return;
  }
  if (!USABLE.has(status)) {
    reading.setAside(resource, 'status-not-usable', status === '' ? 'no status' : status);
    return;
  }
  if (listIn(body, 'modifierExtension').length > 0) {
    reading.setAside(resource, 'meaning-modified', textIn(listIn(body, 'modifierExtension')[0], 'url'));
    return;
  }
  const at = timeOf(reading, body);
  if (!at.ok) {
    reading.setAside(resource, at.code, whenText(body));
    return;
  }
  const place = {
    wall: at.wall,
    offset: at.offset,
    timed: at.timed,
    origin: { file: reading.file, line: resource.line },
    row,
  };
  if (kind === 'sensor' || kind === 'body-fluid' || kind === 'fingerstick') {
    glucose(reading, resource, kind, place);
    return;
  }
  const text = listIn(body, 'note')
    .map((note) => textIn(note, 'text'))
    .find((words) => words !== '');
  if (kind === 'carbohydrate') {
    const quantity = objectIn(body, 'valueQuantity');
    const grams = inGrams(quantity);
    if (grams === undefined && !text) {
      reading.setAside(resource, 'no-value', '');
      return;
    }
    reading.note({
      ...place,
      kind: 'meal',
      ...(grams === undefined ? {} : { amount: grams, unit: 'g' }),
      ...(text ? { label: text } : {}),
    });
  } else if (kind === 'exercise' || kind === 'duration') {
    reading.note({ ...place, kind: 'exercise', ...exerciseOf(reading, body), ...(text ? { text } : {}) });
  } else reading.note({ ...place, kind: 'text', text: textIn(body, 'valueString') });
}

function whenText(body: Json): string {
  return (
    textIn(body, 'effectiveDateTime') ||
    textIn(body, 'effectiveInstant') ||
    textIn(objectIn(body, 'effectivePeriod'), 'start')
  );
}

/** The time of what was observed; issued and lastUpdated never stand in for it. */
export function timeOf(reading: FhirReading, body: Json): WrittenTime {
  for (const key of ['effectiveDateTime', 'effectiveInstant', 'effectivePeriod']) {
    for (const extension of listIn(objectIn(body, `_${key}`), 'extension')) {
      if (textIn(extension, 'url').endsWith('/StructureDefinition/tz-code')) {
        const zone = textIn(extension, 'valueCode');
        if (zone !== '') reading.zones.add(zone);
      }
    }
  }
  const at = readWritten(whenText(body), reading.today);
  if (at.ok && at.zone !== '') reading.zones.add(at.zone);
  return at;
}

function glucose(
  reading: FhirReading,
  resource: Resource,
  kind: 'sensor' | 'body-fluid' | 'fingerstick',
  place: Pick<NoteEntry, 'wall' | 'offset' | 'timed' | 'origin' | 'row'>,
): void {
  const { body } = resource;
  if (kind !== 'fingerstick' && !place.timed) {
    reading.setAside(resource, 'reading-without-clock', whenText(body));
    return;
  }
  const period = objectIn(body, 'effectivePeriod');
  if (
    kind !== 'fingerstick' &&
    period &&
    textIn(period, 'start') !== textIn(period, 'end') &&
    !objectIn(body, 'valueSampledData')
  ) {
    reading.setAside(resource, 'value-over-period', `${textIn(period, 'start')} ${textIn(period, 'end')}`);
    return;
  }
  const sampled = objectIn(body, 'valueSampledData');
  if (sampled && kind !== 'fingerstick') {
    readSampled(reading, resource, sampled, place.wall, place.offset);
    return;
  }
  const found = quantityOf(reading, body, resource.line);
  if ('fault' in found) {
    reading.setAside(resource, found.fault, found.actual);
    return;
  }
  const { low, high } = PLAUSIBLE[found.unit];
  if (found.limit === 0 && (found.value < low || found.value > high)) {
    reading.setAside(
      resource,
      found.value <= 0 ? 'sentinel-value' : 'value-impossible',
      String(found.value),
      `${low}-${high} ${found.unit}`,
    );
    return;
  }
  if (kind === 'fingerstick') {
    const amount =
      found.limit === 0 ? { amount: found.value } : { text: `${found.limit < 0 ? '<' : '>'}${found.value}` };
    reading.note({ ...place, kind: 'fingerstick', ...amount, unit: found.unit });
  } else reading.reading(resource, place.wall, place.offset, found, kind === 'body-fluid');
}

function quantityOf(reading: FhirReading, body: Json, line: number): GlucoseValue | { fault: string; actual: string } {
  const quantity = objectIn(body, 'valueQuantity');
  const value = numberIn(quantity, 'value');
  if (!quantity || value === undefined) return absentValue(reading, body);
  const written = textIn(quantity, 'code') || textIn(quantity, 'unit');
  const unit = glucoseUnit(written) ?? (written === '' ? reading.unit : undefined);
  if (!unit) return { fault: 'value-unit-unknown', actual: `${value} ${written}`.trim() };
  if (reading.unit && unit !== reading.unit && written !== '') reading.coded ??= { unit, line };
  const comparator = textIn(quantity, 'comparator');
  const side = comparator.startsWith('<') ? -1 : comparator.startsWith('>') ? 1 : offScale(body);
  return { value, unit, limit: side };
}

/** `<` and `>` of v3-ObservationInterpretation: off the scale. `L` and `H` are opinions and are passed over. */
function offScale(body: Json): -1 | 0 | 1 {
  for (const concept of listIn(body, 'interpretation')) {
    for (const coding of listIn(concept, 'coding')) {
      if (textIn(coding, 'code') === '<') return -1;
      if (textIn(coding, 'code') === '>') return 1;
    }
  }
  return 0;
}

function absentValue(reading: FhirReading, body: Json): GlucoseValue | { fault: string; actual: string } {
  const reason = objectIn(body, 'dataAbsentReason');
  const code = codeName(reason);
  const unit = reading.unit ?? 'mg/dL';
  if (code === 'negative-infinity') return { value: Number.NaN, unit, limit: -1 };
  if (code === 'positive-infinity') return { value: Number.NaN, unit, limit: 1 };
  const words = textIn(reason, 'text');
  return { fault: 'value-absent', actual: [code || 'no value', words].filter((part) => part !== '').join(': ') };
}

function inGrams(quantity: Json | undefined): number | undefined {
  const value = numberIn(quantity, 'value');
  const unit = textIn(quantity, 'code') || textIn(quantity, 'unit');
  if (value === undefined || value < 0) return undefined;
  return unit === 'g' ? value : unit === 'kg' ? value * 1000 : unit === 'mg' ? value / 1000 : undefined;
}
