import { utf8 } from '../../bytes/text.ts';

const QUOTE = 0x22;
const [EQUALS, APOSTROPHE] = [0x3d, 0x27];
const LF = 0x0a;
const CR = 0x0d;
/** A quoted field running over more lines than this was never closed (ours). */
const MAX_QUOTED_LINES = 200;

/**
 * Delimited text as byte offsets (RFC 4180, with LF, CRLF and lone CR as line ends). Cells are cut out of `bytes`
 * on demand, so a year of rows costs a few bytes a cell and no strings.
 */
export interface Records {
  bytes: Uint8Array;
  delimiter: number;
  count: number;
  /** First field of each record as an index into `ends`; one more entry than records. */
  first: Int32Array;
  /** Byte offset and physical line (from 1) at which each record starts. */
  start: Int32Array;
  line: Int32Array;
  /** Byte offset just behind each field, before its delimiter. */
  ends: Int32Array;
  /** Records whose quote was opened and never closed; they end with their line. */
  unclosed: Set<number>;
  /** Lines with a quote in the wrong place, kept as text. */
  strayQuotes: { count: number; line: number };
  /** Whether it is known that no other delimiter occurs in the text. */
  alone: boolean;
}

function grown(array: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const bigger = new Int32Array(array.length * 2);
  bigger.set(array);
  return bigger;
}

/** Splits the whole text. Linear in its length whatever the quotes do; never throws. */
export function scanRecords(bytes: Uint8Array, delimiter: number, alone = false): Records {
  const n = bytes.length;
  const guess = Math.max(16, n >> 4);
  let first = new Int32Array(guess);
  let start = new Int32Array(guess);
  let line = new Int32Array(guess);
  let ends = new Int32Array(guess * 2);
  const stops = new Uint8Array(256);
  stops[delimiter] = stops[LF] = stops[CR] = 1;
  const unclosed = new Set<number>();
  const stray = { count: 0, line: 0 };
  let records = 0;
  let fields = 0;
  let physical = 1;
  let i = 0;
  // Before this offset no quoted field may run over a line end: an unclosed one was found to reach up to here.
  let noSpanUntil = 0;
  while (i < n) {
    if (records + 1 >= first.length) {
      first = grown(first);
      start = grown(start);
      line = grown(line);
    }
    first[records] = fields;
    start[records] = i;
    line[records] = physical;
    let recordOpen = true;
    while (recordOpen) {
      if (i < n && bytes[i] === QUOTE) {
        // Look for the closing quote; only a delimiter, a line end or the end of the file may follow it.
        let j = i + 1;
        let lines = 0;
        let closed = false;
        while (j < n) {
          const b = bytes[j]!;
          if (b === QUOTE) {
            if (bytes[j + 1] !== QUOTE) {
              closed = true;
              break;
            }
            j += 2;
            continue;
          }
          if (b === LF || (b === CR && bytes[j + 1] !== LF)) {
            lines++;
            if (j < noSpanUntil || lines > MAX_QUOTED_LINES) break;
          }
          j++;
        }
        let k = j + 1;
        while (k < n && bytes[k] === 0x20) k++;
        const after = k < n ? bytes[k]! : LF;
        if (closed && (after === delimiter || after === LF || after === CR)) {
          i = k;
          physical += lines;
        } else {
          if (closed && lines === 0) {
            if (stray.count++ === 0) stray.line = physical;
          } else {
            unclosed.add(records);
            noSpanUntil = Math.max(noSpanUntil, j);
          }
          i++;
        }
      }
      while (i < n && stops[bytes[i]!] === 0) i++;
      if (fields >= ends.length) ends = grown(ends);
      ends[fields++] = i;
      recordOpen = i < n && bytes[i] === delimiter;
      if (recordOpen) i++;
      else if (i < n) {
        if (bytes[i] === CR && bytes[i + 1] === LF) i++;
        i++;
        physical++;
      }
    }
    records++;
  }
  first[records] = fields;
  return { bytes, delimiter, count: records, first, start, line, ends, unclosed, strayQuotes: stray, alone };
}

