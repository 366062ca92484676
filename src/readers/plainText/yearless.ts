import type { DateOrder } from '../../model/detail.ts';
import { fieldsIn } from '../table/evenRows.ts';
import { columnOf } from '../table/header.ts';
import { SHAPE } from '../times/stamp.ts';
import { linesIn, mapLines, quoted, shapeOf, stampOf } from './lines.ts';

const WHEN: readonly string[] = ['time', 'date'];
/** So many rows of the first must lack it (ours). */
const SHARE = 0.8;

const NUMBERS = /^(\d{1,2})([./-])(\d{1,2})\.?((?:[,\s]+\d.*)?)$/;
const DAY_NAME = /^(\d{1,2}\.?[\s/.-]*(?:de )?[\p{L}\p{M}'’׳]{3,12})\.?((?:[,\s]+\d.*)?)$/u;
const NAME_DAY = /^([\p{L}\p{M}'’׳]{3,12}\.?[\s/.-]*\d{1,2})((?:[,\s]+\d.*)?)$/u;

/** A date with the year in it; undefined for what is no date that lacks one. */
function withYear(cell: string, year: number): string | undefined {
  // A weekday in front says nothing more than the date does.
  const bare = cell.replace(/^[\p{L}\p{M}]{2,12}\.?,?\s+(?=\d)/u, '');
  return filledIn(cell, year) ?? (bare === cell ? undefined : filledIn(bare, year));
}

function filledIn(text: string, year: number): string | undefined {
  const numbers = NUMBERS.exec(text);
  const [, day = '', rest = ''] = DAY_NAME.exec(text) ?? NAME_DAY.exec(text) ?? [];
  const filled = numbers
    ? `${numbers[1]}${numbers[2]}${numbers[3]}${numbers[2]}${year}${numbers[4]}`
    : day === ''
      ? undefined
      : `${day} ${year}${rest}`;
  if (filled === undefined || shapeOf(text) === SHAPE.stamp || shapeOf(text) === SHAPE.day) return undefined;
  const shape = shapeOf(filled);
  return shape === SHAPE.stamp || shape === SHAPE.day ? filled : undefined;
}

export interface Yearless {
  line: number;
  at: number;
  /** The first such date, as written. */
  sample: string;
}

/** The column of a table whose dates say no year, by its first lines. */
export function yearlessDates(lines: readonly string[], delimiter: string): Yearless | undefined {
  for (let line = 0; line < lines.length; line++) {
    const cells = fieldsIn(lines[line]!, delimiter).map(bare);
    const at = cells.findIndex((cell, c) => WHEN.includes(columnOf(c, cell).role));
    if (cells.length < 2 || at < 0 || cells.some((cell) => /^\d/.test(cell))) continue;
    const filled = lines
      .slice(line + 1)
      .map((row) => bare(fieldsIn(row, delimiter)[at] ?? ''))
      .filter((cell) => cell !== '');
    const lacking = filled.filter((cell) => withYear(cell, 2000) !== undefined);
    if (lacking.length > 0 && lacking.length >= filled.length * SHARE) return { line, at, sample: lacking[0]! };
  }
  return undefined;
}

const bare = (cell: string): string => cell.trim().replace(/^"|"$/g, '').trim();

/** Months from which a step to the other end of the year is a new year and no gap (ours). */
const LATE = 10;
const EARLY = 3;

/** The text with a year in each date of such a column, and how often a new year began; `order`: only that of day and month would tell. */
export function yearedRows(
  bytes: Uint8Array,
  delimiter: string,
  { line: header, at }: Yearless,
  first: number,
  order: DateOrder | undefined,
): { bytes: Uint8Array; turns: number } | 'order' {
  const lines = linesIn(bytes);
  const cells = lines.map((line, i) => (i > header ? bare(fieldsIn(line, delimiter)[at] ?? '') : ''));
  const codes = cells.map((cell) => codeOf(withYear(cell, first)));
  const open = codes.filter((code) => code?.is === 'open');
  const orders = (['day-first', 'month-first'] as const).filter(
    (one) => (order ?? one) === one && open.every((code) => (one === 'day-first' ? code!.b : code!.a) <= 12),
  );
  const years = orders.map((one) => yearsOf(codes, one, first));
  const [settled] = years;
  if (!settled) return { bytes, turns: 0 };
  if (years.some((other) => other.some((year, i) => year !== settled[i]))) return 'order';
  const filled = mapLines(bytes, (text, i) => {
    if (!codes[i]) return text;
    const parts = fieldsIn(text, delimiter);
    parts[at] = quoted(withYear(cells[i]!, settled[i]!) ?? cells[i]!);
    return parts.join(delimiter);
  });
  return { bytes: filled, turns: new Set(settled).size - 1 };
}

type Code = { is: 'open' | 'certain'; a: number; b: number } | undefined;

/** The two numbers of an open date as written, or month and day of one that is certain. */
function codeOf(filled: string | undefined): Code {
  if (filled === undefined) return undefined;
  const { open, date } = stampOf(filled);
  return open
    ? { is: 'open', a: date >>> 21, b: (date >>> 14) & 127 }
    : { is: 'certain', a: (date >>> 5) & 15, b: date & 31 };
}

/** The year of each line, from that of the first on; rows may run forwards or backwards. */
function yearsOf(codes: readonly Code[], order: DateOrder, first: number): number[] {
  let year = first;
  let before = 0;
  return codes.map((code) => {
    if (!code) return year;
    const month = code.is === 'open' && order === 'day-first' ? code.b : code.a;
    if (before >= LATE && month <= EARLY) year++;
    else if (before > 0 && before <= EARLY && month >= LATE) year--;
    before = month;
    return year;
  });
}
