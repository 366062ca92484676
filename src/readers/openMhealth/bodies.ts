import type { GlucoseUnit } from '../../model/glucose.ts';
import type { NoteEntry } from '../../model/input.ts';
import type { IssueCode } from '../../model/issues.ts';
import { dateOf, MINUTE_MS } from '../../time/calendar.ts';
import { NO_OFFSET } from '../../time/offset.ts';
import type { IssueBook, More } from '../book.ts';
import type { Entries } from '../entries.ts';
import { glucoseUnit, implausible, otherUnit } from '../glucose/unit.ts';
import { type Json, numberIn, objectIn, textIn } from '../json/fields.ts';
import { minutesBetween, readWritten } from '../times/instant.ts';

/** One data point. */
export interface Point {
  header: Json;
  body: Json;
  line: number;
  row: number;
}

/** Shared while the points of one file are read. */
export interface Points {
  file: string;
  today: string;
  book: IssueBook;
  entries: Entries;
  persons: Set<string>;
  ignored: Map<string, number>;
  /** Glucose whose specimen is not told: kind settled by how often it comes. */
  unsure: { wall: number; offset: number; value: number; mmol: boolean; point: Pick<Point, 'line' | 'row'> }[];
  naive: number;
  /** Intervals without an end or a length. */
  endless: number;
  unit: GlucoseUnit | undefined;
  /** The first written unit that contradicts what the user said of the unit. */
  written: { unit: GlucoseUnit; line: number } | undefined;
}

function setAside<Code extends IssueCode>(all: Points, point: Point, code: Code, ...more: More<Code>): void {
  all.book.add(code, 'warning', point.line, ...more);
  all.entries.fate(point.row, 'set-aside');
}

const DAY_PARTS = new Set(['morning', 'afternoon', 'evening', 'night']);

const TO_MINUTES = new Map([
  ['sec', 1 / 60],
  ['min', 1],
  ['h', 60],
]);

/** Minutes of the duration that stands in an interval or a body. */
function minutesOf(holder: Json | undefined): number | undefined {
  const duration = objectIn(holder, 'duration');
  const value = numberIn(duration, 'value');
  const factor = TO_MINUTES.get(textIn(duration, 'unit'));
  return value === undefined || factor === undefined ? undefined : value * factor;
}

/** When it was: an instant, the start of an interval, or a day alone. Undefined after setting the point aside. */
function timeOf(all: Points, point: Point) {
  const frame = objectIn(point.body, 'effective_time_frame');
  const interval = objectIn(frame, 'time_interval');
  const end = textIn(interval, 'end_date_time');
  const length = minutesOf(interval);
  const start = textIn(frame, 'date_time') || textIn(interval, 'start_date_time') || textIn(interval, 'date');
  // An interval may be told by its end and its length (IEEE 1752.1, time interval).
  const text = start || (length === undefined ? '' : end);
  const read = readWritten(text, all.today);
  const at = read.ok && start === '' ? { ...read, wall: read.wall - length! * MINUTE_MS } : read;
  if (!at.ok) {
    setAside(all, point, at.code, { actual: text || textIn(interval, 'end_date_time') });
    return undefined;
  }
  // The schema's words: a time without an offset is UTC.
  if (at.timed && at.offset === NO_OFFSET) all.naive++;
  const offset = at.timed && at.offset === NO_OFFSET ? 0 : at.offset;
  const minutes = length ?? (start === '' || end === '' ? undefined : minutesBetween(text, end, all.today));
  const part = textIn(interval, 'part_of_day');
  if (textIn(interval, 'start_date_time') !== '' && (minutes ?? minutesOf(point.body)) === undefined) all.endless++;
  return {
    place: { wall: at.wall, offset, timed: at.timed, origin: { file: all.file, line: point.line }, row: point.row },
    minutes,
    part: DAY_PARTS.has(part) ? part : '',
  };
}

