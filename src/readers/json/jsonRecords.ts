import { growingText, latin1 } from '../../bytes/text.ts';
import type { Input, ReadFile } from '../../model/input.ts';
import { accountOf } from '../account.ts';
import { openBook } from '../book.ts';
import { newEntries } from '../entries.ts';
import type { Hints } from '../hints.ts';
import type { CheckedSettings } from '../reading.ts';
import { readDelimited } from '../table/delimited.ts';
import { atLine, putBack } from '../table/laidOut.ts';
import { withoutPlaces } from '../table/layoutTables.ts';
import { type Elements, type JsonText, NO_ELEMENTS, walk } from './elements.ts';
import { openJson } from './jsonText.ts';
import { fieldsOf, rowsOf } from './recordRows.ts';

const KIND = 'json-records';
const MAX_NAMES = 200;
/** Of texts beside a list of records. */
const MOST_BESIDE = 30;
const LONGEST = 80;

/** Any text that begins like JSON; the readers of named formats are surer. */
export function recogniseJson(head: Uint8Array, name: string): number {
  const text = latin1(head, 0, 256).replace('\u00ef\u00bb\u00bf', '').trimStart();
  if (/^(?:\{\s*["}]|\[\s*[[{\]"\d])/.test(text)) return 0.5;
  return /\.(?:nd)?jsonl?$/i.test(name) && /^[[{]/.test(text) ? 0.4 : 0;
}

interface Found {
  records: Elements;
  /** Lists beside it that nothing is read from, and how many entries each has. */
  unread: { name: string; count: number }[];
}

/** The list of objects in a JSON text: the array, the lines, or the longest list directly inside one object. */
function recordsIn(text: JsonText): Found {
  if (text.form !== 'object') return { records: text.elements, unread: [] };
  const lists = [...text.inside];
  let best: Elements = NO_ELEMENTS;
  for (const [, list] of lists) if (list.count > best.count) best = list;
  const asColumns = isScalar(best, 0);
  const columns = asColumns ? lists.filter(([, list]) => list.count === best.count) : [];
  const isRead = (list: Elements): boolean =>
    list.count === 0 || (asColumns ? list.count === best.count : list === best);
  return {
    records: asColumns ? columnsOf(columns) : best,
    unread: lists.flatMap(([name, list]) => (isRead(list) ? [] : [{ name, count: list.count }])),
  };
}

function isScalar(list: Elements, i: number): boolean {
  try {
    return list.count > 0 && typeof list.value(i) !== 'object';
  } catch {
    return false;
  }
}

/** Lists of one length beside each other, `{"time": […], "glucose": […]}`, are the columns of one table. */
function columnsOf(columns: [string, Elements][]): Elements {
  const [first] = columns;
  if (!first || columns.length < 2) return NO_ELEMENTS;
  return {
    count: first[1].count,
    line: (i) => first[1].line(i),
    value: (i) => Object.fromEntries(columns.map(([name, list]) => [name, list.value(i)])),
  };
}

/** What is said beside a list of records is said of all of them: a unit, a name, a zone. One line each, as above a table. */
function besideList({ outer, form }: JsonText): string[] {
  if (form !== 'object' || !outer) return [];
  const lines = [...fieldsOf(outer)].filter(([, text]) => text.length <= LONGEST && !text.includes('\n'));
  return lines.slice(0, MOST_BESIDE).map(([name, text]) => `${quoted(name)},${quoted(text)}`);
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Reads plain records by laying them out as a table and reading that: names and values mean the same in both. */
export function readJsonRecords(input: Input, settings: CheckedSettings, hints: Hints = {}): ReadFile {
  const opened = openJson(input.bytes);
  if ('brokenAt' in opened) return refused(input, opened.brokenAt);
  const { records, unread } = recordsIn(opened);
  const names = new Set<string>();
  const { brokenAt, broken } = walk(opened, records, (record) => {
    for (const row of rowsOf(record)) for (const name of row.keys()) if (names.size < MAX_NAMES) names.add(name);
  });
  if (brokenAt > 0) return refused(input, brokenAt);
  if (names.size === 0) {
    const book = openBook(input.name);
    if (records.count === 0 && opened.form === 'array') book.add('file-empty', 'warning');
    else book.add('json-unknown', 'refusal');
    const entries = newEntries(records.count, 0);
    for (let row = 0; row < records.count; row++) entries.fate(row, 'set-aside');
    return accountOf(input, KIND, { book, entries });
  }
  const table = growingText();
  const head = [...names].map(quoted).join(',');
  const above = besideList(opened);
  table.add(above.map((line) => `${line}\n`).join('') + head);
  // Where each row of the table came from, by the physical line on which it is laid out.
  const cameFrom: number[] = [0, 1, ...above.map(() => 1)];
  for (let l = linesOf(head); l > 1; l--) cameFrom.push(1);
  walk(opened, records, (record, i) => {
    for (const row of rowsOf(record)) {
      let text = '\n';
      let first = true;
      for (const name of names) {
        text += `${first ? '' : ','}${quoted(row.get(name) ?? '')}`;
        first = false;
      }
      table.add(text);
      for (let l = linesOf(text); l > 1; l--) cameFrom.push(records.line(i));
    }
  });
  const laidOut = { name: input.name, bytes: table.bytes() };
  const file = readDelimited(laidOut, withoutPlaces(settings, true), hints);
  return backToRecords(input, file, cameFrom, { broken, unread }, above.length + 1);
}

/** Physical lines of a text: one, and one more for each line end. */
function linesOf(text: string): number {
  let lines = 1;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10 ? text.charCodeAt(i - 1) !== 13 : code === 13) lines++;
  }
  return lines;
}

function refused(input: Input, brokenAt: number): ReadFile {
  const book = openBook(input.name);
  book.add('json-broken', 'refusal', brokenAt);
  return accountOf(input, KIND, { book });
}

/** Puts lines and rows of the laid-out table back to those of the records. */
function backToRecords(
  input: Input,
  file: ReadFile,
  cameFrom: number[],
  { broken, unread }: { broken: number[] } & Pick<Found, 'unread'>,
  head: number,
): ReadFile {
  const restored = putBack(
    file,
    (line) => cameFrom[line] ?? 1,
    (row) => row - head,
  );
  const book = openBook(input.name);
  for (const line of broken) book.add('json-line-broken', 'warning', line);
  for (const { name, count } of unread) book.add('json-list-unread', 'warning', 0, { actual: name, count });
  const ofTable = new Set(['delimiter', 'header', 'encoding']);
  return {
    ...accountOf(input, KIND, { book }),
    ...restored,
    choices: file.choices
      .filter(({ id }) => !ofTable.has(id))
      .map((choice) => atLine(choice, (line) => cameFrom[line] ?? 1)),
    issues: [...restored.issues.filter(({ code }) => code !== 'lines-above-table'), ...book.list()],
    faults: [...restored.faults, ...book.faults()],
    fates: [...file.fates.slice(head), ...broken.map(() => 'set-aside' as const)],
    persons: file.persons,
    ...(file.marks ? { marks: file.marks } : {}),
    ...(file.columns ? { columns: file.columns } : {}),
    ...(file.zone ? { zone: file.zone } : {}),
  };
}
