import { fieldCount, locate, type Records } from './records.ts';
import type { Table } from './tables.ts';

/** A table whose header names one cell nothing, with what its rows show of that cell. */
export interface EvenTable {
  table: Table;
  /** Rows one cell short with something here have lost a cell before it: which number is which is not clear. */
  unnamed?: number;
}

/** So small a share of rows may be whole where all the others lack the cell (ours). */
const FEW = 0.05;

/**
 * A header with a cell that holds no name, over rows that are one cell short and would have something under it: the rows have no such
 * cell, and all behind it stand one place further left. Where most rows are whole, the short ones are told one by one.
 */
export function evenShortRows(records: Records, table: Table): EvenTable {
  const bare = table.columns.filter(({ name, given }) => name === '' && !given);
  const [column] = bare;
  if (table.header < 0 || bare.length !== 1 || !column) return { table };
  const width = table.columns.length;
  const span = { from: 0, to: 0 };
  let [full, short, lost] = [0, 0, 0];
  for (let row = table.from; row < table.to; row++) {
    const fields = fieldCount(records, row);
    if (fields !== width && fields !== width - 1) continue;
    const filled = locate(records, row, column.index, span);
    if (fields === width) {
      if (filled) return { table };
      full++;
    } else {
      short++;
      if (filled) lost++;
    }
  }
  if (lost === 0) return { table };
  if (full > short * FEW) return { table, unnamed: column.index };
  const columns = table.columns
    .filter((one) => one !== column)
    .map((one) => (one.index > column.index ? { ...one, index: one.index - 1 } : one));
  return { table: { ...table, columns } };
}
