import { bytesOf } from '../../bytes/text.ts';
import type { NoteEntry, NoteKind, NotePlace } from '../../model/input.ts';
import type { Role } from '../../schemas/layout.ts';
import type { Column } from '../table/header.ts';
import { isMealRelation, isNo } from '../table/phrases.ts';
import { cellText, locate, type Records } from '../table/records.ts';
import { conceptsOf, tokens } from '../table/vocabulary.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';
import { readAmount, readMinutes, readNamedDose } from './amounts.ts';
import { isRest } from './kinds.ts';

/** Facts of one row beside its glucose. `rest`: it tells of sitting still, which is no exercise. */
export interface RowNotes {
  notes: NoteEntry[];
  rest: boolean;
  /** An amount of 0 stood there, which is no note. */
  zero: boolean;
  /** Roles whose amount stood there without any unit. */
  bare: Set<Role>;
  /** A whole time or a day where an amount should stand: a row of another table, or a number that a spreadsheet turned. */
  moment?: string;
}

/** What a column may hold beside glucose and times. */
export const NOTE_ROLES: Role[] = [
  'insulin',
  'insulin-rate',
  'carbohydrate',
  'nutrient',
  'food',
  'meal',
  'exercise',
  'minutes',
  'medication',
  'medication-dose',
  'note',
  'alarm',
  'calibration',
  'sensor-event',
];

/** Columns that many programs fill with "no" where nothing happened. */
const FLAG_ROLES: Role[] = ['food', 'meal', 'exercise', 'medication', 'alarm', 'calibration', 'sensor-event', 'note'];

/** The one unit these amounts may have; any other is kept as words, never as a dose. */
const UNITS: Partial<Record<Role, string>> = { insulin: 'IU', 'insulin-rate': 'IU/h', carbohydrate: 'g' };

/** Columns that can give notes; empty for a table of readings only, which then pays nothing for them. */
export function noteColumns(columns: Column[]): Column[] {
  return columns.filter((column) => NOTE_ROLES.includes(column.role));
}

/** Name by name: spread from several objects, notes took half a millisecond of a report to make and to copy onto their days. */
export function noteOf(at: NotePlace, kind: NoteKind, more: Partial<NoteEntry>): NoteEntry {
  const { wall, offset, timed, origin, row } = at;
  const note: NoteEntry = { wall, offset, timed, origin, row, kind };
  if (more.amount !== undefined) note.amount = more.amount;
  if (more.unit !== undefined) note.unit = more.unit;
  if (more.label !== undefined) note.label = more.label;
  if (more.minutes !== undefined) note.minutes = more.minutes;
  if (more.text !== undefined) note.text = more.text;
  return note;
}

