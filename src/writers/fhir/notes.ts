import type { GlucoseUnit } from '../../model/glucose.ts';
import type { Note, Timeline } from '../../model/timeline.ts';
import { MINUTE_MS } from '../../time/calendar.ts';
import { type About, entryOf } from './about.ts';
import { ATC, DEVICE_NAME, LABORATORY, loinc, quantity, UCUM } from './codes.ts';
import { type Entry, type Resource, uuid } from './entries.ts';
import { effective, localTime } from './when.ts';

type Content = Record<string, unknown>;

/**
 * Every note that R4 has a place for and that has a time others can place (a day suffices where no hour was written): food, exercise,
 * insulin and its rates, medicines, finger sticks, sensor changes, remarks. Alarms and calibrations have none.
 */
export function noteEntries(about: About): Entry[] {
  const twins = new Map<string, number>();
  return about.analysis.timeline.notes.flatMap((note) => {
    const resource = resourceOf(about, note);
    if (!resource) return [];
    const { kind, at, timed, amount, unit, label, text, minutes } = note;
    const said = JSON.stringify([kind, at, timed, amount, unit, label, text, minutes]);
    // The same note written twice at one time is two notes.
    const twin = twins.get(said) ?? 0;
    twins.set(said, twin + 1);
    return [entryOf(about, uuid(about.person, 'note', said, twin), resource)];
  });
}

function resourceOf(about: About, note: Note): Resource | null {
  const { timeline } = about.analysis;
  const time = timeOf(timeline, note);
  if (time === null) return null;
  switch (note.kind) {
    case 'meal':
      return observed(about, note, time, loinc('9059-7', 'Carbohydrate intake Estimated'), food(note));
    case 'exercise':
      return observed(about, note, time, loinc('73985-4', 'Exercise activity'), exercise(note));
    case 'fingerstick':
      return stick(about, note, time);
    case 'text':
      return remark(about, note, time);
    case 'insulin':
    case 'insulin-rate':
    case 'medication':
      // Words without an amount may say that it was not taken: they go out as words, never as something given.
      return note.amount === undefined && note.text !== undefined
        ? remark(about, note, time)
        : taken(about, note, time);
    case 'sensor':
      return worn(about, note, time);
    case 'alarm':
    case 'calibration':
      return null;
  }
}

/** A day where no hour was written; null where nobody placed the clock. */
function timeOf(timeline: Timeline, { at, day, minute, timed }: Note): string | null {
  if (!timed) return timeline.days[day]!.date;
  return timeline.placed ? localTime(timeline, at, day, minute) : null;
}

/** Remarks, in order; nothing where there is none. */
const remarks = (...texts: (string | undefined)[]): Content => {
  const note = texts.filter((text) => text !== undefined && text !== '').map((text) => ({ text }));
  return note.length === 0 ? {} : { note };
};

/** None of a note that says nothing beyond its kind: an observation without a value or a remark says nothing. */
function observed(
  about: About,
  { timed }: Note,
  time: string,
  code: unknown,
  content: Content | null,
): Resource | null {
  if (content === null) return null;
  return {
    resourceType: 'Observation',
    status: 'final',
    code,
    subject: about.subject,
    ...(timed ? effective(about.analysis.timeline, time) : { effectiveDateTime: time }),
    ...content,
  };
}

const ucum = (value: number, unit: string, code: string): Content => ({ value, unit, system: UCUM, code });

function food({ amount, unit, label, text }: Note): Content | null {
  const inGrams = amount !== undefined && unit === 'g';
  const grams = inGrams ? { valueQuantity: ucum(amount, 'g', 'g') } : {};
  // What is counted otherwise stays in words.
  const other = amount === undefined || inGrams ? undefined : `${amount} ${unit ?? ''}`.trim();
  const content = { ...grams, ...remarks(label, text, other) };
  return Object.keys(content).length === 0 ? null : content;
}

function exercise({ label, minutes, text }: Note): Content | null {
  const content = {
    ...(label === undefined ? {} : { valueCodeableConcept: { text: label } }),
    ...remarks(text),
    ...(minutes === undefined
      ? {}
      : { component: [{ code: loinc('55411-3', 'Exercise duration'), valueQuantity: ucum(minutes, 'min', 'min') }] }),
  };
  return Object.keys(content).length === 0 ? null : content;
}

/** What was written, as words. */
function remark(about: About, note: Note, time: string): Resource | null {
  const said = [note.label, note.text].filter((part) => part !== undefined && part !== '').join(': ');
  return observed(about, note, time, { text: 'Diary note' }, said === '' ? null : { valueString: said });
}

/** A blood glucose value, by the code of its own unit. */
function stick(about: About, note: Note, time: string): Resource | null {
  const { amount } = note;
  const unit = note.unit as GlucoseUnit | undefined;
  if (amount === undefined || (unit !== 'mg/dL' && unit !== 'mmol/L')) return null;
  const code =
    unit === 'mg/dL'
      ? loinc('41653-7', 'Glucose [Mass/volume] in Capillary blood by Glucometer')
      : loinc('14743-9', 'Glucose [Moles/volume] in Capillary blood by Glucometer');
  return observed(about, note, time, code, { category: [LABORATORY], valueQuantity: quantity(amount, unit) });
}

/** What was taken, as it was written down. */
function taken(about: About, note: Note, time: string): Resource {
  const { kind, amount, unit, label, text, minutes, timed } = note;
  const insulin = kind !== 'medication';
  const concept = {
    ...(insulin ? { coding: [{ system: ATC, code: 'A10A', display: 'Insulins and analogues' }] } : {}),
    text: label ?? (insulin ? 'insulin' : 'medicine'),
  };
  const dose =
    amount === undefined
      ? undefined
      : kind === 'insulin-rate'
        ? { rateQuantity: ucum(amount, 'IU/h', '[iU]/h') }
        : { dose: insulin ? ucum(amount, 'IU', '[iU]') : { value: amount, ...(unit ? { unit } : {}) } };
  const lasting = timed && minutes !== undefined;
  return {
    resourceType: 'MedicationAdministration',
    status: 'completed',
    medicationCodeableConcept: concept,
    subject: about.subject,
    ...(lasting
      ? { effectivePeriod: { start: time, end: later(time, minutes) } }
      : timed
        ? effective(about.analysis.timeline, time)
        : { effectiveDateTime: time }),
    ...remarks(text),
    ...(dose ? { dosage: dose } : {}),
  };
}

/** So many minutes later, on the same clock. */
const later = (time: string, minutes: number): string =>
  new Date(Date.parse(`${time.slice(0, 19)}Z`) + minutes * MINUTE_MS).toISOString().slice(0, 19) + time.slice(19);

function worn(about: About, { label, text }: Note, time: string): Resource {
  const name = label ?? text;
  const named = name === undefined || name === '' ? {} : { deviceName: [{ name, type: DEVICE_NAME }] };
  return {
    resourceType: 'DeviceUseStatement',
    contained: [{ resourceType: 'Device', id: 'sensor', ...named }],
    status: 'completed',
    subject: about.subject,
    timingDateTime: time,
    device: { reference: '#sensor' },
  };
}
