import type { Layout, Role, TableLayout } from '../../schemas/layout.ts';
import { firstFrom } from '../../stats/sorted.ts';
import { MINUTE_MS } from '../../time/calendar.ts';
import { offsetText } from '../../time/offset.ts';
import { offsetNamed } from '../evidence/zoneWords.ts';
import type { CheckedSettings } from '../reading.ts';
import type { Column } from './header.ts';
import { widthFrom } from './nameless.ts';
import { cellText, fieldCount, type Records } from './records.ts';
import { findTables, MAX_COLUMNS, SAMPLE, type Table } from './tables.ts';
import { plain } from './vocabulary.ts';

/** A table with what a layout says about it. */
export interface LaidTable extends Table {
  layout: TableLayout;
}

const COMMA = 0x2c;

const recordAtLine = (records: Records, line: number): number => firstFrom(records.line, records.count, line);

function namesOf(records: Records, row: number): string[] {
  const names: string[] = [];
  for (let c = 0; c < Math.min(fieldCount(records, row), MAX_COLUMNS); c++) names.push(cellText(records, row, c));
  return names;
}

/** Columns of a header row under a layout; undefined when a column it names is not there. */
function columnsUnder(layout: TableLayout, names: string[]): Column[] | undefined {
  const columns: Column[] = names.map((name, index) => ({ index, name, role: 'ignore' }));
  for (const [key, spec] of Object.entries(layout.columns ?? {})) {
    const position = /^#(\d{1,4})$/.exec(key);
    const index = position
      ? Number(position[1]) - 1
      : names.findIndex((name) => name === key || plain(name.trim()) === plain(key.trim()));
    if (index < 0 || (!position && index >= names.length)) return undefined;
    const { role, ...more } = typeof spec === 'string' ? { role: spec } : spec;
    const column: Column = { index, name: names[index] || key, role, given: true };
    if ('unit' in more && more.unit) column.unit = more.unit;
    if ('label' in more && more.label) column.label = more.label;
    const offset = offsetOfLayout(more);
    if (offset !== undefined) column.offset = offset;
    while (columns.length <= index)
      columns.push({ index: columns.length, name: `#${columns.length + 1}`, role: 'ignore' });
    columns[index] = column;
  }
  return columns;
}

/** Tables as a layout describes them; undefined when it names columns that this file has not. */
export function layTables(records: Records, layout: Layout): LaidTable[] | undefined {
  const parts: TableLayout[] = layout.tables ?? [layout];
  if (!parts.some((part) => part.columns)) return undefined;
  const tables: LaidTable[] = [];
  for (const part of parts) {
    const header = headerRow(records, part);
    if (header === undefined) return undefined;
    const columns = columnsUnder(part, header < 0 ? [] : namesOf(records, header));
    if (!columns || (header < 0 && isNamedOtherwise(records, columns))) return undefined;
    const from = part.firstLine !== undefined ? recordAtLine(records, part.firstLine) : header + 1;
    if (header < 0) fillUp(columns, records, from);
    const before = tables[tables.length - 1];
    if (before) before.to = Math.min(before.to, header >= 0 ? header : from);
    tables.push({ header, from: Math.min(from, records.count), to: records.count, columns, layout: part });
  }
  return tables;
}

/** Roles whose readings and doses are told apart here. */
const GLUCOSE: Role[] = ['sensor', 'glucose', 'fingerstick', 'value', 'calibration'];

/**
 * Columns known by their places alone are those of another file where this one has names that say something else of them: a folder
 * may hold a log with names beside an export without.
 */
function isNamedOtherwise(records: Records, columns: readonly Column[]): boolean {
  const named = findTables(records)[0];
  if (!named) return false;
  return columns.some(({ index, role }) => {
    const own = named.columns[index]?.role ?? 'ignore';
    return role !== 'ignore' && own !== 'ignore' && role !== own && GLUCOSE.includes(role) !== GLUCOSE.includes(own);
  });
}

/**
 * A table without names is as wide as most of its rows, also where a layout speaks of fewer columns. One more of single digits may be
 * what a decimal comma parted off, and is left out so that it is asked for.
 */
