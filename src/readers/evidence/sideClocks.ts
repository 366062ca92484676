import { NOTE_ROLES } from '../notes/rowNotes.ts';
import type { Reading } from '../reading.ts';
import type { Column } from '../table/header.ts';
import type { Table } from '../table/tables.ts';
import { conceptsOf, tokens } from '../table/vocabulary.ts';
import { SHAPE } from '../times/stamp.ts';
import { readTimeCells, type TimeCells, type TimePlan } from '../times/timeColumn.ts';
import { settleWalls, TIME_FAULT, type Walls } from '../times/wall.ts';
import type { Claimed } from './claim.ts';

/** A table that stands to the right of another one in the same rows: its columns, and the times that its own clock gives its rows. */
export interface Side {
  columns: Column[];
  clock: Column;
  walls: Walls;
}

/** Two forms of one time may differ by less. */
const ROUNDING = 60_000;
/** Columns of times that are looked at; no table needs more. */
const MOST = 6;

/**
 * Tables side by side: a column of whole times that go their own way, unlike the row's, is the clock of the notes behind it, up to the
 * next such column. Changes nothing where there is none.
 */
export function sideClocks(
  { records, settings, book }: Reading,
  table: Table,
  columns: readonly Column[],
  plan: TimePlan,
  rowWalls: Walls,
  { accounts, profiles }: Claimed,
): Side[] {
  const main = 'cells' in plan ? [plan.cells] : 'clock' in plan ? [plan.day, plan.clock] : [plan.day];
  const from = Math.max(...main.map(({ column }) => column.index));
  // A few times in thousands of rows may have missed the sample that described the column.
  const unknown = (column: Column, i: number): boolean => {
    const kind = profiles[i]?.kind;
    if (column.given) return false;
    return column.role === 'ignore'
      ? (kind === 'time' || kind === 'empty') && conceptsOf(tokens(column.name)).size === 0
      : kind === 'empty' && (column.role === 'food' || column.role === 'meal');
  };
  const mayBe = columns.filter((column, i) => {
    const why = accounts.get(column.index)?.why;
    const open = why === undefined || why === 'cells' || why === 'no-groups' || why === 'constant';
    return column.index > from && open && (column.role === 'time' || unknown(column, i));
  });
  const sides: Side[] = [];
  const found: { column: Column; walls: Walls }[] = [];
  for (const column of mayBe.slice(0, MOST)) {
    const cells = readTimeCells(records, table.from, table.to, column);
    const stamps = cells.counts[SHAPE.stamp]!;
    if (stamps === 0 || stamps < cells.counts[SHAPE.none]!) continue;
    const { dateOrder = rowWalls.order } = settings;
    const lineOf = (k: number): number => records.line[table.from + k]!;
    const own = { today: settings.today, ...(dateOrder ? { dateOrder } : {}) };
    const walls = settleWalls({ kind: 'one', cells }, lineOf, own, undefined, book, []);
    if (walls && goesItsOwnWay(cells, walls, rowWalls)) found.push({ column, walls });
  }
  for (const [i, { column, walls }] of found.entries()) {
    const next = found[i + 1]?.column.index ?? Number.POSITIVE_INFINITY;
    const behind = columns.filter(
      ({ index, role }) => index > column.index && index < next && SIDE_ROLES.includes(role),
    );
    if (behind.length > 0) sides.push({ columns: behind, clock: column, walls });
  }
  return sides;
}

const SIDE_ROLES: readonly string[] = [...NOTE_ROLES, 'insulin-name', 'intensity'];

/** Whether the times of a column are neither the row's nor a fixed way from it. */
function goesItsOwnWay({ shape }: TimeCells, own: Walls, row: Walls): boolean {
  let first = Number.NaN;
  let [alone, moved, together] = [0, 0, 0];
  for (let k = 0; k < shape.length; k++) {
    if (own.fault[k] !== TIME_FAULT.none) continue;
    if (row.fault[k] !== TIME_FAULT.none) {
      alone++;
      continue;
    }
    const distance = own.wall[k]! - row.wall[k]!;
    together++;
    if (Number.isNaN(first)) first = distance;
    if (Math.abs(distance - first) >= ROUNDING) moved++;
  }
  if (together === 0) return alone > 0;
  return together === 1 ? Math.abs(first) >= ROUNDING : moved > 0;
}
