import type { Choice, ChoiceId, ChoiceOf } from '../model/choices.ts';
import type { GlucoseUnit } from '../model/glucose.ts';
import type { ReadFile, ReadSettings } from '../model/input.ts';
import { DAY_MS } from '../time/calendar.ts';
import type { Deletions } from './fhir/deletions.ts';
import type { Resolve } from './fhir/reading.ts';
import type { OrderHint } from './times/columnOrder.ts';
import type { DaySpan } from './times/yearDays.ts';

/** What a person's other files tell about one that cannot tell by itself. */
export interface Hints {
  /** The date order all the others settled on. */
  order?: OrderHint;
  /** Days of others whose dates put the day between year and month. */
  yearDays?: DaySpan;
  /** The unit all the others are in, and a file that says so. */
  unit?: { unit: GlucoseUnit; evidence: string };
  /** A sensor's readings are in one of them. */
  sensor?: boolean;
  /** Persons, devices and medicines that stand in other files. */
  resolve?: Resolve;
  /** Codes of the Patients that stand in FHIR files. */
  patients?: Set<string>;
  /** FHIR records that one of the files takes back. */
  deleted?: Deletions;
}

/** So many readings in one file are a sensor's: two hours of five minutes (ours). */
const SENSOR = 24;

/** What all files agree on that could tell it by themselves. */
export function agreed(files: ReadFile[]): Hints {
  const order = common(files, 'date-order');
  const unit = common(files, 'unit');
  const { span: yearDays } = spanOf(files.filter(isYearDay));
  return {
    ...(yearDays ? { yearDays } : {}),
    ...(files.some(({ readings }) => readings.count >= SENSOR) ? { sensor: true } : {}),
    ...(order ? { order: { order: order.value, evidence: order.evidence, ...spanOf(files) } } : {}),
    ...(unit && unit.value !== 'both' ? { unit: { unit: unit.value, evidence: unit.evidence } } : {}),
  };
}

const isYearDay = ({ issues }: ReadFile): boolean => issues.some(({ code }) => code === 'dates-year-day');

/** The days on which readings and timed notes of files lie that could tell their order themselves. */
function spanOf(files: ReadFile[]): { span?: DaySpan } {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const add = (wall: number): void => {
    from = Math.min(from, wall);
    to = Math.max(to, wall);
  };
  for (const { readings, notes } of files) {
    for (let i = 0; i < readings.count; i++) add(readings.wall[i]!);
    for (const { wall } of notes) add(wall);
  }
  return from > to ? {} : { span: { from: Math.floor(from / DAY_MS), to: Math.floor(to / DAY_MS) } };
}

/** Whether a file was refused for something that the others tell. */
export function isOpen(file: ReadFile, hints: Hints): boolean {
  const few = file.choices.some(({ id, by, value }) => id === 'glucose-kind' && by === 'default' && value === 'sensor');
  if (few && hints.sensor) return true;
  if (hints.yearDays && !isYearDay(file)) return true;
  return file.issues.some(
    ({ code }) =>
      (code === 'column-like-glucose' && hints.sensor === true) ||
      (code === 'date-order-unclear' && hints.order !== undefined) ||
      (code === 'unit-unclear' && hints.unit !== undefined),
  );
}

/** Tells, of files that name no zone, that the one named by another file holds for them too. */
export function tellZone(files: ReadFile[], settings: ReadSettings): void {
  const named = files.filter(({ zone }) => zone !== undefined);
  const [first] = named;
  if (settings.zone !== undefined || !first || named.some(({ zone }) => zone !== first.zone)) return;
  for (const file of files) {
    if (file.zone === undefined && file.readings.count + file.notes.length > 0)
      file.choices.push({ id: 'zone', value: first.zone!, by: 'file', evidence: { is: 'named', name: first.name } });
  }
}

/** What all files that tell it themselves settled on, and the first that does. */
function common<Id extends ChoiceId>(
  files: ReadFile[],
  wanted: Id,
): { value: ChoiceOf<Id>['value']; evidence: string } | undefined {
  let found: { value: ChoiceOf<Id>['value']; evidence: string } | undefined;
  for (const file of files) {
    for (const choice of file.choices) {
      if (!isOf(choice, wanted) || choice.by !== 'file') continue;
      if (found && found.value !== choice.value) return undefined;
      found ??= { value: choice.value, evidence: file.name };
    }
  }
  return found;
}

const isOf = <Id extends ChoiceId>(choice: Choice, id: Id): choice is Extract<Choice, ChoiceOf<Id>> => choice.id === id;
