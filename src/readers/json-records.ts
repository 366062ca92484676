import type { Input, ReadFile, ReadSettings } from '../model/input.ts';
import { openBook } from './book.ts';
import { readDelimited } from './delimited.ts';
import { newEntries } from './entries.ts';
import { fingerprint } from './fingerprint.ts';
import type { Hints } from './hints.ts';
import { type Element, type JsonText, objectIn, openJson } from './json.ts';
import { withoutPlaces } from './layout-tables.ts';

const MAX_NAMES = 200;

/** Any text that begins like JSON; the readers of named formats are surer. */
export function recogniseJson(head: Uint8Array, name: string): number {
  const text = Buffer.from(head.subarray(0, 256)).toString('latin1').replace('\u00ef\u00bb\u00bf', '').trimStart();
  if (/^(?:\{\s*["}]|\[\s*[[{\]"\d])/.test(text)) return 0.5;
  return /\.(?:nd)?jsonl?$/i.test(name) && /^[[{]/.test(text) ? 0.4 : 0;
}

/** The list of objects in a JSON text: the array, the lines, or the longest list directly inside one object. */
function recordsIn(text: JsonText): Element[] {
  if (text.form !== 'object') return text.elements;
  const whole = objectIn(text.elements[0]?.value) ?? {};
  let best: Element[] = [];
  for (const [key, value] of Object.entries(whole)) {
    if (!Array.isArray(value) || value.length <= best.length) continue;
    const lines = text.inside.get(key) ?? [];
    best = value.map((element: unknown, i) => ({ value: element, line: lines[i] ?? 1 }));
  }
  return best;
}

/** Fields of an object by name; objects inside it are opened one level: `glucose.value`. */
function fieldsOf(value: unknown): Map<string, string> {
  const fields = new Map<string, string>();
  const put = (name: string, inner: unknown): void => {
    if (typeof inner === 'string') fields.set(name, inner);
    else if (typeof inner === 'number' || typeof inner === 'boolean') fields.set(name, String(inner));
  };
  for (const [name, inner] of Object.entries(objectIn(value) ?? {})) {
    const nested = objectIn(inner);
    if (nested) for (const [below, deep] of Object.entries(nested)) put(`${name} ${below}`, deep);
    else put(name, inner);
  }
  return fields;
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Reads plain records by laying them out as a table and reading that: names and values mean the same in both. */
export function readJsonRecords(input: Input, settings: ReadSettings, hints: Hints = {}): ReadFile {
  const opened = openJson(input.bytes);
  const records = 'brokenAt' in opened ? [] : recordsIn(opened);
  const rows = records.map((record) => fieldsOf(record.value));
  const names: string[] = [];
  const known = new Set<string>();
  for (const row of rows) {
    for (const name of row.keys()) {
      if (known.has(name) || names.length >= MAX_NAMES) continue;
      known.add(name);
      names.push(name);
    }
  }
  if ('brokenAt' in opened || names.length === 0) {
    const book = openBook(input.name);
    if ('brokenAt' in opened) book.add('json-broken', 'refusal', opened.brokenAt);
    else if (records.length === 0 && opened.form === 'array') book.add('file-empty', 'warning');
    else book.add('json-unknown', 'refusal');
    const entries = newEntries(records.length, 0);
    for (let row = 0; row < records.length; row++) entries.fate(row, 'set-aside');
    return { ...shell(input), issues: book.list(), readings: entries.readings(), fates: entries.fates };
  }
  // Where each row of the table came from, by the physical line on which it is laid out.
  const cameFrom: number[] = [0, 1];
  let table = names.map(quoted).join(',');
  const headLines = table.split(/\r\n|\n|\r/).length;
  for (let l = 1; l <= headLines; l++) cameFrom[l] = 1;
  let line = headLines;
  rows.forEach((row, i) => {
    const text = names.map((name) => quoted(row.get(name) ?? '')).join(',');
    table += `\n${text}`;
    const lines = text.split(/\r\n|\n|\r/).length;
    for (let l = 1; l <= lines; l++) cameFrom[line + l] = records[i]!.line;
    line += lines;
  });
  const file = readDelimited(
    { name: input.name, bytes: new TextEncoder().encode(table) },
    withoutPlaces(settings, true),
    hints,
  );
  return backToRecords(input, file, cameFrom, opened.broken);
}

function shell(input: Input): ReadFile {
  const hash = fingerprint(input.bytes);
  const none = newEntries(0, 0);
  return {
    name: input.name,
    kind: 'json-records',
    hash,
    choices: [],
    issues: [],
    readings: none.readings(),
    notes: [],
    fates: [],
    persons: [],
  };
}

/** Puts lines and rows of the laid-out table back to those of the records. */
function backToRecords(input: Input, file: ReadFile, cameFrom: number[], broken: number[]): ReadFile {
  const lineAt = (line: number): number => cameFrom[line] ?? 1;
  const { readings } = file;
  for (let i = 0; i < readings.count; i++) {
    readings.line[i] = lineAt(readings.line[i]!);
    readings.row[i] = readings.row[i]! - 1;
  }
  const book = openBook(input.name);
  for (const line of broken) book.add('json-line-broken', 'warning', line);
  const ofTable = new Set(['delimiter', 'header', 'encoding']);
  const issues = file.issues.map((issue) =>
    issue.origin ? { ...issue, origin: { ...issue.origin, line: lineAt(issue.origin.line) } } : issue,
  );
  return {
    ...shell(input),
    choices: file.choices.filter(({ id }) => !ofTable.has(id)),
    issues: [...issues, ...book.list()],
    faults: [...(file.faults ?? []).map((fault) => ({ ...fault, line: lineAt(fault.line) })), ...book.faults()],
    readings,
    notes: file.notes.map((note) => ({
      ...note,
      row: note.row - 1,
      origin: { ...note.origin, line: lineAt(note.origin.line) },
    })),
    fates: [...file.fates.slice(1), ...broken.map(() => 'set-aside' as const)],
    persons: file.persons,
    ...(file.zone ? { zone: file.zone } : {}),
  };
}