function fillUp(columns: Column[], records: Records, from: number): void {
  const width = Math.min(widthFrom(records, from), MAX_COLUMNS);
  let digits = records.delimiter === COMMA;
  for (let r = from; digits && r < Math.min(records.count, from + SAMPLE); r++)
    digits = /^\d?$/.test(cellText(records, r, columns.length));
  if (digits && width === columns.length + 1) return;
  while (columns.length < width)
    columns.push({ index: columns.length, name: `#${columns.length + 1}`, role: 'ignore' });
}

/**
 * A table of a layout ends where a header stands that the layout does not speak of; what follows is read by its own names.
 * A header repeated, and places given for a whole file, end nothing.
 */
export function endAtHeaders(laid: LaidTable[], found: Table[]): Table[] {
  const namesAt = ({ columns }: Table): string => columns.map(({ name }) => plain(name)).join('\t');
  const known = new Set(found.slice(0, 1).map(namesAt));
  const taken = new Set(laid.map(({ header }) => header));
  const others = found.filter((table) => {
    const repeated = known.has(namesAt(table));
    known.add(namesAt(table));
    return (
      !repeated &&
      !taken.has(table.header) &&
      laid.some(({ from, to }) => from > 0 && from <= table.header && to > table.header)
    );
  });
  const all = [...laid, ...others].sort((a, b) => a.from - b.from);
  return all.map((table, i) => {
    const next = all[i + 1];
    return next ? { ...table, to: Math.min(table.to, next.header >= 0 ? next.header : next.from) } : table;
  });
}

function headerRow(records: Records, part: TableLayout): number | undefined {
  if (part.headerLine === 0) return -1;
  if (part.headerLine !== undefined) {
    const row = recordAtLine(records, part.headerLine);
    return row < records.count ? row : undefined;
  }
  const keys = Object.keys(part.columns ?? {});
  if (keys.every((key) => key.startsWith('#'))) return -1;
  // Names given without a line: the first row that holds all of them. Headers stand near the top.
  for (let r = 0; r < Math.min(records.count, 1000); r++) if (columnsUnder(part, namesOf(records, r))) return r;
  return undefined;
}

/** Of a layout, what still fits once a reader has laid its input out as a table of its own: meanings, no places. */
export function withoutPlaces(settings: CheckedSettings, named: boolean): CheckedSettings {
  const { layout, ...rest } = settings;
  if (!layout) return settings;
  const { unit, dateOrder, clock, decimalMark, serialDates, start, year, timezone, columns, meanings, kinds } = layout;
  const kept = {
    unit,
    dateOrder,
    clock,
    decimalMark,
    serialDates,
    start,
    year,
    timezone,
    kinds,
    units: layout.units,
    series: layout.series,
    ...(named ? { columns, meanings } : {}),
  };
  return { ...rest, layout: Object.fromEntries(Object.entries(kept).filter(([, value]) => value !== undefined)) };
}

/** Minutes from world time that a layout gives a column's times. */
export function offsetOfLayout({
  utc,
  offset,
}: {
  utc?: boolean | undefined;
  offset?: string | undefined;
}): number | undefined {
  return utc ? 0 : offset === undefined ? undefined : offsetNamed(`(${offset})`);
}

/** A column of the layout that reports what was settled. */
export function specOf(column: Column): NonNullable<TableLayout['columns']>[string] {
  const role = column.mixed ? 'mixed' : column.role;
  if (!column.unit && !column.label && column.offset === undefined) return role;
  return {
    role,
    ...(column.unit ? { unit: column.unit } : {}),
    ...(column.label ? { label: column.label.slice(0, 80) } : {}),
    ...(column.offset === 0 ? { utc: true } : {}),
    ...(column.offset ? { offset: offsetText(column.offset * MINUTE_MS) } : {}),
  };
}

/** Keys for columns: their names where these are unique, else their places. */
export function columnKeys(columns: Column[]): string[] {
  const seen = new Map<string, number>();
  for (const { name } of columns) seen.set(plain(name), (seen.get(plain(name)) ?? 0) + 1);
  return columns.map(({ name, index }) =>
    name !== '' && !name.startsWith('#') && seen.get(plain(name)) === 1 ? name : `#${index + 1}`,
  );
}
