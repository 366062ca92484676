import type { ColumnAccount } from '../model/input.ts';
import type { Teller } from '../papers/teller.ts';
import { columnRows } from '../papers/understood.ts';

/** The ledger of columns as lines. */
export function columnLines(tell: Teller, columns: readonly ColumnAccount[]): string[] {
  const rows = columnRows(tell, columns);
  const widths = [0, 1].map((column) => rows.reduce((most, row) => Math.max(most, row[column]!.length), 0));
  return rows.map(([name, role, why]) => `${name.padEnd(widths[0]!)}  ${role.padEnd(widths[1]!)}  ${why}`.trimEnd());
}
