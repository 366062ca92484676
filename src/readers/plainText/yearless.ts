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

/** Months from which a step to the other end of the year, against the way the rows run, is a new year (ours). */
const LATE = 10;
const EARLY = 3;
/** Days by which rows may stand out of order (ours). */
const OUT_OF_ORDER = 31;
/** Of `dayOfYear`. */
const YEAR = 12 * 31;

/**
 * The text with a year in each date of such a column; `order` where only that of day and month would tell, and the row from which on
 * nothing tells whether it is another year.
 */
export function yearedRows(
  bytes: Uint8Array,
  delimiter: string,
  { line: header, at }: Yearless,
  first: number,
  order: DateOrder | undefined,
): { bytes: Uint8Array } | { unclear: number } | 'order' {
  const lines = linesIn(bytes);
  const cells = lines.map((line, i) => (i > header ? bare(fieldsIn(line, delimiter)[at] ?? '') : ''));
  const codes = cells.map((cell) => codeOf(withYear(cell, first)));
  const open = codes.filter((code) => code?.is === 'open');
  const orders = (['day-first', 'month-first'] as const).filter(
    (one) => (order ?? one) === one && open.every((code) => (one === 'day-first' ? code!.b : code!.a) <= 12),
  );
  const years = orders.map((one) => yearsOf(codes, one, first));
  const [settled, other] = years;
  if (settled === undefined) return { bytes };
  if (typeof settled === 'number')
    return other === undefined || typeof other === 'number' ? { unclear: settled } : 'order';
  if (other !== undefined && (typeof other === 'number' || other.some((year, i) => year !== settled[i])))
    return 'order';
  const filled = mapLines(bytes, (text, i) => {
    if (!codes[i]) return text;
    const parts = fieldsIn(text, delimiter);
    parts[at] = quoted(withYear(cells[i]!, settled[i]!) ?? cells[i]!);
    return parts.join(delimiter);
  });
  return { bytes: filled };
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

/** The year of each line, from that of the first on, whichever way the rows run; the line from which on nothing tells it. */
function yearsOf(codes: readonly Code[], order: DateOrder, first: number): number[] | number {
  const days = codes.map((code) => (code ? dayOfYear(code, order) : undefined));
  const dated = days.filter((day) => day !== undefined);
  const way = Math.sign(dated.reduce((sum, day, i) => sum + wayOf(day - (dated[i - 1] ?? day)), 0));
  let year = first;
  let before = dated[0] ?? 0;
  const years: number[] = [];
  for (const [i, day] of days.entries()) {
    if (day !== undefined) {
      const [month, monthBefore] = [Math.floor(day / 31), Math.floor(before / 31)];
      const [late, early] = way < 0 ? [month, monthBefore] : [monthBefore, month];
      const back = (before - day) * way;
      if (back > 0 && late >= LATE && early <= EARLY) year += way;
      else if (back > OUT_OF_ORDER || (way === 0 && Math.abs(day - before) > OUT_OF_ORDER)) return i;
      before = day;
    }
    years.push(year);
  }
  return years;
}

/** Which way a step goes: from one end of the year to the other it leads over its turn, the other way round. */
const wayOf = (step: number): number => Math.sign(step) * (Math.abs(step) > YEAR - OUT_OF_ORDER ? -1 : 1);

/** Days in a year whose months all have 31. */
function dayOfYear({ is, a, b }: NonNullable<Code>, order: DateOrder): number {
  const [month, day] = is === 'open' && order === 'day-first' ? [b, a] : [a, b];
  return month * 31 + day - 1;
}
