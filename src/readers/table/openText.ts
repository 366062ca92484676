import type { Choice } from '../../model/input.ts';
import type { Tells } from '../../model/issues.ts';
import type { Layout } from '../../schemas/layout.ts';
import type { IssueBook } from '../book.ts';
import { meantColumns } from '../evidence/claim.ts';
import { askSensor } from '../evidence/questions.ts';
import { readStamp } from '../times/dates.ts';
import { newStamp, SHAPE } from '../times/stamp.ts';
import { delimiterName, fitDelimiters, fitOfRecords, hintedDelimiter, onlyDelimiter } from './delimiter.ts';
import { evenHeaders } from './evenHeaders.ts';
import type { Column } from './header.ts';
import { columnsByContent, firstOfData } from './nameless.ts';
import { cellText, locate, type Records, recordText, scanRecords } from './records.ts';
import { columnOfBoth, namedByCells } from './seenColumns.ts';
import { findTables, isWhen, SAMPLE, type Table, unknownNames } from './tables.ts';

interface Opened {
  records: Records;
  /** Empty when no columns could be told; the book says why. */
  tables: Table[];
}

/** Shares of the rows that the most even delimiter splits, from which another one is tried beside it and after it (ours). */
const NEAR = 0.8;
const FAR = 0.2;
/** The most a delimiter can mean (`meaningOf`). */
const NAMES_AND_TIMES = 3;

/** Splits decoded text and finds its tables: the delimiter first, by evenness, then by which one gives meaning. */
export function openText(
  bytes: Uint8Array,
  layout: Layout | undefined,
  book: IssueBook,
  choices: Choice[],
): Opened | undefined {
  const named = layout?.delimiter?.charCodeAt(0);
  const hinted = hintedDelimiter(bytes);
  const only = onlyDelimiter(bytes);
  const split = only === undefined ? undefined : scanRecords(bytes, only, true);
  const { fits, rows } = split ? fitOfRecords(split) : fitDelimiters(bytes);
  if (rows === 0 || bytes.every((byte) => byte <= 0x20)) {
    book.add('file-empty', 'warning');
    return undefined;
  }
  const laidOut = layout?.columns !== undefined || layout?.tables !== undefined;
  const open = (delimiter: number): { records: Records; tables: Table[] } => {
    const records = split?.delimiter === delimiter ? split : scanRecords(bytes, delimiter);
    const tables = laidOut && only !== undefined ? [] : findTables(records);
    const evened = evenHeaders(records, tables);
    if (laidOut) return { records: evened ?? records, tables: [] };
    return evened ? { records: evened, tables: findTables(evened) } : { records, tables };
  };
  if (named !== undefined || (hinted !== undefined && fits.some((fit) => fit.delimiter === hinted))) {
    const delimiter = named ?? hinted!;
    choices.push({
      id: 'delimiter',
      value: delimiterName(delimiter),
      by: named ? 'user' : 'file',
      evidence: { is: named ? 'laid-out' : 'sep-line' },
    });
    return finish(open(delimiter), laidOut, layout, book, choices);
  }
  const best = fits[0];
  if (!best) {
    const records = scanRecords(bytes, 0x2c);
    book.add('no-columns', 'refusal', 0, {
      actual: recordText(records, 0),
      question: { of: 'layout', field: 'delimiter' },
    });
    return { records, tables: [] };
  }
  const attempt = (fit: (typeof fits)[number]) => {
    const opened = open(fit.delimiter);
    return { fit, opened, score: fits.length === 1 || laidOut ? 1 : meaningOf(opened) };
  };
  const near = fits.filter((fit) => fit.rows >= best.rows * NEAR).map(attempt);
  // A decimal comma stands in every row, and in a name as well: what the delimiter gives must mean something, and of names, times under them.
  const most = Math.max(...near.map(({ score }) => score));
  const search = !laidOut && most < NAMES_AND_TIMES;
  const rare = search ? fits.filter(({ rows: n }) => n < best.rows * NEAR && n >= best.rows * FAR) : [];
  const far = rare.map(attempt).filter(({ score }) => most === 0 || score === NAMES_AND_TIMES);
  const ranked = [...near, ...far].sort((a, b) => b.score - a.score || b.fit.rows - a.fit.rows);
  const [chosen, next] = ranked;
  if (next && next.score === chosen!.score && next.fit.rows === chosen!.fit.rows) {
    book.add('delimiter-unclear', 'refusal', 0, {
      actual: markShown(chosen!.fit.delimiter),
      expected: markShown(next.fit.delimiter),
      question: {
        of: 'layout',
        field: 'delimiter',
        answer: JSON.stringify({ delimiter: String.fromCharCode(chosen!.fit.delimiter) }),
      },
    });
    return { records: chosen!.opened.records, tables: [] };
  }
  const { fit, opened } = chosen!;
  const evidence = { is: 'fields', fields: fit.fields, rows: fit.rows, of: rows } as const;
  choices.push({ id: 'delimiter', value: delimiterName(fit.delimiter), by: 'file', evidence });
  return finish(opened, laidOut, layout, book, choices);
}