/** Adds a note and its row's fate. */
export function push(all: Points, note: NoteEntry): void {
  all.entries.notes.push(note);
  all.entries.fate(note.row, 'note');
}

/** A glucose data point: a reading, a finger stick, or set aside. */
export function glucose(all: Points, point: Point): void {
  const { body, header } = point;
  const statistic = textIn(body, 'descriptive_statistic');
  if (statistic !== '') {
    setAside(all, point, 'value-over-period', { actual: statistic });
    return;
  }
  const measured = objectIn(body, 'blood_glucose');
  const value = numberIn(measured, 'value');
  const unit = glucoseUnit(textIn(measured, 'unit'));
  if (value === undefined || !unit) {
    const actual = `${value ?? ''} ${textIn(measured, 'unit')}`.trim();
    setAside(all, point, value === undefined ? 'no-value' : 'value-unit-unknown', { actual });
    return;
  }
  if (all.unit && unit !== all.unit) all.written ??= { unit, line: point.line };
  const wrong = implausible(value, unit);
  if (wrong) {
    setAside(all, point, wrong.code, { actual: String(value), expected: wrong.expected });
    return;
  }
  const time = timeOf(all, point);
  if (!time) return;
  const { place } = time;
  const specimen = textIn(body, 'specimen_source') || textIn(body, 'blood_specimen_type');
  const provenance = objectIn(header, 'acquisition_provenance');
  const modality = textIn(header, 'modality') || textIn(provenance, 'modality');
  if (specimen === 'capillary blood' || (specimen !== 'interstitial fluid' && modality === 'self-reported')) {
    push(all, { ...place, kind: 'fingerstick', amount: value, unit });
  } else if (!place.timed) setAside(all, point, 'reading-without-clock', { actual: dateOf(place.wall) });
  else if (time.minutes !== undefined && time.minutes > 0)
    setAside(all, point, 'value-over-period', { actual: { is: 'minutes', minutes: time.minutes } });
  else if (specimen === 'interstitial fluid') {
    all.entries.reading(place.wall, place.offset, value, unit === 'mg/dL' ? 0 : 1, 0, point.line, point.row);
  } else if (specimen === '') {
    all.unsure.push({
      wall: place.wall,
      offset: place.offset,
      value,
      mmol: unit === 'mmol/L',
      point: { line: point.line, row: point.row },
    });
  } else setAside(all, point, 'specimen-not-sensor', { actual: specimen });
}

/** A bout of physical activity. */
export function activity(all: Points, point: Point): void {
  const time = timeOf(all, point);
  if (!time) return;
  const { body } = point;
  const minutes = minutesOf(body) ?? time.minutes;
  const label = textIn(body, 'activity_name');
  const text = [textIn(body, 'reported_activity_intensity'), time.part].filter((part) => part !== '').join('; ');
  push(all, {
    ...time.place,
    kind: 'exercise',
    ...(label === '' ? {} : { label }),
    ...(minutes === undefined ? {} : { minutes }),
    ...(text === '' ? {} : { text }),
  });
}

/** A single dose taken. */
export function dose(all: Points, point: Point): void {
  const time = timeOf(all, point);
  if (!time) return;
  const medication = objectIn(point.body, 'medication');
  const label = textIn(medication, 'generic_name') || textIn(medication, 'trade_name');
  const taken = objectIn(point.body, 'dose');
  const amount = numberIn(taken, 'value');
  const written = textIn(taken, 'unit');
  const insulin = /insul/i.test(label);
  const iu = /^(?:iu|u|unt|\[i?u\]|units?)$/i.test(written);
  const unit = insulin ? (iu ? 'IU' : undefined) : (otherUnit(written) ?? (written || undefined));
  push(all, {
    ...time.place,
    kind: insulin ? 'insulin' : 'medication',
    ...(label === '' ? {} : { label }),
    ...(amount !== undefined && unit
      ? { amount, unit }
      : amount === undefined
        ? {}
        : { text: `${amount} ${written}`.trim() }),
  });
}
