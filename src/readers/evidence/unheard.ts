import type { Column } from '../table/header.ts';
import { readNumber } from '../table/numbers.ts';
import { locate, type Records } from '../table/records.ts';
import type { Table } from '../table/tables.ts';
import { conceptsOf, tokens } from '../table/vocabulary.ts';
import type { Claimed } from './claim.ts';
import { curveOf, isSmooth } from './curve.ts';

/** Fewer numbers than this show no curve: two hours of five minutes (ours). */
const FEW = 24;
/** Where sensors measure, in mg/dL and in mmol/L (ours). */
const RANGES = [
  [30, 600],
  [1.5, 33.3],
] as const;

/** A column of numbers that nothing was made of although it runs as a sensor's does, and the spread of its numbers. */
export interface Unheard {
  column: Column;
  count: number;
  low: number;
  high: number;
}

/** Looks for such a column in a table in which no other holds readings: its name may be a word for glucose that is not known. */
export function unheardSensor(
  records: Records,
  table: Table,
  { columns, profiles, accounts }: Claimed,
  wall: Float64Array,
): Unheard | undefined {
  for (const [i, column] of columns.entries()) {
    if (column.role !== 'ignore' || column.given || column.foreign || column.unit !== undefined) continue;
    if (profiles[i]?.kind !== 'number' || accounts.has(column.index)) continue;
    if (conceptsOf(tokens(column.name)).size > 0) continue;
    const value = numbersOf(records, table, column);
    const curve = curveOf(value, wall);
    const { n, low, high } = curve;
    const fits = RANGES.some(([from, to]) => low >= from && high <= to);
    if (n >= FEW && fits && isSmooth(curve)) return { column, count: n, low, high };
  }
  return undefined;
}

function numbersOf(records: Records, { from, to }: Table, { index }: Column): Float64Array {
  const value = new Float64Array(to - from).fill(Number.NaN);
  const span = { from: 0, to: 0 };
  const look = { mark: 0, after: 0 };
  for (let r = from; r < to; r++)
    if (locate(records, r, index, span)) value[r - from] = readNumber(records.bytes, span.from, span.to, look);
  return value;
}