const markShown = (delimiter: number): Tells<'delimiter-unclear'>['actual'] => {
  const name = delimiterName(delimiter);
  return name === 'tab' ? { is: name } : name;
};

/** 3: names that mean something over times; 2: names only; 1: a time and one number a row; 0: nothing. */
function meaningOf({ records, tables }: Opened): number {
  const [first] = tables;
  if (first) return hasTimes(records, first) ? NAMES_AND_TIMES : 2;
  const { columns, values } = columnsByContent(records);
  return columns.some((column) => column.role === 'time') && values > 0 ? 1 : 0;
}

/** Whether a time stands under a name of times as this delimiter parts the rows. */
function hasTimes(records: Records, { from, to, columns }: Table): boolean {
  const stamp = newStamp();
  const span = { from: 0, to: 0 };
  const whens = columns.filter(isWhen);
  for (let r = from; r < Math.min(to, from + SAMPLE); r++)
    for (const { index } of whens)
      if (locate(records, r, index, span) && readStamp(records.bytes, span.from, span.to, stamp) !== SHAPE.none)
        return true;
  return false;
}

function finish(
  opened: Opened,
  laidOut: boolean,
  layout: Layout | undefined,
  book: IssueBook,
  choices: Choice[],
): Opened {
  const { records } = opened;
  if (records.strayQuotes.count > 0) {
    book.add('stray-quote', 'note', records.strayQuotes.line, { count: records.strayQuotes.count });
  }
  if (opened.tables.length > 0 || laidOut) return opened;
  const { columns: content } = columnsByContent(records);
  const named = namedByCells(records, content);
  if (named) return { records, tables: [named] };
  const columns = meantColumns(content, layout);
  const times = columns.filter(isWhen);
  const glucose = columns.filter(({ role }) => role === 'glucose' || role === 'sensor');
  const values = glucose.length;
  const names = unknownNames(records, columns);
  const both = names === undefined ? undefined : columnOfBoth(records, columns, names);
  if (both) {
    const { time, of, number, words } = both;
    book.add('column-of-both', 'refusal', records.line[names!]!, {
      actual: of,
      expected: { is: 'both-cells', number, words },
      question: {
        of: 'layout',
        field: 'columns',
        answer: JSON.stringify({ columns: { [time]: 'time', [of]: 'mixed' } }),
      },
    });
  } else if (times.length === 0 || values === 0 || names !== undefined) {
    book.add('columns-unclear', 'refusal', 0, {
      actual: recordText(records, names ?? 0),
      question: { of: 'layout', field: 'columns', answer: openColumns(records, columns, names) },
    });
  } else if (values > 1 && !glucose.some(({ given }) => given)) {
    askSensor(book, glucose[0]!, glucose[1]!);
  } else {
    choices.push({ id: 'header', value: 'none', by: 'file', evidence: { is: 'by-content' } });
    const from = firstOfData(records, columns);
    return { records, tables: [{ header: -1, from, to: records.count, columns }] };
  }
  return opened;
}

/** Columns asked for in one layout. */
const MOST_ASKED = 8;

/** A layout to fill in, of a table whose names mean nothing here: its times, and the columns that hold numbers. */
function openColumns(records: Records, columns: readonly Column[], names: number | undefined): string {
  const useful = columns.filter(({ role }) => role !== 'ignore').slice(0, MOST_ASKED);
  const name = (column: Column): string =>
    (names === undefined ? '' : cellText(records, names, column.index)) || column.name;
  const once = new Set(useful.map(name)).size === useful.length;
  const asked = (useful.length > 0 ? useful : columns.slice(0, MOST_ASKED)).map((column) => [
    once ? name(column) : column.name,
    column.role === 'time' ? 'time' : '…',
  ]);
  return JSON.stringify({ columns: Object.fromEntries(asked) });
}
