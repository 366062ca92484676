import type { ColumnAccount } from '../../model/input.ts';
import type { Role, TableLayout } from '../../schemas/layout.ts';
import { readOddCell } from '../glucose/oddCells.ts';
import { isFoodUnit, isNutrient, isSugar } from '../notes/nutrients.ts';
import type { Column } from '../table/header.ts';
import { offsetOfLayout } from '../table/layoutTables.ts';
import { cellText, type Records } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import { plain, tokens } from '../table/vocabulary.ts';
import { type CellKind, describe, type Profile, sampleRows } from './describe.ts';
import { holdsOnlyNumbers } from './unreadAmounts.ts';

/** Columns after their names and their cells were both heard. */
export interface Claimed {
  columns: Column[];
  profiles: Profile[];
  /** What was settled already, by column. */
  accounts: Map<number, Omit<ColumnAccount, 'name' | 'role'>>;
  /** Columns whose own name says otherwise than a layout says of their place. */
  otherwise: Column[];
}

const NUMBERS: Role[] = ['sensor', 'glucose', 'fingerstick'];
const NO_NUMBER: CellKind[] = ['time', 'clock', 'half', 'mail', 'category', 'text'];
/** Fewer cells than this are told one by one. */
const FEW_CELLS = 10;
/** How far from world time a clock is, in a column without a name that says so. */
const OFFSET = /^[+\u2212-](?:0\d|1[0-4]):[0-5]\d$/;
const OPEN: Role[] = ['ignore', 'kind', 'note', 'unit', 'person', 'alarm'];
const OF_FOOD: Role[] = ['carbohydrate', 'food', 'meal'];
const EATEN: Role[] = ['food', 'meal'];

/** Hears the cells of each column beside its name: a claim that the cells cannot bear falls, and cells that speak for themselves are heard. */
export function claimColumns(records: Records, table: Table, layout: TableLayout | undefined): Claimed {
  const profiles = describe(
    records,
    table.from,
    table.to,
    table.columns.map(({ index }) => index),
  );
  const accounts: Claimed['accounts'] = new Map();
  const given = meantColumns(table.columns, layout);
  const food = foodIn(given);
  const columns = given.map((column, i) => {
    if (column.given) return column.role === 'mixed' ? { ...column, role: 'glucose' as const, mixed: true } : column;
    const profile = profiles[i]!;
    const cells: Cells = {
      onlyNumbers: () => holdsOnlyNumbers(records, table, profile),
      values: () => holdsValues(records, table, column.index),
    };
    const settled = heard(column, profile, given, food, cells);
    if (settled.why) {
      const { why, evidence } = settled;
      accounts.set(column.index, evidence === undefined ? { why } : { why, evidence });
    }
    return settled.column;
  });
  return { columns, profiles, accounts, otherwise: otherwiseNamed(table.columns, layout) };
}

/** Columns as a layout means them, where it speaks of them. A place speaks of a column that no name of its own tells apart. */
export function meantColumns(columns: Column[], layout: TableLayout | undefined): Column[] {
  if (!layout?.meanings) return columns;
  const bare = isBare(columns);
  return columns.map((column) => meant(column, layout, bare(column)));
}

