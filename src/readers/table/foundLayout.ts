import { columnKeys, specOf } from './layoutTables.ts';
import type { Settled } from './readTable.ts';
import type { Records } from './records.ts';
import type { Table } from './tables.ts';

/** What was settled, as a layout that leads to the same entries without looking for anything. */
export function layoutOf(
  encoding: string,
  records: Records,
  settled: [Table, Settled][],
  zone: string | undefined,
): unknown {
  const tables = settled.map(([table, { columns, ...more }]) => {
    const keys = columnKeys(columns);
    const used = columns.filter((column) => column.role !== 'ignore');
    return {
      headerLine: table.header < 0 ? 0 : records.line[table.header]!,
      ...(table.from < records.count ? { firstLine: records.line[table.from]! } : {}),
      ...more,
      columns: Object.fromEntries(used.map((column) => [keys[column.index], specOf(column)])),
    };
  });
  const layout: Record<string, unknown> = { encoding, delimiter: String.fromCharCode(records.delimiter) };
  if (zone) layout.timezone = zone;
  if (tables.length === 1) return { ...layout, ...tables[0] };
  return { ...layout, tables };
}
