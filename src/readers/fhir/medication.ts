import type { NoteEntry } from '../../model/input.ts';
import { type Json, listIn, numberIn, objectIn, textIn } from '../json/fields.ts';
import { conceptText, isInsulin, isInsulinUnit } from './codes.ts';
import { placeOf } from './place.ts';
import type { FhirReading, Resource } from './reading.ts';

const GIVEN = new Set(['completed', 'in-progress', 'stopped']);
const NOT_TAKEN = new Set(['not-done', 'not-taken']);

/** Reads a MedicationAdministration or MedicationStatement: a dose taken, or a note that it was not. */
export function readMedication(reading: FhirReading, resource: Resource): void {
  const { body } = resource;
  const statement = textIn(body, 'resourceType') === 'MedicationStatement';
  const status = textIn(body, 'status');
  if (statement && objectIn(body, 'effectivePeriod') && textIn(body, 'effectiveDateTime') === '') {
    // A statement over a period is a regimen, not an intake.
    reading.ignore('MedicationStatement over a period');
    return;
  }
  const notTaken = NOT_TAKEN.has(status);
  const place = placeOf(reading, resource, notTaken || GIVEN.has(status) || (statement && status === 'active'));
  if (!place) return;
  const concept = medicationOf(reading, body);
  const insulin = isInsulin(concept);
  const label = conceptText(concept);
  const note: NoteEntry = {
    ...place,
    kind: insulin ? 'insulin' : 'medication',
    ...(label === '' ? {} : { label }),
  };
  if (notTaken) {
    // Never a dose, whatever amount stands beside it.
    reading.note({ ...note, text: status });
    return;
  }
  const minutes = reading.minutesOf(objectIn(body, 'effectivePeriod'));
  reading.note({ ...note, ...doseOf(body, insulin), ...(minutes === undefined ? {} : { minutes }) });
}

function medicationOf(reading: FhirReading, body: Json): Json | undefined {
  const own = objectIn(body, 'medicationCodeableConcept');
  if (own) return own;
  const reference = textIn(objectIn(body, 'medicationReference'), 'reference');
  return objectIn(reading.resolve(reference, body), 'code');
}

/** The dose; of an insulin only in insulin units, anything else as words. */
function doseOf(body: Json, insulin: boolean): Pick<NoteEntry, 'amount' | 'unit' | 'text'> {
  const dosage = objectIn(body, 'dosage') ?? objectIn(listIn(body, 'dosage')[0]);
  const quantity = objectIn(dosage, 'dose') ?? objectIn(listIn(dosage, 'doseAndRate')[0], 'doseQuantity');
  const amount = numberIn(quantity, 'value');
  const unit = textIn(quantity, 'unit') || textIn(quantity, 'code');
  if (amount !== undefined && amount >= 0) {
    if (insulin) return isInsulinUnit(quantity) ? { amount, unit: 'IU' } : { text: `${amount} ${unit}`.trim() };
    return unit === '' ? { text: String(amount) } : { amount, unit };
  }
  const rate = objectIn(dosage, 'rateQuantity');
  const perHour = numberIn(rate, 'value');
  if (perHour !== undefined) return { text: `${perHour} ${textIn(rate, 'unit') || textIn(rate, 'code')}`.trim() };
  const words = textIn(dosage, 'text');
  return words === '' ? {} : { text: words };
}
