import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../time/calendar.ts';
import { otherUnit } from '../glucose/unit.ts';
import { fieldsIn } from '../table/evenRows.ts';
import { columnOf } from '../table/header.ts';
import { conceptsOf, tokens } from '../table/vocabulary.ts';
import { readWritten } from '../times/instant.ts';
import { SHAPE } from '../times/stamp.ts';
import { linesIn, mapLines, quoted, shapeOf } from './lines.ts';

const UNITS: Record<string, number> = { s: 1000, min: MINUTE_MS, h: HOUR_MS };
/** Rows that must count up before a column is taken for one that counts from a start (ours). */
const FEWEST = 3;
/** Longer than any sensor is worn on end (ours). */
const LONGEST = 400 * DAY_MS;
const OF_COUNTING = ['time', 'date', 'duration', 'start', 'instant'] as const;
const WHEN: readonly string[] = ['time', 'date', 'clock'];
const LINKS = /^(?:since|from|after|elapsed|relative|rel|t|seit|ab|desde|depuis|dal|sinds|fran|sedan)$/;

export interface Counted {
  /** Its header and cell. */
  line: number;
  at: number;
  name: string;
  unitMs: number;
  /** When the rows begin, and the line that says so. */
  start?: { text: string; line: number };
}

/** The unit in which a name counts time from a start: `minute`, `Time (min)`, `seconds since start`. */
function unitOfCount(name: string): number | undefined {
  const words = tokens(name);
  const ofCounting = (word: string): boolean => OF_COUNTING.some((is) => conceptsOf([word]).has(is));
  const known = words.every(
    (word) =>
      word.length < 3 ||
      LINKS.test(word) ||
      otherUnit(word) !== undefined ||
      ofCounting(word) ||
      // A word that nobody knows beside one for time says no other thing.
      (conceptsOf([word]).size === 0 && words.some(ofCounting)),
  );
  const { unit = words.map((word) => otherUnit(word)).find(Boolean) } = columnOf(0, name);
  // The word for an hour is that for a clock in many languages.
  const clock = unit === 'h' && words.every((word) => conceptsOf([word]).has('time'));
  return known && unit !== undefined && !clock ? UNITS[unit] : undefined;
}

/** The column of a table that counts time from a start, by its first lines, where no other column tells a time. */
export function countedTimes(lines: readonly string[], delimiter: string, today: string): Counted | undefined {
  for (let line = 0; line < lines.length; line++) {
    const cells = fieldsIn(lines[line]!, delimiter).map(bare);
    if (cells.length < 2) continue;
    const at = cells.findIndex((cell) => cell !== '' && unitOfCount(cell) !== undefined);
    if (at < 0 || cells.some((cell, c) => c !== at && WHEN.includes(columnOf(c, cell).role))) continue;
    const rows = lines
      .slice(line + 1)
      .map((row) => fieldsIn(row, delimiter).map(bare))
      .filter((row) => row.length > at && row[at] !== '');
    const numbers = rows.map((row) => numberOf(row[at]!));
    const rising = numbers.every((value, i) => value >= 0 && (i === 0 || value >= numbers[i - 1]!));
    const timed = rows.some((row) =>
      row.some(
        (cell, c) => c !== at && ([SHAPE.stamp, SHAPE.day] as number[]).includes(shapeOf(cell)) && !/^\d+$/.test(cell),
      ),
    );
    if (rows.length < FEWEST || !rising || timed || numbers.at(-1) === numbers[0]) continue;
    const start = startIn(lines.slice(0, line), delimiter, today);
    return { line, at, name: cells[at]!, unitMs: unitOfCount(cells[at]!)!, ...(start ? { start } : {}) };
  }
  return undefined;
}

const bare = (cell: string): string => cell.trim().replace(/^"|"$/g, '').trim();
const numberOf = (cell: string): number =>
  /^\d+(?:[.,]\d+)?$/.test(cell) ? Number(cell.replace(',', '.')) : Number.NaN;

/** The one line above the table that says when it starts, date and time of day; of two that say otherwise none is chosen. */
function startIn(lines: readonly string[], delimiter: string, today: string): Counted['start'] {
  let start: Counted['start'];
  for (const [line, text] of lines.entries()) {
    const found = /^(.*?[\p{L}\p{M}])["\s]*[:=,;\t|]["\s]*(.*?\d.*)$/u.exec(text.trim());
    if (!found || !tokens(found[1]!).some((word) => conceptsOf([word]).has('start'))) continue;
    const when = bare(found[2]!.replaceAll(delimiter, ' ').replaceAll('"', ' ')).replaceAll(/\s+/g, ' ');
    const written = readWritten(when, today);
    if (!written.ok || !written.timed) continue;
    if (start && start.text !== when) return undefined;
    start ??= { text: when, line: line + 1 };
  }
  return start;
}

/** The line of the text in which such a column counts back: another recording begins there, and nothing says when. */
export function countsBack(bytes: Uint8Array, delimiter: string, { line, at }: Counted): number | undefined {
  let before = 0;
  for (const [i, text] of linesIn(bytes).entries()) {
    if (i <= line) continue;
    const value = numberOf(bare(fieldsIn(text, delimiter)[at] ?? ''));
    if (value < before) return i + 1;
    if (!Number.isNaN(value)) before = value;
  }
  return undefined;
}

/** The text with a date and a time of day in each row of such a column. */
export function clockedRows(
  bytes: Uint8Array,
  delimiter: string,
  counted: Counted,
  start: string,
  today: string,
): Uint8Array {
  const written = readWritten(start, today);
  if (!written.ok) return bytes;
  const zone = /(?:Z|[+-]\d\d:?\d\d)$/.exec(start.trim())?.[0] ?? '';
  return mapLines(bytes, (text, i) => {
    if (i < counted.line) return text;
    const cells = fieldsIn(text, delimiter);
    const cell = bare(cells[counted.at] ?? '');
    if (i === counted.line) cells[counted.at] = 'Time';
    else {
      const ms = Math.round(numberOf(cell) * counted.unitMs);
      if (!(ms >= 0 && ms <= LONGEST)) return text;
      cells[counted.at] = quoted(`${new Date(written.wall + ms).toISOString().slice(0, 19)}${zone}`);
    }
    return cells.join(delimiter);
  });
}
