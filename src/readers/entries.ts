import type { NoteEntry, ReadingColumns, RowFate } from '../model/input.ts';

const RANK: Record<RowFate, number> = { ignored: 0, 'set-aside': 1, duplicate: 2, note: 3, used: 4 };

export function strongest(a: RowFate, b: RowFate): RowFate {
  return RANK[b] > RANK[a] ? b : a;
}

/** Grows as rows are read; `readings()` cuts the columns to their length. */
export interface Entries {
  notes: NoteEntry[];
  fates: RowFate[];
  reading(wall: number, offset: number, native: number, unit: number, limit: number, line: number, row: number): void;
  /** Keeps the stronger of the two fates. */
  fate(row: number, fate: RowFate): void;
  readings(): ReadingColumns;
}

export function newEntries(rows: number, expected: number): Entries {
  let capacity = Math.max(16, expected);
  let count = 0;
  let columns = emptyColumns(capacity);
  const fates = new Array<RowFate>(rows).fill('ignored');
  return {
    notes: [],
    fates,
    reading(wall, offset, native, unit, limit, line, row) {
      if (count === capacity) {
        capacity *= 2;
        columns = cut(columns, count, capacity);
      }
      columns.wall[count] = wall;
      columns.offset[count] = offset;
      columns.native[count] = native;
      columns.unit[count] = unit;
      columns.limit[count] = limit;
      columns.line[count] = line;
      columns.row[count] = row;
      count++;
      fates[row] = 'used';
    },
    fate(row, fate) {
      fates[row] = strongest(fates[row]!, fate);
    },
    // Columns that are nearly full are lent, not copied.
    readings: () => (count * 8 > capacity * 7 ? lent(columns, count) : cut(columns, count, count)),
  };
}

function emptyColumns(capacity: number): ReadingColumns {
  return {
    count: 0,
    wall: new Float64Array(capacity),
    offset: new Int16Array(capacity),
    native: new Float64Array(capacity),
    unit: new Uint8Array(capacity),
    limit: new Int8Array(capacity),
    line: new Int32Array(capacity),
    row: new Int32Array(capacity),
  };
}

function lent(columns: ReadingColumns, count: number): ReadingColumns {
  return {
    count,
    wall: columns.wall.subarray(0, count),
    offset: columns.offset.subarray(0, count),
    native: columns.native.subarray(0, count),
    unit: columns.unit.subarray(0, count),
    limit: columns.limit.subarray(0, count),
    line: columns.line.subarray(0, count),
    row: columns.row.subarray(0, count),
  };
}

function cut(from: ReadingColumns, count: number, capacity: number): ReadingColumns {
  const to = emptyColumns(capacity);
  const part = lent(from, count);
  to.count = count;
  to.wall.set(part.wall);
  to.offset.set(part.offset);
  to.native.set(part.native);
  to.unit.set(part.unit);
  to.limit.set(part.limit);
  to.line.set(part.line);
  to.row.set(part.row);
  return to;
}