/** Everything written down in a row, one entry a fact: a meal, each dose, exercise, medicine, alarm, words. */
export function notesOfRow(records: Records, row: number, columns: Column[], all: Column[], at: NotePlace): RowNotes {
  const notes: NoteEntry[] = [];
  const bare = new Set<Role>();
  const span = { from: 0, to: 0 };
  let rest = false;
  let zero = false;
  let moment: string | undefined;
  const filled = columns.filter(
    (column) =>
      locate(records, row, column.index, span) &&
      !(FLAG_ROLES.includes(column.role) && isNo(cellText(records, row, column.index))),
  );
  if (filled.length === 0) return { notes, rest, zero, bare };
  const text = (column: Column) => cellText(records, row, column.index);
  const first = (role: Role) => filled.find((column) => column.role === role);
  const further = (role: Role) => filled.filter((column) => column.role === role).slice(1);
  const textOfRole = (role: Role): string => {
    for (const column of all) {
      if (column.role !== role) continue;
      const found = cellText(records, row, column.index);
      if (found !== '') return found;
    }
    return '';
  };
  const push = (kind: NoteKind, more: Partial<NoteEntry>): void => {
    notes.push(noteOf(at, kind, more));
  };
  const amountOf = (column: Column): Partial<NoteEntry> => {
    const only = UNITS[column.role];
    const { amount, unit, text: raw } = readAmount(text(column), column.unit, only);
    if (amount === undefined || (only && unit && unit !== only)) return { text: unit ? `${raw} ${unit}` : raw };
    if (unit === undefined) bare.add(column.role);
    return unit === undefined ? { amount } : { amount, unit };
  };

  const nutrients = filled.filter((column) => column.role === 'nutrient' && !isZero(text(column)));
  const carbs = first('carbohydrate');
  const food = first('food');
  const meal = first('meal');
  if (carbs || food || meal || nutrients.length > 0) {
    const amount = carbs ? amountOf(carbs) : {};
    const eaten = food ? [food, ...further('food')].map(text).join(', ') : '';
    const label = (food ? eaten : meal ? text(meal) : '').replace(/\s*[\r\n]+\s*/g, ', ');
    // Of two columns of carbohydrate one may be the sum of the other: it is kept as words.
    const more = further('carbohydrate').filter((column) => !isZero(text(column)));
    const within = [...more, ...nutrients].map((column) => `${column.name} ${text(column)}`).join(', ');
    const words = [amount.text, food && meal ? text(meal) : '', within].filter(Boolean).join('; ');
    // A zero in a column that every row fills is a filler, not a meal.
    if (!carbs && within === '' && isMealRelation(label)) push('text', { text: label });
    else if (amount.amount !== 0 || label !== '' || within !== '') {
      push('meal', { ...amount, ...(label ? { label } : {}), ...(words ? { text: words } : {}) });
    } else zero = true;
  }
  for (const column of filled) {
    if (column.role === 'insulin') {
      const named = readNamedDose(text(column));
      const amount = named ? { amount: named.amount, unit: 'IU' } : amountOf(column);
      if (amount.text !== undefined && isMoment(amount.text)) {
        moment = amount.text;
        continue;
      }
      if (amount.amount === 0) {
        zero = true;
        continue;
      }
      const label = [column.label, named?.label, textOfRole('insulin-name')].filter(Boolean).join(' ');
      push('insulin', { ...amount, ...(label ? { label } : {}) });
    } else if (column.role === 'insulin-rate')
      push('insulin-rate', { ...amountOf(column), label: column.label ?? column.name });
    else if (column.role === 'note') push('text', { text: text(column) });
    else if (column.role === 'alarm') push('alarm', { label: text(column) });
    else if (column.role === 'sensor-event') push('sensor', { text: text(column) });
    else if (column.role === 'calibration') push('calibration', amountOf(column));
  }
  const medication = first('medication');
  const dose = first('medication-dose');
  if (medication || dose) {
    push('medication', { ...(dose ? amountOf(dose) : {}), ...(medication ? { label: text(medication) } : {}) });
  }
  for (const column of further('medication')) push('medication', { label: text(column) });
  const exercise = first('exercise');
  const lasting = first('minutes');
  if (exercise && isRest(text(exercise))) rest = true;
  else if (lasting && !exercise && !isOfExercise(lasting, all))
    push('text', { text: `${lasting.name}: ${text(lasting)}` });
  else if (exercise || lasting) {
    const minutes = lasting ? readMinutes(text(lasting), lasting.unit) : undefined;
    for (const column of further('exercise')) if (!isRest(text(column))) push('exercise', { label: text(column) });
    if (minutes !== 0 || exercise) {
      const words = [lasting && minutes === undefined ? text(lasting) : '', textOfRole('intensity')]
        .filter(Boolean)
        .join('; ');
      if (lasting && minutes === undefined) bare.add('minutes');
      push('exercise', {
        ...(exercise ? { label: text(exercise) } : lasting?.label ? { label: lasting.label } : {}),
        ...(minutes ? { minutes } : {}),
        ...(words ? { text: words } : {}),
      });
    }
  }
  return moment === undefined ? { notes, rest, zero, bare } : { notes, rest, zero, bare, moment };
}

function isMoment(text: string): boolean {
  const bytes = bytesOf(text);
  const shape = readStamp(bytes, 0, bytes.length, newStamp());
  return shape === SHAPE.stamp || shape === SHAPE.day;
}

/** Whether a column of lengths is about exercise: its name, a layout, or another column says so. */
function isOfExercise(lasting: Column, all: Column[]): boolean {
  if (lasting.label !== undefined || lasting.given) return true;
  const said = conceptsOf(tokens(lasting.name));
  if (said.has('exercise') || said.has('sport') || said.has('active')) return true;
  return all.some(({ role }) => role === 'exercise' || role === 'intensity');
}

/** Nothing of it, or a sign that stands for nothing. */
const isZero = (text: string): boolean => isNo(text) || /^0+(?:[.,]0+)?(?:\s*\p{L}+)?$/u.test(text);
