import { latin1 } from '../../bytes/text.ts';
import type { ChoiceOf } from '../../model/choices.ts';
import { fieldCount, type Records } from './records.ts';

const DELIMITERS = [0x2c, 0x3b, 0x09, 0x7c];
const MAX_COUNT = 512;

export interface DelimiterFit {
  /** Byte of the delimiter. */
  delimiter: number;
  /** Fields of the most common kind of row, over 1. */
  fields: number;
  /** Rows that have exactly so many. */
  rows: number;
}

/**
 * Counts every candidate outside quotes over the whole text, and gives the ones that split it into more than one
 * field, the most even first (W3C CSV on the Web calls this the dialect's delimiter).
 */
export function fitDelimiters(bytes: Uint8Array): { fits: DelimiterFit[]; rows: number } {
  const kind = new Uint8Array(256);
  DELIMITERS.forEach((byte, i) => {
    kind[byte] = i + 1;
  });
  kind[0x22] = 5;
  kind[0x0a] = 6;
  kind[0x0d] = 6;
  const histogram = DELIMITERS.map(() => new Int32Array(MAX_COUNT + 1));
  const counts = new Int32Array(6);
  let rows = 0;
  let quoted = false;
  let lineBreaks = 0;
  let rowStart = 0;
  let fieldStart = 0;
  const n = bytes.length;
  for (let i = 0; i <= n; i++) {
    while (i < n && kind[bytes[i]!] === 0) i++;
    const k = i === n ? 6 : kind[bytes[i]!]!;
    if (k === 5) {
      if (quoted) quoted = false;
      else if (i === fieldStart || bytes[i - 1] === 0x22) {
        quoted = true;
        lineBreaks = 0;
      }
    } else if (k === 6) {
      // A quote left open must not swallow the file: after a few lines it is taken as closed.
      if (quoted && ++lineBreaks < 50 && i < n) continue;
      quoted = false;
      if (i > rowStart) {
        rows++;
        for (let d = 0; d < DELIMITERS.length; d++) {
          const count = counts[d + 1]!;
          if (count === 0) continue;
          histogram[d]![Math.min(count, MAX_COUNT)]!++;
          counts[d + 1] = 0;
        }
      }
      rowStart = fieldStart = i + 1;
    } else if (!quoted) {
      counts[k]!++;
      fieldStart = i + 1;
    }
  }
  const fits: DelimiterFit[] = [];
  histogram.forEach((byCount, d) => {
    const best = mostOften(byCount);
    if (best > 0) fits.push({ delimiter: DELIMITERS[d]!, fields: best + 1, rows: byCount[best]! });
  });
  fits.sort((a, b) => b.rows - a.rows || b.fields - a.fields);
  return { fits, rows };
}

/** The one delimiter that occurs at all, in a text without quotes: splitting by it tells what counting would. */
export function onlyDelimiter(bytes: Uint8Array): number | undefined {
  if (bytes.includes(0x22)) return undefined;
  const there = DELIMITERS.filter((byte) => bytes.includes(byte));
  return there.length === 1 ? there[0] : undefined;
}

/** As `fitDelimiters`, from a text already split by the only delimiter it has. */
export function fitOfRecords(records: Records): { fits: DelimiterFit[]; rows: number } {
  const byCount = new Int32Array(MAX_COUNT + 1);
  let rows = 0;
  for (let r = 0; r < records.count; r++) {
    const count = fieldCount(records, r) - 1;
    if (count === 0 && records.ends[records.first[r]!] === records.start[r]) continue;
    rows++;
    byCount[Math.min(count, MAX_COUNT)]!++;
  }
  const best = mostOften(byCount);
  return { fits: [{ delimiter: records.delimiter, fields: best + 1, rows: byCount[best]! }], rows };
}

/** The count over 0 that most rows have, the smallest of several; 0 when none has one. */
function mostOften(byCount: Int32Array): number {
  let best = 0;
  for (let n = 1; n <= MAX_COUNT; n++) if (byCount[n]! > (best === 0 ? 0 : byCount[best]!)) best = n;
  return best;
}

/** `sep=;` on the first line: a hint many spreadsheets understand. */
export function hintedDelimiter(bytes: Uint8Array): number | undefined {
  const head = latin1(bytes, 0, 12);
  const hint = /^"?sep=([,;\t|])"?\s*[\r\n]/i.exec(head);
  return hint?.[1]?.charCodeAt(0);
}

export function delimiterName(delimiter: number): ChoiceOf<'delimiter'>['value'] {
  return delimiter === 0x09 ? 'tab' : (String.fromCharCode(delimiter) as ',' | ';' | '|');
}
