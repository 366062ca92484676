import type { GlucoseUnit } from '../../model/glucose.ts';
import type { Column } from '../table/header.ts';
import { readNumber } from '../table/numbers.ts';
import { cellText, locate, type Records } from '../table/records.ts';
import { readOddCell } from './oddCells.ts';
import { glucoseUnit } from './unit.ts';

/** What a glucose cell holds. From `sentinel` on: why it cannot be used. */
export const CELL = {
  empty: 0,
  number: 1,
  limit: 2,
  sentinel: 3,
  negative: 4,
  date: 5,
  text: 6,
  unit: 7,
  amount: 8,
} as const;

/** Integers that devices store in place of a reading (IEEE 11073 special numbers, full registers, fillers). */
const SENTINELS = new Set([0, -1, 2046, 2047, 2048, 2049, 2050, 9999, 32767, 65535]);

/** One glucose column over the rows of a table. */
export interface GlucoseCells {
  column: Column;
  value: Float64Array;
  state: Uint8Array;
  limit: Int8Array;
  /** 0 mg/dL, 1 mmol/L, 2 = the column's. */
  unit: Uint8Array;
  /** 0 none, 1 dot, 2 comma; +4 when exactly three digits follow, so that it may part thousands. */
  mark: Uint8Array;
  filled: number;
}

export const unitCode = (unit: GlucoseUnit): number => (unit === 'mg/dL' ? 0 : 1);
export const unitOf = (code: number): GlucoseUnit => (code === 0 ? 'mg/dL' : 'mmol/L');

/** Parses a glucose column for the rows `from` to `to` (half open); `only` limits it to rows of one kind. */
export function readGlucoseCells(
  records: Records,
  from: number,
  to: number,
  column: Column,
  only?: (k: number) => boolean,
): GlucoseCells {
  const n = to - from;
  const cells: GlucoseCells = {
    column,
    value: new Float64Array(n).fill(Number.NaN),
    state: new Uint8Array(n),
    limit: new Int8Array(n),
    unit: new Uint8Array(n).fill(2),
    mark: new Uint8Array(n),
    filled: 0,
  };
  const look = { mark: 0, after: 0 };
  const span = { from: 0, to: 0 };
  const { value, state, mark } = cells;
  for (let k = 0; k < n; k++) {
    if ((only && !only(k)) || !locate(records, from + k, column.index, span)) continue;
    const number = readNumber(records.bytes, span.from, span.to, look);
    if (Number.isNaN(number)) {
      readOdd(cells, k, cellText(records, from + k, column.index));
      if (state[k] !== CELL.empty) cells.filled++;
      continue;
    }
    cells.filled++;
    value[k] = number;
    if (look.mark !== 0) mark[k] = (look.mark === 0x2e ? 1 : 2) | (look.after === 3 && number >= 1 ? 4 : 0);
    if (look.mark === 0 && SENTINELS.has(number)) state[k] = CELL.sentinel;
    else state[k] = number === 0 ? CELL.sentinel : number < 0 ? CELL.negative : CELL.number;
  }
  return cells;
}

function readOdd(cells: GlucoseCells, k: number, text: string): void {
  const odd = readOddCell(text);
  if (odd.is === 'number') {
    cells.value[k] = odd.value;
    if (odd.mark !== 0) cells.mark[k] = (odd.mark === 0x2e ? 1 : 2) | (odd.after === 3 && odd.value >= 1 ? 4 : 0);
    cells.state[k] = SENTINELS.has(odd.value) ? CELL.sentinel : odd.value < 0 ? CELL.negative : CELL.number;
    if (odd.unit) cells.unit[k] = unitCode(odd.unit);
  } else if (odd.is === 'limit') {
    cells.value[k] = odd.bound;
    cells.limit[k] = odd.limit;
    cells.state[k] = CELL.limit;
    if (odd.unit) cells.unit[k] = unitCode(odd.unit);
  } else cells.state[k] = odd.is === 'empty' ? CELL.empty : odd.is === 'date' ? CELL.date : CELL.text;
}

/** Takes each row's unit from a column of units; a word that is no glucose unit sets the row aside. */
export function applyUnitColumn(cells: GlucoseCells, records: Records, from: number, unitColumn: Column): void {
  let lastText = '';
  let lastUnit: GlucoseUnit | undefined;
  for (let k = 0; k < cells.state.length; k++) {
    if (cells.state[k] !== CELL.number && cells.state[k] !== CELL.limit) continue;
    const text = cellText(records, from + k, unitColumn.index);
    if (text === '') continue;
    if (text !== lastText) {
      lastText = text;
      lastUnit = glucoseUnit(text);
    }
    if (lastUnit) cells.unit[k] = unitCode(lastUnit);
    else cells.state[k] = CELL.unit;
  }
}
