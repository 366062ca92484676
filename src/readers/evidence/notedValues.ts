import { CELL, type GlucoseCells } from '../glucose/glucoseCell.ts';
import { type RowKind, rowKind } from '../notes/kinds.ts';
import type { Column } from '../table/header.ts';
import { cellText, type Records } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import { bend, FAR_SHARE } from './groups.ts';
import { inTime } from './inTime.ts';

/** What a remark of nothing else says its number to be. */
const AMOUNTS: readonly (RowKind | undefined)[] = [
  'insulin',
  'insulin-rate',
  'meal',
  'nutrient',
  'exercise',
  'medication',
];
/** A remark of more words tells of something beside the reading. */
const MOST_WORDS = 3;

/**
 * Where a column of remarks says "carbs" or "insulin" and nothing else beside a number far off the readings around it, that number is an
 * amount: its cell is marked as none of glucose, and is told.
 */
export function leaveNotedAmounts(
  records: Records,
  table: Table,
  columns: readonly Column[],
  cells: GlucoseCells,
  wall: Float64Array,
): void {
  const remarks = columns.filter(({ role }) => role === 'note');
  if (remarks.length === 0) return;
  const saysAmount = (k: number): boolean =>
    remarks.some(({ index }) => {
      const text = cellText(records, table.from + k, index);
      return text !== '' && text.split(/\s+/).length <= MOST_WORDS && AMOUNTS.includes(rowKind(text));
    });
  const noted: number[] = [];
  cells.state.forEach((state, k) => {
    if (state === CELL.number && saysAmount(k)) noted.push(k);
  });
  if (noted.length === 0) return;
  const series = inTime(
    cells.value.map((value, k) => (cells.state[k] === CELL.number ? value : Number.NaN)),
    wall,
  );
  const place = new Map<number, number>();
  for (let i = 0; i < series.row.length; i++) place.set(series.row[i]!, i);
  for (const k of noted) {
    const i = place.get(k);
    if (i !== undefined && bend(series, i) > FAR_SHARE * series.value[i]!) cells.state[k] = CELL.amount;
  }
}
