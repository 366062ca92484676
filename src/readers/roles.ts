import type { Role } from '../schemas/layout.ts';
import type { Column } from './header.ts';
import { rowKind } from './kinds.ts';
import { cellText, type Records } from './records.ts';
import type { Table } from './tables.ts';

const SAMPLE = 500;

/** The column that tells rows apart by kind, when its words name kinds known here. */
export function kindColumn(records: Records, table: Table): Column | undefined {
  for (const column of table.columns) {
    if (column.role !== 'kind') continue;
    const step = Math.max(1, Math.floor((table.to - table.from) / SAMPLE));
    for (let r = table.from; r < table.to; r += step) {
      const text = cellText(records, r, column.index);
      if (text !== '' && rowKind(text)) return column;
    }
  }
  return undefined;
}

/** What a column called just "value" holds, from the columns beside it. */
export function resolveValue(columns: Column[], kinds: Column | undefined): Column[] {
  if (kinds) return columns;
  const has = (...roles: Role[]) => columns.some((column) => roles.includes(column.role));
  return columns.map((column) => {
    if (column.role !== 'value') return column;
    const role: Role = has('sensor', 'glucose')
      ? 'ignore'
      : has('insulin-name') && !has('insulin')
        ? 'insulin'
        : has('food', 'meal') && !has('carbohydrate')
          ? 'carbohydrate'
          : has('exercise') && !has('minutes')
            ? 'minutes'
            : has('insulin', 'carbohydrate', 'medication')
              ? 'ignore'
              : 'glucose';
    return { ...column, role };
  });
}

/** Of several columns of minutes, the time truly active says more than the length of the slot. */
export function resolveMinutes(columns: Column[]): Column[] {
  const minutes = columns.filter((column) => column.role === 'minutes');
  if (minutes.length < 2) return columns;
  const best = minutes.find((column) => /activ|moving/i.test(column.name)) ?? minutes[0];
  return columns.map((column) =>
    column.role === 'minutes' && column !== best ? { ...column, role: 'ignore' } : column,
  );
}