function isBare(columns: readonly Column[]): (column: Column) => boolean {
  const names = new Map<string, number>();
  for (const { name } of columns) names.set(plain(name), (names.get(plain(name)) ?? 0) + 1);
  return ({ name }) => /^(?:#\d+)?$/.test(name) || names.get(plain(name))! > 1;
}

/** Columns whose own names say otherwise than a layout says of their places: those may be places of another file. */
function otherwiseNamed(columns: Column[], layout: TableLayout | undefined): Column[] {
  if (!layout?.meanings) return [];
  const bare = isBare(columns);
  return columns.filter((column) => {
    const said = layout.meanings?.[`#${column.index + 1}`];
    const role = typeof said === 'string' ? said : said?.role;
    return role !== undefined && role !== column.role && !bare(column);
  });
}

function meant(column: Column, layout: TableLayout, bare: boolean): Column {
  for (const [key, spec] of Object.entries(layout.meanings ?? {})) {
    const place = /^#(\d{1,4})$/.exec(key);
    if (place ? !bare || Number(place[1]) - 1 !== column.index : plain(key.trim()) !== plain(column.name)) continue;
    const {
      role,
      unit,
      label,
      ...more
    }: { role: Role; unit?: string; label?: string; utc?: boolean; offset?: string } =
      typeof spec === 'string' ? { role: spec } : (spec as { role: Role });
    const offset = offsetOfLayout(more);
    return {
      index: column.index,
      name: column.name,
      role,
      given: true,
      ...((unit ?? column.unit) ? { unit: unit ?? column.unit! } : {}),
      ...(label ? { label } : {}),
      ...(offset === undefined ? {} : { offset }),
    };
  }
  return column;
}

interface Heard {
  column: Column;
  why?: ColumnAccount['why'];
  evidence?: string;
}

/** What all cells of a column show, looked at where it matters. */
interface Cells {
  onlyNumbers(): boolean;
  values(): boolean;
}

function heard(column: Column, profile: Profile, all: Column[], food: Food, cells: Cells): Heard {
  const as = (role: Role, why: ColumnAccount['why'], evidence = profile.example): Heard => ({
    column: { ...column, role },
    why,
    evidence,
  });
  const { kind } = profile;
  if (OPEN.includes(column.role)) {
    if (kind === 'half' && column.role !== 'note') return as('half', 'cells');
    if (column.role === 'ignore' && OFFSET.test(profile.example) && !all.some(({ role }) => role === 'offset'))
      return as('offset', 'cells');
    if (kind === 'mail') return { ...as('person', 'cells'), column: { ...column, role: 'person', mark: 'mail' } };
    // Three kinds in three rows count up as well.
    if (kind === 'serial' && column.role !== 'note' && (column.role !== 'kind' || profile.cells >= FEW_CELLS))
      return as('ignore', 'serial');
  }
  if (isOfFood(column, profile, food)) return as('nutrient', 'name');
  if (EATEN.includes(column.role) && kind === 'time') return as('time', 'cells');
  // Numbers under "lunch" are grams, a dose, or glucose after it: nobody ate a number.
  if (EATEN.includes(column.role) && cells.onlyNumbers()) return as('ignore', 'numbers');
  // Words under no name at all are somebody's remarks.
  if (column.role === 'ignore' && kind === 'text' && /^(?:#\d+)?$/.test(column.name) && /\p{L}/u.test(profile.example))
    return as('note', 'cells');
  if (!NUMBERS.includes(column.role)) return { column };
  // Words, times and names under a header that promises glucose are none.
  const wordy = NO_NUMBER.includes(kind) && Number.isNaN(profile.low) && profile.cells >= FEW_CELLS;
  if (wordy && !cells.values()) return as('ignore', 'words');
  if (column.unit === '%') return as('ignore', 'other-quantity', column.unit);
  if ((column.foreign || column.maybe) && all.some(isSurely)) return as('ignore', 'other-quantity', column.unit);
  return { column };
}

/** Whether at least half of the cells that say anything are values, in whatever way they are written: the first one alone says little. */
function holdsValues(records: Records, { from, to }: Table, index: number): boolean {
  let [values, words] = [0, 0];
  for (const row of sampleRows(from, to)) {
    const { is } = readOddCell(cellText(records, row, index));
    if (is === 'number' || is === 'limit') values++;
    else if (is !== 'empty') words++;
  }
  return values > 0 && values >= words;
}

/** Glucose by its name, in a unit of it. */
const isSurely = ({ role, foreign, maybe }: Column): boolean =>
  (NUMBERS.includes(role) || role === 'value') && !foreign && !maybe;

/** How many columns of a table hold parts of food, and how many what was eaten. */
interface Food {
  nutrients: number;
  eaten: number;
}

const isPart = ({ name, role }: Column): boolean => role !== 'food' && isNutrient(name);
const isEaten = ({ role }: Column): boolean => OF_FOOD.includes(role);

/** Counted once: a table may have thousands of columns. */
const foodIn = (all: readonly Column[]): Food => ({
  nutrients: all.filter(isPart).length,
  eaten: all.filter(isEaten).length,
});

/** Protein, fat, fibre, energy beside food or beside each other; sugar among two of those is sugar in food. */
function isOfFood(column: Column, { low }: Profile, food: Food): boolean {
  if (!['ignore', 'glucose', 'food'].includes(column.role) || !isFoodUnit(column.unit) || Number.isNaN(low))
    return false;
  const besideNutrients = food.nutrients - Number(isPart(column));
  const eaten = food.eaten - Number(isEaten(column));
  if (isNutrient(column.name)) return besideNutrients + eaten > 0;
  const ofBlood = tokens(column.name).some((word) => /blood|blut|sangre|sang|sensor|gluc|glyk|glyc/.test(word));
  return isSugar(column.name) && !ofBlood && besideNutrients > 0 && besideNutrients + eaten > 1;
}
