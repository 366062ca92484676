import type { FhirReading } from './fhir.ts';
import { codeName, conceptText, observationKind } from './fhir-codes.ts';
import { type Json, listIn, numberIn, objectIn, textIn } from './json.ts';

const TO_MINUTES: Record<string, number> = { min: 1, h: 60, s: 1 / 60 };

/** What was done, how long and how hard, from the value, the components, or the period. */
export function exerciseOf(reading: FhirReading, body: Json): { label?: string; minutes?: number; text?: string } {
  const out: { label?: string; minutes?: number; text?: string } = {};
  const label = conceptText(objectIn(body, 'valueCodeableConcept')) || textIn(body, 'valueString');
  if (label !== '') out.label = label;
  let minutes = minutesOf(objectIn(body, 'valueQuantity'));
  for (const component of listIn(body, 'component')) {
    const code = objectIn(component, 'code');
    const kind = observationKind(code);
    const words = conceptText(objectIn(component, 'valueCodeableConcept'));
    if (kind === 'duration') minutes = minutesOf(objectIn(component, 'valueQuantity')) ?? minutes;
    else if (kind === 'exercise' && words !== '') out.label = words;
    else if (codeName(code) === '74008-4' && words !== '') out.text = words;
  }
  minutes ??= reading.minutesOf(objectIn(body, 'effectivePeriod'));
  if (minutes !== undefined) out.minutes = minutes;
  return out;
}

function minutesOf(quantity: Json | undefined): number | undefined {
  const value = numberIn(quantity, 'value');
  const factor = TO_MINUTES[textIn(quantity, 'code') || textIn(quantity, 'unit')];
  return value === undefined || factor === undefined ? undefined : value * factor;
}
