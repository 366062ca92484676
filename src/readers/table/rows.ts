import type { NoteEntry } from '../../model/input.ts';
import type { Role } from '../../schemas/layout.ts';
import { CELL, unitOf } from '../glucose/glucoseCell.ts';
import { PLAUSIBLE } from '../glucose/unit.ts';
import { noteColumns, notesOfRow } from '../notes/rowNotes.ts';
import type { Reading } from '../reading.ts';
import { TIME_FAULT } from '../times/wall.ts';
import { tellGlucose, tellRow } from './faults.ts';
import type { Column } from './header.ts';
import { kindOfRow } from './kindOfRow.ts';
import { cellText, fieldCount, locate } from './records.ts';
import { rowFit } from './rowFit.ts';
import { placeOf, type SettledTable, type Yield } from './settled.ts';

const OWN_ROLES: Role[] = [
  'insulin',
  'insulin-rate',
  'carbohydrate',
  'medication',
  'medication-dose',
  'calibration',
  'alarm',
  'sensor-event',
];

/** By the code of the unit, so that no row looks a word up. */
const RANGES = [PLAUSIBLE['mg/dL'], PLAUSIBLE['mmol/L']];

/** Turns the rows of a settled table into readings, notes and fates; every row gets exactly one. */
export function readRows(reading: Reading, settled: SettledTable): void {
  const { records, book, entries } = reading;
  const { table, columns, kinds, walls, plan, glucose } = settled;
  const ofSides = new Set(settled.sides.flatMap((side) => [side.clock, ...side.columns]));
  const notable = noteColumns(columns.filter((column) => !ofSides.has(column)));
  const bare = new Set<Role>();
  const bareWords = new Set<string>();
  const span = { from: 0, to: 0 };
  const shared = columns.some(({ role }) => role === 'value');
  let rests = 0;
  let zeros = 0;
  const got: Yield = { entries: 0, faults: 0, rest: false, left: false, zero: false };
  for (let k = 0; k < table.to - table.from; k++) {
    const row = table.from + k;
    const line = records.line[row]!;
    const fault = walls.fault[k]!;
    const misfit = rowFit(records, row, columns.length, settled.unnamed);
    const bySide = settled.sides.length > 0 && !misfit && sidesOfRow(reading, settled, k);
    if (bySide && fault === TIME_FAULT.empty) continue;
    if (misfit || fault !== TIME_FAULT.none) {
      if (isBlank(reading, row, span)) continue;
      if (tellRow(book, records, row, k, line, misfit, fault, plan, reading.settings.today, columns))
        entries.fate(row, 'set-aside');
      continue;
    }
    got.entries = got.faults = 0;
    got.rest = got.left = got.zero = false;
    glucoseOfRow(reading, settled, k, got);
    const byKind =
      kinds !== undefined &&
      got.entries + got.faults === 0 &&
      !ownColumns(reading, row, columns, span) &&
      // Where each kind has columns of its own, those speak for a row whose word says nothing.
      (shared || kinds.of(cellText(records, row, kinds.column.index)) !== undefined);
    if (byKind) kindOfRow(reading, settled, k, kinds, bareWords, got);
    else if (notable.length > 0) {
      const result = notesOfRow(records, row, notable, columns, placeOf(reading, settled, k));
      for (const note of result.notes) entries.notes.push(note);
      for (const role of result.bare) bare.add(role);
      got.entries += result.notes.length;
      if (result.notes.length > 0) entries.fate(row, 'note');
      if (result.moment !== undefined) {
        book.add('value-turned-date', 'warning', line, { actual: result.moment });
        got.faults++;
      }
      if (result.rest) got.rest = true;
      if (result.zero) got.zero = true;
    }
    if (bySide && got.entries + got.faults === 0) continue;
    if (got.rest) rests++;
    // Words for nothing where the glucose stands are a reading that is missing, zeros beside it or not.
    const filler = got.zero && (byKind || !glucose.some(({ cells }) => locate(records, row, cells.column.index, span)));
    if (got.entries + got.faults === 0 && filler && !got.rest) zeros++;
    else if (got.entries === 0 && !got.rest && !got.left) {
      if (got.faults === 0) book.add('no-value', 'note', line);
      entries.fate(row, 'set-aside');
    }
  }
  if (zeros > 0) book.add('amount-zero', 'note', 0, { count: zeros });
  if (rests > 0) book.add('rest-not-exercise', 'note', 0, { count: rests });
  if (bare.size + bareWords.size > 0)
    book.add('unit-not-written', 'note', 0, {
      actual: [
        ...[...bare].map((role) => ({ is: 'role', role }) as const),
        ...[...bareWords].map((name) => ({ is: 'named', name }) as const),
      ],
      question: { of: 'layout', field: 'columns' },
    });
}

