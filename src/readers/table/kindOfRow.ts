import type { NotePlace } from '../../model/input.ts';
import type { Kinds } from '../evidence/kinds.ts';
import { anyUnit } from '../glucose/unit.ts';
import { noteOfKind } from '../notes/kindRows.ts';
import type { Reading } from '../reading.ts';
import { cellText } from './records.ts';
import type { SettledTable, Yield } from './rows.ts';

/** Where and when the note of a row stands. */
export function placeOf(reading: Reading, { table, walls }: SettledTable, k: number): NotePlace {
  const row = table.from + k;
  return {
    wall: walls.wall[k]!,
    offset: walls.offset[k]!,
    timed: walls.timed && walls.dateOnly[k] === 0,
    origin: { file: reading.file, line: reading.records.line[row]! },
    row,
  };
}

/** Reads a row whose kind stands in a column of its own. */
export function kindOfRow(
  reading: Reading,
  settled: SettledTable,
  k: number,
  { column, of }: Kinds,
  bare: Set<string>,
  got: Yield,
): void {
  const { records, book, entries } = reading;
  const { columns } = settled;
  const row = settled.table.from + k;
  const word = cellText(records, row, column.index);
  const kind = of(word);
  if (kind === undefined) {
    if (word === '') return;
    book.add('kind-unknown', 'warning', records.line[row]!, { actual: word });
    got.faults++;
    return;
  }
  if (kind === 'ignore') {
    got.left = true;
    return;
  }
  if (kind === 'reading' || kind === 'glucose') return;
  const lasting = kind === 'exercise' && columns.find((column) => column.role === 'minutes');
  const value = columns.find((column) => ['value', 'glucose', 'sensor'].includes(column.role));
  const unitColumn = columns.find((column) => column.role === 'unit');
  const words = columns
    .filter((column) => ['note', 'food', 'meal', 'insulin-name', 'exercise', 'medication'].includes(column.role))
    .map((column) => cellText(records, row, column.index))
    .filter((text) => text !== '');
  const unit = unitColumn ? anyUnit(cellText(records, row, unitColumn.index)) : undefined;
  const told = noteOfKind(
    records,
    row,
    kind,
    word,
    lasting || value,
    lasting ? lasting.unit : unit,
    words.join('; '),
    placeOf(reading, settled, k),
  );
  if (told.bare) bare.add(word);
  if (told.rest) got.rest = true;
  if (!told.note) return;
  entries.notes.push(told.note);
  entries.fate(row, 'note');
  got.made++;
}
