import { find } from '../../bytes/text.ts';
import type { Choice, Input, ReadFile } from '../../model/input.ts';
import type { Layout, TableLayout } from '../../schemas/layout.ts';
import { accountOf } from '../account.ts';
import { openBook } from '../book.ts';
import { LONGEST_LINE, longLine } from '../bounds.ts';
import { type Entries, newEntries } from '../entries.ts';
import { NOTHING_ABOVE, readAbove } from '../evidence/above.ts';
import { addMark } from '../evidence/wearers.ts';
import type { Hints } from '../hints.ts';
import { setOut } from '../plainText/plainText.ts';
import type { CheckedSettings, Reading } from '../reading.ts';
import { decode } from './encoding.ts';
import { evenRows } from './evenRows.ts';
import { layoutOf } from './foundLayout.ts';
import { putBack } from './laidOut.ts';
import { endAtHeaders, layTables } from './layoutTables.ts';
import { openText } from './openText.ts';
import { readTable, type Settled } from './readTable.ts';
import { type Records, scanRecords } from './records.ts';
import { isBlankRecord } from './rowFit.ts';
import { findTables, type Table } from './tables.ts';

/** Any text whose first bytes hold line ends or delimiters; the last reader asked. */
export function recogniseDelimited(head: Uint8Array): number {
  return 'notText' in decode(head) ? 0 : 0.1;
}

/** Reads delimited text of any make: columns by the meaning of their names, everything else by what is in them. */
export function readDelimited(input: Input, settings: CheckedSettings, hints: Hints = {}): ReadFile {
  const book = openBook(input.name);
  const choices: Choice[] = [];
  const { layout, problems } = settings;
  if (problems)
    book.add('layout-invalid', 'refusal', 0, { actual: problems, question: { of: 'layout', field: 'whole' } });
  const decoded = decode(input.bytes, layout?.encoding);
  if (input.bytes.length === 0 || 'notText' in decoded) {
    if (input.bytes.length === 0) book.add('file-empty', 'warning');
    else if ('notText' in decoded) book.add('not-text', 'warning', 0, { actual: { is: decoded.notText } });
    return accountOf(input, 'delimited', { book });
  }
  const long = longLine(decoded.bytes);
  if (long > 0) {
    book.add('line-too-long', 'refusal', long, { expected: LONGEST_LINE });
    return accountOf(input, 'delimited', { book });
  }
  choices.push(decoded.choice);
  if (decoded.guessedLetters > 0)
    book.add('encoding-guessed', 'note', 0, { actual: decoded.choice.value, count: decoded.guessedLetters });
  const replaced = countReplaced(decoded.bytes);
  if (replaced > 0) book.add('letters-lost', 'note', 0, { count: replaced });
  const out = setOut(decoded.bytes, settings, hints, book, choices);
  if (out.open) return accountOf(input, 'delimited', { book, choices, entries: allAside(out.bytes) });
  const opening: Choice[] = [];
  let opened = openText(out.bytes, layout, book, opening);
  const laid = layout && opened ? layTables(opened.records, layout) : undefined;
  if (layout && !laid && (layout.columns || layout.tables)) {
    // A folder may hold several kinds of file; the layout is for those it fits.
    book.add('layout-does-not-fit', 'warning');
    opening.length = 0;
    opened = openText(out.bytes, undefined, book, opening);
  }
  choices.push(
    ...opening.map((choice) => (out.parted && choice.id === 'delimiter' ? { ...choice, value: out.parted } : choice)),
  );
  if (!opened) return accountOf(input, 'delimited', { book, choices });
  const { tables } = opened;
  const evened = evenRows(opened.records, laid ?? tables);
  const records = evened ? scanRecords(evened.bytes, opened.records.delimiter) : opened.records;
  if (evened) {
    const { count, delimiter, row } = evened;
    book.add('rows-other-delimiter', 'note', records.line[row]!, {
      actual: delimiter === '\t' ? { is: 'tab' } : delimiter,
      count,
    });
  }
  const reading: Reading = {
    file: input.name,
    records,
    settings,
    hints,
    book,
    choices,
    entries: newEntries(records.count, records.count),
    zones: new Map(layout?.timezone ? [[layout.timezone, 0]] : []),
    marks: [],
    above: NOTHING_ABOVE,
    columns: [],
  };
  if (laid) choices.push({ id: 'layout', value: 'columns', by: 'user' });
  const used = laid ? endAtHeaders(laid, findTables(records)) : tables;
  tellTables(records, used, laid !== undefined, reading);
  const settled: [Table, Settled][] = [];
  for (const table of used) {
    const part: TableLayout | undefined = 'layout' in table ? (table.layout as TableLayout) : layout;
    const result = readTable(reading, table, part);
    if (result) settled.push([table, result]);
  }
  const orders = [...new Set(settled.flatMap(([, { dateOrder }]) => dateOrder ?? []))];
  if (orders.length > 1) book.add('date-orders-differ', 'note', 0, { actual: orders.map((is) => ({ is })) });
  if (used.length === 0)
    for (let r = 0; r < records.count; r++) if (!isBlankRecord(records, r)) reading.entries.fate(r, 'set-aside');
  const { entries, marks, columns } = reading;
  const persons = marks.filter(({ kind }) => kind !== 'born').map(({ text }) => text);
  const file = accountOf(input, 'delimited', {
    book,
    choices: onceEach(choices),
    entries,
    persons,
    marks,
    columns: onceEach(columns),
  });
  zoneOf(reading, file, layout);
  if (used.length > 0 && used.every(isLog)) file.logOnly = true;
  if (settled.length === used.length && used.length > 0)
    file.layout = layoutOf(decoded.choice.value, records, settled, file.zone);
  return out.above > 0 ? withoutLineAbove(file) : file;
}

