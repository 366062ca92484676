import type { NoteEntry } from '../../model/input.ts';
import { otherUnit } from '../glucose/unit.ts';
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
  const remark = listIn(body, 'note')
    .map((one) => textIn(one, 'text'))
    .filter((words) => words !== '')
    .join(' ');
  const note: NoteEntry = {
    ...place,
    kind: insulin ? 'insulin' : 'medication',
    ...(label === '' ? {} : { label }),
  };
  if (notTaken) {
    // Never a dose, whatever amount stands beside it.
    reading.note({ ...note, text: said(status, remark) });
    return;
  }
  const minutes = reading.minutesOf(objectIn(body, 'effectivePeriod'));
  const rate = insulin ? rateOf(body) : undefined;
  if (rate) {
    reading.note({
      ...note,
      ...rate,
      ...worded(rate.text, remark),
      kind: 'insulin-rate',
      ...(minutes === undefined ? {} : { minutes }),
    });
    return;
  }
  const dose = doseOf(body, insulin);
  reading.note({ ...note, ...dose, ...worded(dose.text, remark), ...(minutes === undefined ? {} : { minutes }) });
}

const said = (...texts: string[]): string => texts.filter((text) => text !== '').join(' · ');

const worded = (own: string | undefined, remark: string): { text?: string } => {
  const text = said(own ?? '', remark);
  return text === '' ? {} : { text };
};

function medicationOf(reading: FhirReading, body: Json): Json | undefined {
  const own = objectIn(body, 'medicationCodeableConcept');
  if (own) return own;
  const reference = textIn(objectIn(body, 'medicationReference'), 'reference');
  return objectIn(reading.resolve(reference, body), 'code');
}

/** Background insulin: a rate without a dose beside it, an hour's amount where its units say so. */
function rateOf(body: Json): Pick<NoteEntry, 'amount' | 'unit' | 'text'> | undefined {
  const dosage = objectIn(body, 'dosage') ?? objectIn(listIn(body, 'dosage')[0]);
  const both = objectIn(listIn(dosage, 'doseAndRate')[0]);
  if (objectIn(dosage, 'dose') ?? objectIn(both, 'doseQuantity')) return undefined;
  const quantity = objectIn(dosage, 'rateQuantity') ?? objectIn(both, 'rateQuantity');
  const ratio = objectIn(dosage, 'rateRatio') ?? objectIn(both, 'rateRatio');
  if (quantity) {
    const [value, unit] = [numberIn(quantity, 'value'), textIn(quantity, 'code') || textIn(quantity, 'unit')];
    if (value === undefined) return undefined;
    return otherUnit(unit) === 'IU/h' ? { amount: value, unit: 'IU/h' } : { text: `${value} ${unit}`.trim() };
  }
  if (!ratio) return undefined;
  const [above, below] = [objectIn(ratio, 'numerator'), objectIn(ratio, 'denominator')];
  const [units, time] = [numberIn(above, 'value'), numberIn(below, 'value')];
  const word = textIn(below, 'code') || textIn(below, 'unit');
  const hours = word === 'h' ? time : word === 'min' ? (time ?? 0) / 60 : word === 'd' ? (time ?? 0) * 24 : undefined;
  if (units !== undefined && hours && hours > 0 && isInsulinUnit(above)) return { amount: units / hours, unit: 'IU/h' };
  return { text: `${units ?? '?'} ${textIn(above, 'unit') || textIn(above, 'code')} / ${time ?? '?'} ${word}`.trim() };
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
