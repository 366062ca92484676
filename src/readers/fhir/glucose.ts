import type { GlucoseUnit } from '../../model/glucose.ts';
import type { NotePlace } from '../../model/input.ts';
import type { Tells } from '../../model/issues.ts';
import { glucoseUnit, implausible } from '../glucose/unit.ts';
import { type Json, listIn, numberIn, objectIn, textIn } from '../json/fields.ts';
import { codeName, unitOfCode } from './codes.ts';
import type { FhirReading, GlucoseValue, Often, Resource } from './reading.ts';
import { readSampled } from './sampled.ts';

export type GlucoseKind = 'sensor' | 'body-fluid' | 'fingerstick';

/** Reads one glucose value, of an Observation or of a component of one: a reading, a finger stick, or set aside. */
export function readGlucose(
  reading: FhirReading,
  resource: Resource,
  part: Json,
  kind: GlucoseKind,
  place: NotePlace,
  when: string,
): void {
  if (kind !== 'fingerstick' && !place.timed) {
    reading.setAside(resource, 'reading-without-clock', { actual: when });
    return;
  }
  const sampled = objectIn(part, 'valueSampledData');
  const period = objectIn(resource.body, 'effectivePeriod');
  const lasts = period !== undefined && textIn(period, 'start') !== textIn(period, 'end');
  if (kind !== 'fingerstick' && lasts && !sampled) {
    reading.setAside(resource, 'value-over-period', { actual: `${textIn(period, 'start')} ${textIn(period, 'end')}` });
    return;
  }
  if (sampled && kind !== 'fingerstick') {
    readSampled(reading, resource, sampled, place.wall, place.offset);
    return;
  }
  const found = foundIn(reading, part, resource.line);
  if ('absent' in found) {
    reading.setAside(resource, 'value-absent', { actual: found.absent });
    return;
  }
  if ('fault' in found) {
    reading.setAside(resource, found.fault, { actual: found.actual });
    return;
  }
  const wrong = found.limit === 0 ? implausible(found.value, found.unit) : undefined;
  if (wrong) {
    reading.setAside(resource, wrong.code, { actual: String(found.value), expected: wrong.expected });
    return;
  }
  if (kind !== 'fingerstick') {
    reading.reading(resource, place.wall, place.offset, found, kind === 'body-fluid');
    return;
  }
  const sign = found.limit < 0 ? '<' : '>';
  const amount = found.limit === 0 ? { amount: found.value } : { text: `${sign}${found.value}` };
  reading.note({ ...place, kind: 'fingerstick', ...amount, unit: found.unit });
}

type Found =
  | GlucoseValue
  | { fault: 'value-unit-unknown' | 'value-without-unit'; actual: string }
  | { absent: Tells<'value-absent'>['actual'] };

function foundIn(reading: FhirReading, part: Json, line: number): Found {
  const quantity = objectIn(part, 'valueQuantity');
  const value = numberIn(quantity, 'value') ?? bareNumber(part);
  if (value === undefined) return absent(reading, part);
  const code = textIn(quantity, 'code');
  const written = code || textIn(quantity, 'unit');
  if (written === '') return unitless(reading, value, line);
  const unit = glucoseUnit(written);
  if (!unit) return { fault: 'value-unit-unknown', actual: `${value} ${written}`.trim() };
  if (code === '') reading.byText = true;
  if (reading.unit && unit !== reading.unit) reading.coded ??= { unit, line };
  const meant = unitOfCode(part.code);
  // The unit decides the number, the code decides the kind.
  if (meant && meant !== unit) count(reading, 'unit-not-of-code');
  return { value, unit, limit: sideOf(part, textIn(quantity, 'comparator')) };
}

/** A number without a quantity: in a value of another type. */
function bareNumber(part: Json): number | undefined {
  const whole = numberIn(part, 'valueInteger');
  const text = textIn(part, 'valueString').trim();
  return whole ?? (/^\d{1,4}(?:\.\d{1,3})?$/.test(text) ? Number(text) : undefined);
}

/** Only the user can say the unit of a number that has none. */
function unitless(reading: FhirReading, value: number, line: number): Found {
  if (reading.unit) return { value, unit: reading.unit, limit: 0 };
  const { bare } = reading;
  if (bare.count++ === 0) bare.line = line;
  bare.low = Math.min(bare.low, value);
  bare.high = Math.max(bare.high, value);
  return { fault: 'value-without-unit', actual: String(value) };
}

function sideOf(part: Json, comparator: string): -1 | 0 | 1 {
  if (comparator.startsWith('<')) return -1;
  if (comparator.startsWith('>')) return 1;
  // `<` and `>` of v3-ObservationInterpretation: off the scale. `L` and `H` are opinions and are passed over.
  for (const concept of listIn(part, 'interpretation')) {
    for (const coding of listIn(concept, 'coding')) {
      if (textIn(coding, 'code') === '<') return -1;
      if (textIn(coding, 'code') === '>') return 1;
    }
  }
  return 0;
}

function absent(reading: FhirReading, part: Json): Found {
  const reason = objectIn(part, 'dataAbsentReason');
  const code = codeName(reason);
  const unit: GlucoseUnit = reading.unit ?? unitOfCode(part.code) ?? 'mg/dL';
  if (code === 'negative-infinity') return { value: Number.NaN, unit, limit: -1 };
  if (code === 'positive-infinity') return { value: Number.NaN, unit, limit: 1 };
  const note = code === 'as-text' ? textIn(listIn(part, 'note')[0], 'text') : '';
  const words = [code, textIn(reason, 'text'), note].filter((word) => word !== '');
  return { absent: words.length > 0 ? words.join(': ') : { is: 'no-reason' } };
}

export function count(reading: FhirReading, code: Often): void {
  reading.often.set(code, (reading.often.get(code) ?? 0) + 1);
}