/** A file of whose rows none is read before something is answered. */
function allAside(bytes: Uint8Array): Entries {
  const records = scanRecords(bytes, 0x0a);
  const entries = newEntries(records.count, 0);
  for (let r = 0; r < records.count; r++) if (!isBlankRecord(records, r)) entries.fate(r, 'set-aside');
  return entries;
}

/** A line of names that was put above a text without any is no line of the file. */
function withoutLineAbove(file: ReadFile): ReadFile {
  const { layout: _, ...rest } = file;
  const restored = putBack(
    file,
    (line) => Math.max(1, line - 1),
    (row) => row - 1,
  );
  return {
    ...rest,
    ...restored,
    fates: file.fates.slice(1),
    choices: file.choices.filter(({ id }) => id !== 'header'),
  };
}

const MAY_BE_GLUCOSE: readonly string[] = ['glucose', 'sensor', 'value'];
const isLog = ({ columns }: Table): boolean => !columns.some(({ role }) => MAY_BE_GLUCOSE.includes(role));

/** U+FFFD already in the text: letters lost before the file came here. */
function countReplaced(bytes: Uint8Array): number {
  let count = 0;
  for (let at = find(bytes, '\ufffd'); at >= 0 && count < 1000; at = find(bytes, '\ufffd', at + 3)) count++;
  return count;
}

/** Lines at the end of a file that may tell whose it is. */
const FOOTER = 5;

function tellTables(records: Records, tables: Table[], given: boolean, reading: Reading): void {
  const { book, choices, zones } = reading;
  const first = tables[0];
  if (!first) return;
  const above = Math.max(0, first.header < 0 ? first.from : first.header);
  reading.above = readAbove(records, 0, above);
  for (const { zone, line } of reading.above.zones) if (!zones.has(zone)) zones.set(zone, line);
  // A name can stand below the table as well.
  const below = readAbove(records, Math.max(first.from, records.count - FOOTER), records.count);
  const known = new Set<string>();
  for (const mark of [...reading.above.marks, ...below.marks]) addMark(reading.marks, known, mark);
  if (above > 0) book.add('lines-above-table', 'note', records.line[0]!, { count: above });
  for (const table of tables) {
    const by = given ? 'user' : 'file';
    choices.push({ id: 'header', value: table.header < 0 ? 'none' : records.line[table.header]!, by });
  }
  if (tables.every((table) => table.from >= table.to)) book.add('no-rows', 'warning');
}

function zoneOf(reading: Reading, file: ReadFile, layout: Layout | undefined): void {
  const { settings, zones, book } = reading;
  const [zone] = zones.keys();
  if (settings.zone) file.choices.push({ id: 'zone', value: settings.zone, by: 'user' });
  else if (zone) {
    file.choices.push({ id: 'zone', value: zone, by: layout?.timezone ? 'user' : 'file' });
    file.zone = zone;
  }
  if (zones.size > 1) {
    const actual = [...zones].map(([name, line]) =>
      line > 0 ? ({ is: 'at-line', text: name, line } as const) : ({ is: 'named', name } as const),
    );
    book.add('zones-in-file', settings.zone ? 'warning' : 'refusal', 0, { actual, question: { of: 'zone' } });
  } else if (zone && settings.zone && zone !== settings.zone) {
    book.add('zone-contradicts-file', 'warning', 0, { actual: zone, expected: settings.zone });
  }
}

/** What is alike in several tables is told once. */
function onceEach<T>(all: T[]): T[] {
  const known = new Set<string>();
  return all.filter((one) => {
    const key = JSON.stringify(one);
    return known.has(key) ? false : known.add(key);
  });
}
