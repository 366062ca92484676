import { type Json, listIn, numberIn, objectIn, textIn } from '../json/fields.ts';
import { codeName, isUsable, observationKind } from './codes.ts';
import { exerciseOf } from './exercise.ts';
import { count, type GlucoseKind, readGlucose } from './glucose.ts';
import { placeOf, whenText } from './place.ts';
import type { FhirReading, Resource } from './reading.ts';

/** Reads an Observation: a reading, a finger stick, food, exercise, a diary note; else counted as ignored by its code. */
export function readObservation(reading: FhirReading, resource: Resource): void {
  const { body } = resource;
  const kind = observationKind(body.code);
  const status = textIn(body, 'status');
  const panel = kind ? [] : listIn(body, 'component').filter((part) => glucoseKind(objectIn(part)));
  const freeText =
    panel.length === 0 && !kind && listIn(body.code, 'coding').length === 0 && textIn(body, 'valueString') !== '';
  if (kind === 'summary' || kind === 'laboratory' || (!kind && !freeText && panel.length === 0)) {
    if (kind === 'summary') reading.result(body);
    else reading.ignore(`Observation ${codeName(body.code)}`);
    return;
  }
  const place = placeOf(reading, resource, isUsable(status));
  if (!place) return;
  if (status === 'preliminary') count(reading, 'early-estimates');
  const own = glucoseKind(body);
  if (own || panel.length > 0) {
    const parts = listIn(body, 'component').map((part) => objectIn(part) ?? {});
    const hasValue = Object.keys(body).some((key) => key.startsWith('value') || key === 'dataAbsentReason');
    const inside = parts.filter((part) => glucoseKind(part));
    // A value in a component is a reading of its own.
    if (own && (hasValue || inside.length === 0)) readGlucose(reading, resource, body, own, place, whenText(body));
    for (const part of inside) readGlucose(reading, resource, part, glucoseKind(part)!, place, whenText(body));
    return;
  }
  if (reading.parts.has(body)) {
    reading.repeats(resource);
    return;
  }
  const [text, ...further] = listIn(body, 'note')
    .map((note) => textIn(note, 'text'))
    .filter((words) => words !== '');
  if (kind === 'carbohydrate') {
    const quantity = objectIn(body, 'valueQuantity');
    const grams = inGrams(quantity);
    if (grams === undefined && !text) {
      reading.setAside(resource, 'no-value');
      return;
    }
    reading.note({
      ...place,
      kind: 'meal',
      ...(grams === undefined ? {} : { amount: grams, unit: 'g' }),
      ...(text ? { label: text } : {}),
      ...(further.length > 0 ? { text: further.join(' ') } : {}),
    });
  } else if (kind === 'exercise' || kind === 'duration') {
    reading.note({
      ...place,
      kind: 'exercise',
      ...exerciseOf(reading, body),
      ...(text ? { text: [text, ...further].join(' ') } : {}),
    });
  } else reading.note({ ...place, kind: 'text', text: textIn(body, 'valueString') });
}

function glucoseKind(part: Json | undefined): GlucoseKind | undefined {
  const kind = observationKind(part?.code);
  return kind === 'sensor' || kind === 'body-fluid' || kind === 'fingerstick' ? kind : undefined;
}

function inGrams(quantity: Json | undefined): number | undefined {
  const value = numberIn(quantity, 'value');
  const unit = textIn(quantity, 'code') || textIn(quantity, 'unit');
  if (value === undefined || value < 0) return undefined;
  return unit === 'g' ? value : unit === 'kg' ? value * 1000 : unit === 'mg' ? value / 1000 : undefined;
}
