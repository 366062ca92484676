/** Ten years of readings every minute are 5 million rows; more than this in one file is a mistake, or meant to fill memory (ours). */
export const MOST_LINES = 12_000_000;
/** A row as wide as a sheet can be, 16,384 cells, takes a fraction of this (ours). */
export const LONGEST_LINE = 4_000_000;

/** What a file may hold at most (ours). */
interface Limits {
  /** Bytes of a text that is not counted, as it can hold nothing that fills memory. */
  small: number;
  lines: number;
  /** Ten years of rows every minute, each of 11 cells. */
  cells: number;
  /** A record of another system takes some ten objects of JSON. */
  objects: number;
  /** Of the outer lists of JSON: times and values beside each other, each as long as the most lines. */
  elements: number;
  /** Names and values in one element, or beside the lists: series of a year every minute are half a million. */
  inOne: number;
  /** Objects in each other; records of any standard are a few deep. */
  deep: number;
}
export const LIMITS: Limits = {
  small: 4_000_000,
  lines: MOST_LINES,
  cells: 60_000_000,
  objects: 40_000_000,
  elements: 3 * MOST_LINES,
  inOne: 3_000_000,
  deep: 200,
};

const LF = 0x0a;
const CR = 0x0d;
const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const COMMA = 0x2c;
const [BRACE, BRACKET] = [0x7b, 0x5b];
const [BRACE_END, BRACKET_END] = [0x7d, 0x5d];

/** Whether a text holds more than could be kept in memory. Each line, cell and object takes a byte at least, so most texts need no count. */
export function tooLong(bytes: Uint8Array, limits: Limits = LIMITS): boolean {
  if (bytes.length <= limits.small) return false;
  return isJson(bytes) ? jsonTooLong(bytes, limits) : textTooLong(bytes, limits);
}

function isJson(bytes: Uint8Array): boolean {
  let i = bytes[0] === 0xef ? 3 : 0;
  while (bytes[i]! <= 0x20) i++;
  return bytes[i] === BRACE || bytes[i] === BRACKET;
}

function textTooLong(bytes: Uint8Array, limits: Limits): boolean {
  if (bytes.length <= limits.lines) return false;
  const parts = new Uint8Array(256);
  for (const sign of ',;\t|') parts[sign.charCodeAt(0)] = 1;
  let lines = 0;
  let cells = 0;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i]!;
    if (byte === LF || (byte === CR && bytes[i + 1] !== LF)) lines++;
    else cells += parts[byte]!;
  }
  return lines > limits.lines || cells > limits.cells;
}

/** Lines and objects, how deep they lie in each other, the elements of the outer lists, and what one of them holds. */
function jsonTooLong(bytes: Uint8Array, limits: Limits): boolean {
  const isList = new Uint8Array(limits.deep + 1);
  let [lines, objects, elements, inOne] = [0, 0, 0, 0];
  let depth = 0;
  let outer = 0;
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i]!;
    if (byte === QUOTE) {
      i++;
      while (i < bytes.length && bytes[i] !== QUOTE) i += bytes[i] === BACKSLASH ? 2 : 1;
    } else if (byte === LF) {
      lines++;
      if (depth === 0) inOne = 0;
    } else if (byte === BRACE || byte === BRACKET) {
      if (++depth > limits.deep) return true;
      isList[depth] = byte === BRACKET ? 1 : 0;
      if (byte === BRACE) objects++;
      else if (outer === 0) outer = depth;
    } else if (byte === BRACE_END || byte === BRACKET_END) depth = Math.max(0, depth - 1);
    else if (byte === COMMA) {
      if (depth === outer && isList[depth]) {
        elements++;
        inOne = 0;
      } else if (++inOne > limits.inOne) return true;
    }
  }
  return lines > limits.lines || elements > limits.elements || objects > limits.objects;
}

/** The line of a text that is longer than any table's; 0 for none. */
export function longLine(bytes: Uint8Array): number {
  if (bytes.length <= LONGEST_LINE) return 0;
  const end = bytes.includes(LF) ? LF : CR;
  let line = 1;
  for (let from = 0; from < bytes.length; line++) {
    const at = bytes.indexOf(end, from);
    const to = at < 0 ? bytes.length : at;
    if (to - from > LONGEST_LINE && longest(bytes, from, to) > LONGEST_LINE) return line;
    from = to + 1;
  }
  return 0;
}

/** A lone CR ends a line too. */
function longest(bytes: Uint8Array, from: number, to: number): number {
  let most = 0;
  for (let at = from; at < to; ) {
    const cr = bytes.indexOf(CR, at);
    const end = cr < 0 || cr > to ? to : cr;
    most = Math.max(most, end - at);
    at = end + 1;
  }
  return most;
}