export function fieldCount(records: Records, row: number): number {
  return records.first[row + 1]! - records.first[row]!;
}

function fieldStart(records: Records, row: number, column: number): number {
  return column === 0 ? records.start[row]! : records.ends[records.first[row]! + column - 1]! + 1;
}

/** Where a cell's content lies once blanks, quotes and invisible marks around it are gone. */
export interface Span {
  from: number;
  to: number;
}

const isDigit = (b: number): boolean => b >= 0x30 && b <= 0x39;

/** Finds a cell; false when it is absent or holds nothing. Allocates nothing. */
export function locate(records: Records, row: number, column: number, span: Span): boolean {
  const field = records.first[row]! + column;
  if (column < 0 || field >= records.first[row + 1]!) return false;
  const bytes = records.bytes;
  let s = fieldStart(records, row, column);
  let e = records.ends[field]!;
  if (s < e && bytes[s] === QUOTE) {
    s++;
    while (e > s && bytes[e - 1]! === 0x20) e--;
    if (e > s && bytes[e - 1] === QUOTE) e--;
  }
  while (s < e && bytes[s]! <= 0x20) s++;
  while (e > s && bytes[e - 1]! <= 0x20) e--;
  if (s < e && (bytes[s]! >= 0x80 || bytes[e - 1]! >= 0x80)) {
    for (let width = blankAt(bytes, s, e); width > 0; width = blankAt(bytes, s, e)) s += width;
    for (let width = blankBefore(bytes, s, e); width > 0; width = blankBefore(bytes, s, e)) e -= width;
  }
  // A spreadsheet's mark of text in front of a number is none of it.
  if (bytes[s] === APOSTROPHE && e - s > 1 && isDigit(bytes[s + 1]!) && bytes[e - 1] !== APOSTROPHE) s++;
  // A formula of text, ="5", is the text in it; quotes inside a quoted cell are doubled.
  if (bytes[s] === EQUALS && e - s > 2 && bytes[s + 1] === QUOTE && bytes[e - 1] === QUOTE) {
    const width = bytes[fieldStart(records, row, column)] === QUOTE ? 2 : 1;
    s += 1 + width;
    e = Math.max(s, e - width);
  }
  span.from = s;
  span.to = e;
  return s < e;
}

/** Width of an invisible character at `i`: blank, NBSP, U+200B-200F, U+202F, U+FEFF; 0 when it is a visible one. */
function blankAt(bytes: Uint8Array, i: number, e: number): number {
  if (i >= e) return 0;
  const a = bytes[i]!;
  if (a <= 0x20) return 1;
  if (a === 0xc2 && bytes[i + 1] === 0xa0) return 2;
  if (a === 0xef && bytes[i + 1] === 0xbb && bytes[i + 2] === 0xbf) return 3;
  if (a === 0xe2 && bytes[i + 1] === 0x80) {
    const c = bytes[i + 2]!;
    if (c <= 0x8f || c === 0xaf) return 3;
  }
  return 0;
}

function blankBefore(bytes: Uint8Array, s: number, e: number): number {
  for (const width of [1, 2, 3]) if (e - width >= s && blankAt(bytes, e - width, e) === width) return width;
  return 0;
}

/** A cell as text, unescaped and trimmed; '' when absent. */
export function cellText(records: Records, row: number, column: number): string {
  const span = { from: 0, to: 0 };
  if (!locate(records, row, column, span)) return '';
  const text = utf8(records.bytes, span.from, span.to);
  return records.bytes[fieldStart(records, row, column)] === QUOTE ? text.replaceAll('""', '"') : text;
}

/** A whole record as it stood, cut for showing. */
export function recordText(records: Records, row: number): string {
  const from = records.start[row]!;
  return utf8(records.bytes, from, Math.min(records.ends[records.first[row + 1]! - 1]!, from + 480)).slice(0, 120);
}