/** Notes of the tables to the right of a row, at their own times; whether there were any. */
function sidesOfRow(reading: Reading, { sides, table }: SettledTable, k: number): boolean {
  const { records, book, entries } = reading;
  const row = table.from + k;
  const span = { from: 0, to: 0 };
  let any = false;
  for (const { columns, walls, clock } of sides) {
    const first = columns.find(({ index }) => locate(records, row, index, span));
    if (!first) continue;
    any = true;
    if (walls.fault[k] !== TIME_FAULT.none) {
      const at = cellText(records, row, clock.index);
      book.add(at === '' ? 'no-time' : 'time-unreadable', 'warning', records.line[row]!, {
        actual: at === '' ? cellText(records, row, first.index) : at,
      });
      entries.fate(row, 'set-aside');
      continue;
    }
    const { notes } = notesOfRow(records, row, noteColumns(columns), columns, placeOf(reading, { table, walls }, k));
    for (const note of notes) entries.notes.push(note);
    if (notes.length > 0) entries.fate(row, 'note');
  }
  return any;
}

function isBlank({ records }: Reading, row: number, span: { from: number; to: number }): boolean {
  for (let c = fieldCount(records, row) - 1; c >= 0; c--) if (locate(records, row, c, span)) return false;
  return true;
}

/** In a table of kinds: whether the row fills a column made for one kind, and leaves the shared value alone. */
function ownColumns({ records }: Reading, row: number, columns: Column[], span: { from: number; to: number }): boolean {
  let own = false;
  for (const { role, index } of columns) {
    if (role === 'value' && locate(records, row, index, span)) return false;
    if (OWN_ROLES.includes(role) && locate(records, row, index, span)) own = true;
  }
  return own;
}

function glucoseOfRow(reading: Reading, settled: SettledTable, k: number, got: Yield): void {
  const { records, book, entries } = reading;
  const { walls, table } = settled;
  const row = table.from + k;
  const line = records.line[row]!;
  for (let g = 0; g < settled.glucose.length; g++) {
    const { cells, is } = settled.glucose[g]!;
    const state = cells.state[k]!;
    if (state === CELL.empty) continue;
    const unit = cells.unit[k]!;
    const native = cells.value[k]!;
    const range = RANGES[unit === 0 ? 0 : 1]!;
    if (cells.column.mixed && (state === CELL.text || state === CELL.unit)) {
      const text = cellText(records, row, cells.column.index);
      entries.notes.push({ ...placeOf(reading, settled, k), kind: 'text', text });
      entries.fate(row, 'note');
      got.entries++;
    } else if (state !== CELL.limit && (state !== CELL.number || native < range.low || native > range.high)) {
      tellGlucose(book, state, line, cellText(records, row, cells.column.index), unitOf(unit));
      got.faults++;
    } else if (is === 'fingerstick') {
      const note: NoteEntry = { ...placeOf(reading, settled, k), kind: 'fingerstick', unit: unitOf(unit) };
      if (state === CELL.number) note.amount = native;
      else note.text = cellText(records, row, cells.column.index);
      entries.notes.push(note);
      entries.fate(row, 'note');
      got.entries++;
    } else if (walls.dateOnly[k] === 1) {
      book.add('no-time-of-day', 'warning', line, { actual: cellText(records, row, cells.column.index) });
      got.faults++;
    } else {
      entries.reading(walls.wall[k]!, walls.offset[k]!, native, unit, cells.limit[k]!, line, row);
      got.entries++;
    }
  }
}
