import { readNumber } from '../table/numbers.ts';
import { cellText, locate, type Records } from '../table/records.ts';
import { plain } from '../table/vocabulary.ts';
import { readStamp } from '../times/dates.ts';
import { halfOf } from '../times/halfWords.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';

/** What the cells of a column are, whatever its header says. */
export type CellKind =
  | 'empty'
  | 'constant'
  | 'serial'
  | 'time'
  | 'clock'
  | 'half'
  | 'mail'
  | 'number'
  | 'category'
  | 'text';

/** A column described from a sample of its cells. */
export interface Profile {
  index: number;
  /** Sampled cells that hold something, and their share of the rows. */
  cells: number;
  filled: number;
  /** Of those, numbers. */
  numbers: number;
  kind: CellKind;
  /** Different cells in the sample. */
  distinct: number;
  /** Of numbers. */
  low: number;
  high: number;
  /** Most digits behind the mark. */
  decimals: number;
  /** Share of the numbers that are whole mg/dL written in mmol/L (a grid of 1/18). */
  eighteenths: number;
  example: string;
}

/** Rows looked at; spread over the table, in pairs, so that neighbours are seen too. */
export const SAMPLE = 160;
/** More different words than this are text (ours). */
const MOST_WORDS = 24;

/** Describes columns from their cells alone: no word of any language is looked at. */
export function describe(records: Records, from: number, to: number, indices: number[]): Profile[] {
  const rows = sampleRows(from, to);
  return indices.map((index) => describeColumn(records, rows, index));
}

/** The rows that are looked at. */
export function sampleRows(from: number, to: number): number[] {
  const n = to - from;
  if (n <= SAMPLE) return Array.from({ length: Math.max(0, n) }, (_, i) => from + i);
  const step = n / (SAMPLE / 2);
  return Array.from({ length: SAMPLE }, (_, i) => from + Math.floor((i >> 1) * step) + (i & 1));
}

function describeColumn(records: Records, rows: number[], index: number): Profile {
  const span = { from: 0, to: 0 };
  const look = { mark: 0, after: 0 };
  const stamp = newStamp();
  const seen = new Set<string>();
  const found = { filled: 0, number: 0, time: 0, clock: 0, half: 0, mail: 0, grid: 0 };
  let [low, high, decimals, example] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, ''];
  let counts = true;
  let lastRow = -1;
  let lastValue = 0;
  for (const row of rows) {
    if (!locate(records, row, index, span)) continue;
    found.filled++;
    const text = cellText(records, row, index);
    if (example === '') example = text.slice(0, 40);
    if (seen.size <= SAMPLE) seen.add(text);
    const value = readNumber(records.bytes, span.from, span.to, look);
    const shape = readStamp(records.bytes, span.from, span.to, stamp);
    if (!Number.isNaN(value)) {
      found.number++;
      if (value < low) low = value;
      if (value > high) high = value;
      if (look.after > decimals) decimals = look.after;
      if (Math.abs(value * 18 - Math.round(value * 18)) < 0.02) found.grid++;
      // A serial number goes up by one a row, or down.
      if (lastRow >= 0 && Math.abs(value - lastValue) !== row - lastRow) counts = false;
      lastRow = row;
      lastValue = value;
      if (shape === SHAPE.seconds || shape === SHAPE.millis) found.time++;
    } else {
      counts = false;
      if (shape === SHAPE.clock) found.clock++;
      else if (shape !== SHAPE.none) found.time++;
      else if (halfOf(text) !== 0) found.half++;
      else if (/^[^\s@]+@[^\s@]+\.[a-z]{2,}$/.test(plain(text))) found.mail++;
    }
  }
  const most = (n: number): boolean => n > 0 && n >= found.filled * 0.8;
  const kind: CellKind =
    found.filled === 0
      ? 'empty'
      : most(found.mail)
        ? 'mail'
        : most(found.half)
          ? 'half'
          : most(found.clock)
            ? 'clock'
            : most(found.time)
              ? 'time'
              : seen.size === 1 && found.filled > 2
                ? 'constant'
                : most(found.number)
                  ? counts && found.filled > 2
                    ? 'serial'
                    : 'number'
                  : seen.size <= MOST_WORDS && seen.size * 2 <= found.filled
                    ? 'category'
                    : 'text';
  return {
    index,
    cells: found.filled,
    filled: rows.length === 0 ? 0 : found.filled / rows.length,
    numbers: found.number,
    kind,
    distinct: seen.size,
    low: found.number > 0 ? low : Number.NaN,
    high: found.number > 0 ? high : Number.NaN,
    decimals,
    eighteenths: found.number > 0 ? found.grid / found.number : 0,
    example,
  };
}
