import { fingerprint } from '../../bytes/hash.ts';
import { bytesOf, latin1 } from '../../bytes/text.ts';
import type { Input, ReadFile, RowFate } from '../../model/input.ts';
import type { Issue } from '../../model/issues.ts';
import { accountOf } from '../account.ts';
import { openBook } from '../book.ts';
import { longLine } from '../bounds.ts';
import { newEntries, strongest } from '../entries.ts';
import { meaning } from '../evidence/questions.ts';
import { glucoseUnit } from '../glucose/unit.ts';
import type { Hints } from '../hints.ts';
import type { CheckedSettings } from '../reading.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';
import { readDelimited } from './delimited.ts';
import { fitDelimiters } from './delimiter.ts';
import { decode } from './encoding.ts';
import { putBack } from './laidOut.ts';
import { withoutPlaces } from './layoutTables.ts';
import { cellText, fieldCount, locate, type Records, scanRecords } from './records.ts';
import { conceptsOf, tokens } from './vocabulary.ts';

/** Clock times a header must name before a table counts as one row a day, and days before it counts as one column a day. */
const FEWEST = 4;
const FEWEST_DAYS = 2;
/** A row that begins with a time of day. */
const CLOCK_FIRST = /[\r\n]\s*"?\d{1,2}[:.h]\d\d(?:[:.]\d\d)?"?\s*[,;\t|]/;
const CLOCKS = /(?:[,;\t|] *"?\d{1,2}[:.h]\d\d"? *){4,}/;

/** One row a day under clock times, or one column a day beside them. */
export function recogniseWide(head: Uint8Array): number {
  const mayBe = (text: string): boolean => CLOCKS.test(text) || CLOCK_FIRST.test(text);
  // Most texts have no such row, and then need not be decoded to say so. One with zero bytes may be of wider letters.
  if (!head.includes(0) && !mayBe(latin1(head.subarray(0, 8195)))) return 0;
  const decoded = decode(head.subarray(0, 16_384));
  if ('notText' in decoded) return 0;
  return mayBe(latin1(decoded.bytes.subarray(0, 8192))) && findHeader(decoded.bytes) ? 0.6 : 0;
}

/** The name of values that nothing in the file names. */
const UNNAMED = 'Value';

interface LaidOut {
  text: string;
  /** Physical line and record of the file for each line of the laid-out text, from 1. */
  line: number[];
  row: number[];
  records: Records;
}

interface Header {
  records: Records;
  /** The record of it, and its columns that are clock times, or days. */
  at: number;
  across: number[];
  days: boolean;
  /** Further rows below that name hours or days anew, each with those of its columns. */
  below: Map<number, number[]>;
  /** Something names it as glucose. */
  named: boolean;
  /** As words above or in it name it; empty: nowhere. */
  unit: string;
}

/** The header of such a table; undefined when it is none. */
function findHeader(bytes: Uint8Array): Header | undefined {
  const fit = fitDelimiters(bytes).fits[0];
  if (!fit) return undefined;
  const records = scanRecords(bytes, fit.delimiter);
  const stamp = newStamp();
  const span = { from: 0, to: 0 };
  const shapeAt = (row: number, column: number): number =>
    locate(records, row, column, span) ? readStamp(records.bytes, span.from, span.to, stamp) : -1;
  const across = (at: number): { clocks: number[]; days: number[] } => {
    const clocks: number[] = [];
    const days: number[] = [];
    for (let c = 1; c < fieldCount(records, at); c++) {
      const shape = shapeAt(at, c);
      if (shape === SHAPE.clock) clocks.push(c);
      else if (shape === SHAPE.day) days.push(c);
    }
    return { clocks, days };
  };
  const isNamed = (at: number): boolean => {
    const first = shapeAt(at, 0);
    return first !== SHAPE.clock && first !== SHAPE.stamp && first !== SHAPE.day;
  };
  const below = (from: number, of: 'clocks' | 'days'): Map<number, number[]> => {
    const found = new Map<number, number[]>();
    for (let at = from + 1; at < records.count; at++) {
      if (!isNamed(at)) continue;
      const columns = across(at)[of];
      if (columns.length > 0 && (of === 'days' || areHours(columns.map((c) => cellText(records, at, c)))))
        found.set(at, columns);
    }
    return found;
  };
  let words = '';
  for (let at = 0; at < Math.min(records.count, 50); at++) {
    const fields = fieldCount(records, at);
    const { clocks, days } = across(at);
    for (let c = 0; c < Math.min(fields, 20); c++)
      if (!clocks.includes(c) && !days.includes(c)) words += ` ${cellText(records, at, c)}`;
    const named = conceptsOf(tokens(words)).has('glucose') || unitIn(words) !== '';
    if (!isNamed(at)) continue;
    // A cell besides the days may hold a sum, but no other value.
    if (
      days.length >= FEWEST_DAYS &&
      days.length >= fields - 2 &&
      at + 1 < records.count &&
      shapeAt(at + 1, 0) === SHAPE.clock
    )
      return { records, at, across: days, below: below(at, 'days'), days: true, named, unit: unitIn(words) };
    if (clocks.length < FEWEST) continue;
    // Nothing says it is glucose: a table of steps or of meals looks just the same.
    if (!named) return undefined;
    return { records, at, across: clocks, below: below(at, 'clocks'), days: false, named, unit: unitIn(words) };
  }
  return undefined;
}

