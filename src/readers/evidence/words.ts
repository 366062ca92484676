import { cellText, locate, type Records } from '../table/records.ts';

/** The words of a column row by row, as numbers: 0 is the empty cell. */
export interface CodedColumn {
  words: string[];
  code: Int16Array;
  /** Rows of each word. */
  rows: number[];
}

/** More different words than this, and more than one word in this many rows, are free text (ours). */
const MOST_WORDS = 60;
/** What further words stand under where all must be heard. */
export const FURTHER = '(further words)';
const FREE = 4;

/**
 * Numbers the words of a column over the rows `from` to `to` (half open). Undefined for free text: it parts nothing. Where every row
 * has to be of a kind (`all`), words beyond the most are one.
 */
export function codeColumn(
  records: Records,
  from: number,
  to: number,
  column: number,
  wall: Float64Array,
  all = false,
): CodedColumn | undefined {
  const { bytes } = records;
  const words = [''];
  const rows = [0];
  const known = new Map<string, number>();
  const code = new Int16Array(to - from);
  const span = { from: 0, to: 0 };
  let lastFrom = 0;
  let lastLength = -1;
  let last = 0;
  for (let r = from; r < to; r++) {
    // A sum below the table has no time and is of no kind.
    if (Number.isNaN(wall[r - from]) || !locate(records, r, column, span)) {
      rows[0]!++;
      continue;
    }
    const length = span.to - span.from;
    let same = length === lastLength;
    for (let i = 0; same && i < length; i++) same = bytes[span.from + i] === bytes[lastFrom + i];
    if (!same) {
      let word = cellText(records, r, column);
      let found = known.get(word);
      if (found === undefined && all && words.length >= MOST_WORDS) {
        word = FURTHER;
        found = known.get(word);
      }
      if (found === undefined) {
        if (words.length > MOST_WORDS && words.length * FREE > r - from) return undefined;
        if (words.length > 2000) return undefined;
        found = words.length;
        known.set(word, found);
        words.push(word);
        rows.push(0);
      }
      last = found;
      lastFrom = span.from;
      lastLength = length;
    }
    code[r - from] = last;
    rows[last]!++;
  }
  return words.length > MOST_WORDS + 1 ? undefined : { words, code, rows };
}
