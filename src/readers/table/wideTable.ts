import { fingerprint } from '../../bytes/hash.ts';
import { bytesOf, latin1 } from '../../bytes/text.ts';
import type { Input, ReadFile, RowFate } from '../../model/input.ts';
import type { Issue } from '../../model/issues.ts';
import { accountOf } from '../account.ts';
import { openBook } from '../book.ts';
import { longLine } from '../bounds.ts';
import { newEntries, strongest } from '../entries.ts';
import { unusedColumns } from '../evidence/ledger.ts';
import { meaning } from '../evidence/questions.ts';
import type { Hints } from '../hints.ts';
import type { CheckedSettings } from '../reading.ts';
import { readDelimited } from './delimited.ts';
import { decode } from './encoding.ts';
import { putBack } from './laidOut.ts';
import { withoutPlaces } from './layoutTables.ts';
import { cellText, fieldCount, type Records } from './records.ts';
import { findHeader, type Header } from './wideHeader.ts';

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
  const others = columnsBeside(header);
  return {
    ...rest,
    ...restored,
    issues: [...restored.issues, ...unusedIssues(input.name, header, others)],
    // The laid-out columns have names of ours: cells told what they are.
    columns: [
      ...(file.columns ?? []).map((column) => (column.why === 'name' ? { ...column, why: 'cells' as const } : column)),
      ...unusedColumns(header.records, { from: header.at + 1, to: header.records.count }, others),
    ],
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

/** Columns beside the hours or days, such as a sum or a remark: no readings. */
function columnsBeside({ records, at, across }: Header): { index: number; name: string }[] {
  return Array.from({ length: fieldCount(records, at) }, (_, index) => ({
    index,
    name: index === 0 || across.includes(index) ? '' : cellText(records, at, index).trim(),
  })).filter(({ name }) => name !== '');
}

function unusedIssues(name: string, { records, at }: Header, others: readonly { name: string }[]): Issue[] {
  const book = openBook(name);
  if (others.length > 0)
    book.add('columns-ignored', 'note', records.line[at]!, {
      actual: others.map((column) => column.name),
      count: others.length,
    });
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
