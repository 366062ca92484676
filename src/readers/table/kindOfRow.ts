import type { Kinds } from '../evidence/kinds.ts';
import { anyUnit } from '../glucose/unit.ts';
import { noteOfKind } from '../notes/kindRows.ts';
import type { Reading } from '../reading.ts';
import { cellText } from './records.ts';
import { placeOf, type SettledTable, type Yield } from './settled.ts';

/** The note of a row that tells by a word what it is. */
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
  const unitText = unitColumn ? cellText(records, row, unitColumn.index) : '';
  // A unit that nobody knows is kept as the file's word, so that no other is taken in its place.
  const unit = anyUnit(unitText) ?? (unitText === '' ? undefined : unitText);
  const result = noteOfKind(
    records,
    row,
    kind,
    word,
    lasting || value,
    lasting ? lasting.unit : unit,
    words.join('; '),
    placeOf(reading, settled, k),
  );
  if (result.bare) bare.add(word);
  if (result.rest) got.rest = true;
  if (result.zero) got.zero = true;
  if (!result.note) return;
  entries.notes.push(result.note);
  entries.fate(row, 'note');
  got.entries++;
}
