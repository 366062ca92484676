import type { Role } from '../../schemas/layout.ts';
import type { Column } from './header.ts';
import { cellText, type Records } from './records.ts';
import type { Table } from './tables.ts';

const SAMPLE = 500;

/** A column called just "kind" that tells no rows apart belongs to the column on its left. */
function resolveKinds(columns: Column[], kinds: Column | undefined): Column[] {
  const taken = (role: Role) => columns.some((column) => column.role === role);
  return columns.map((column, i) => {
    if (column === kinds || column.role !== 'kind') return column;
    const left = columns[i - 1]?.role;
    if (left === 'insulin' && !taken('insulin-name')) return { ...column, role: 'insulin-name' };
    if (left === 'minutes' && !taken('exercise')) return { ...column, role: 'exercise' };
    if (left === 'carbohydrate' && !taken('food')) return { ...column, role: 'food' };
    return { ...column, role: 'ignore' };
  });
}

/** What a column called just "value" holds, from the columns beside it. */
function resolveValue(columns: Column[], kinds: Column | undefined): Column[] {
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

/** A column called just "dose" is insulin's only beside a column that names the insulin; it is never guessed. */
function resolveDose(columns: Column[]): Column[] {
  const has = (...roles: Role[]) => columns.some((column) => roles.includes(column.role));
  if (!has('insulin-name') || has('insulin', 'medication')) return columns;
  return columns.map((column) => {
    if (column.role === 'medication-dose') return { ...column, role: 'insulin' };
    // A column headed "Units" beside the name of an insulin holds its dose.
    if (column.role === 'unit' && !has('glucose', 'sensor', 'value', 'fingerstick'))
      return { ...column, role: 'insulin', unit: 'IU' };
    return column;
  });
}

/** Beside a column of glucose, one called just "sensor" says which sensor it was. */
function resolveSensor(columns: Column[]): Column[] {
  const others = columns.some(
    (column) => ['glucose', 'sensor'].includes(column.role) && !/^sensor$/i.test(column.name),
  );
  if (!others) return columns;
  return columns.map((column) =>
    /^sensor$/i.test(column.name) && !column.given ? { ...column, role: 'ignore' } : column,
  );
}

/** Of several columns of minutes, the time truly active says more than the length of the slot. */
function resolveMinutes(columns: Column[]): Column[] {
  const minutes = columns.filter((column) => column.role === 'minutes');
  if (minutes.length < 2) return columns;
  const best = minutes.find((column) => /activ|moving/i.test(column.name)) ?? minutes[0];
  return columns.map((column) =>
    column.role === 'minutes' && column !== best ? { ...column, role: 'ignore' } : column,
  );
}

const IDENTITY = /^(?:id|name|code|identifier|nombre|nom|nome|naam|namn|nimi|nazwa)$/i;

/**
 * Beside glucose, a column called just "id" or "name" whose few words come again and again tells persons apart. Two
 * people drawn as one line would be worse than a question too many.
 */
function resolvePersons(records: Records, table: Table, columns: Column[], kinds: Column | undefined): Column[] {
  const has = (...roles: Role[]) => columns.some((column) => roles.includes(column.role));
  if (!has('glucose', 'sensor', 'value') || has('person')) return columns;
  return columns.map((column) => {
    if (column.role !== 'ignore' || column.given || column === kinds || !IDENTITY.test(column.name)) return column;
    const step = Math.max(1, Math.floor((table.to - table.from) / SAMPLE));
    const seen = new Set<string>();
    let filled = 0;
    for (let r = table.from; r < table.to; r += step) {
      const text = cellText(records, r, column.index);
      if (text === '') continue;
      filled++;
      seen.add(text);
    }
    return filled >= 10 && seen.size * 5 <= filled ? { ...column, role: 'person' } : column;
  });
}

/** Every column with the meaning it takes from the columns beside it. */
export function resolveColumns(records: Records, table: Table, kinds: Column | undefined): Column[] {
  const columns = resolveSensor(resolvePersons(records, table, table.columns, kinds));
  const settled = resolveMinutes(resolveDose(resolveKinds(resolveValue(columns, kinds), kinds)));
  return settled.map((column) => (column.index === kinds?.index ? { ...column, role: 'kind' } : column));
}