/** Hours that follow each other, at most once past midnight: means with two decimals, in a row of their own, do not. */
function areHours(cells: readonly string[]): boolean {
  if (cells.every((cell) => /[:h]/i.test(cell))) return true;
  const back = cells.filter(
    (cell, i) => i > 0 && Number(cell.replace(/\D/, '.')) <= Number(cells[i - 1]!.replace(/\D/, '.')),
  );
  return cells.length >= FEWEST && back.length < 2;
}

function unitIn(words: string): string {
  const found = /(mg\s?\/\s?dl|mmol\s?\/\s?l)/i.exec(words);
  return found ? (glucoseUnit(found[1]!) ?? '') : '';
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""').replace(/[\r\n]+/g, ' ')}"`;

/** The table with one value a row, so that it can be read like any other. */
function layOut({ records, at, across: first, below, days, named, unit }: Header): LaidOut {
  let across = first;
  let heads = across.map((c) => cellText(records, at, c));
  const value = named ? 'Glucose' : UNNAMED;
  let text = unit === '' ? `Date,Time,${value}` : `Date,Time,${value} (${unit})`;
  const line = [0, records.line[at]!];
  const row = [-1, at];
  for (let r = at + 1; r < records.count; r++) {
    const anew = below.get(r);
    if (anew) {
      across = anew;
      heads = across.map((c) => cellText(records, r, c));
      continue;
    }
    const first = cellText(records, r, 0);
    across.forEach((c, i) => {
      const value = cellText(records, r, c);
      if (value === '') return;
      const [date, time] = days ? [heads[i]!, first] : [first, heads[i]!];
      text += `\n${quoted(date)},${quoted(time)},${quoted(value)}`;
      line.push(records.line[r]!);
      row.push(r);
    });
  }
  return { text, line, row, records };
}

/** Reads a table of one row a day. A day's row keeps the strongest fate of its values. */
export function readWide(input: Input, settings: CheckedSettings, hints: Hints = {}): ReadFile {
  const decoded = decode(input.bytes);
  const header = 'notText' in decoded || longLine(decoded.bytes) > 0 ? undefined : findHeader(decoded.bytes);
  if (!header || 'notText' in decoded) return readDelimited(input, settings, hints);
  const laid = layOut(header);
  const unplaced = withoutPlaces(settings, !header.named);
  const open = !header.named && settings.layout?.meanings?.[UNNAMED] === undefined;
  const file = readDelimited({ name: input.name, bytes: bytesOf(laid.text) }, unplaced, hints);
  const fates = new Array<RowFate>(laid.records.count).fill('ignored');
  // The first record of the laid-out text is its header.
  file.fates.forEach((fate, i) => {
    const row = laid.row[i + 1];
    if (i > 0 && row !== undefined) fates[row] = strongest(fates[row]!, fate);
  });
  const own = new Set(['encoding', 'delimiter', 'header', 'columns']);
  const { layout: _, ...rest } = file;
  if (open && file.readings.count > 0) return askValues(input, file, laid, header);
  const restored = putBack(
    file,
    (line) => laid.line[line] ?? 1,
    (row) => laid.row[row + 1]!,
  );
  return {
    ...rest,
    ...restored,
    issues: [...restored.issues, ...unusedColumns(input.name, header)],
    kind: 'wide-table',
    hash: fingerprint(input.bytes),
    choices: [
      decoded.choice,
      { id: 'header', value: laid.line[1]!, by: 'file' },
      ...file.choices.filter(({ id }) => !own.has(id)),
    ],
    fates,
  };
}

/** Columns beside the hours or days, such as a sum or a remark, are no readings, and are told. */
function unusedColumns(name: string, { records, at, across }: Header): Issue[] {
  const book = openBook(name);
  const names = Array.from({ length: fieldCount(records, at) }, (_, c) =>
    c === 0 || across.includes(c) ? '' : cellText(records, at, c).trim(),
  ).filter((text) => text !== '');
  if (names.length > 0) book.add('columns-ignored', 'note', records.line[at]!, { actual: names, count: names.length });
  return book.list();
}

/** Values over days and hours that nothing names: whoever knows the file says what they are. */
function askValues(input: Input, { readings }: ReadFile, { records }: LaidOut, { at }: Header): ReadFile {
  const { count, native } = readings;
  const book = openBook(input.name);
  let [low, high] = [native[0]!, native[0]!];
  for (let i = 1; i < count; i++) {
    low = Math.min(low, native[i]!);
    high = Math.max(high, native[i]!);
  }
  book.add('column-like-glucose', 'refusal', records.line[at]!, {
    actual: UNNAMED,
    expected: { is: 'values-seen', count, low, high },
    question: meaning({ [UNNAMED]: 'sensor' }),
  });
  const entries = newEntries(records.count, 0);
  for (let r = at + 1; r < records.count; r++) entries.fate(r, 'set-aside');
  return accountOf(input, 'wide-table', { book, entries });
}
