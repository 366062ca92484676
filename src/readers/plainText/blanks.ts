import { anyUnit } from '../glucose/unit.ts';
import { columnOf } from '../table/header.ts';
import { SHAPE } from '../times/stamp.ts';
import { linesIn, mapLines, quoted, timeWords } from './lines.ts';

/** So many of the lines that begin with a time must be set alike (ours). */
const SHARE = 0.95;
/** Letters of a line that are looked at for columns set one below the other (ours). */
const WIDEST = 400;
const WHEN: readonly string[] = ['time', 'date', 'clock'];

interface Span {
  from: number;
  to: number;
}

interface Row {
  line: number;
  text: string;
  words: string[];
  /** Words at the start that tell its time. */
  lead: number;
  shape: number;
}

/**
 * A text whose columns are parted by blanks alone, with a tab between them; undefined where it is none, or where a cell that stands
 * empty could belong to either neighbour.
 */
export function partBlanks(bytes: Uint8Array): Uint8Array | undefined {
  const lines = linesIn(bytes);
  const rows = rowsOf(lines);
  if (rows.length < 2) return undefined;
  const names = lines.slice(0, rows[0]!.line).findLastIndex((line) => line.trim() !== '');
  const header = names < 0 || /^\s*\d/.test(lines[names]!) ? undefined : lines[names]!;
  const parted = partByPlace(header, rows) ?? partByWords(header, rows);
  if (!parted) return undefined;
  const { head, cells } = parted;
  const at = new Map(rows.map(({ line }, i) => [line, cells[i]!]));
  if (header !== undefined && head) at.set(names, head);
  return mapLines(bytes, (line, i) => at.get(i)?.map(quoted).join('\t') ?? line);
}

function rowsOf(lines: readonly string[]): Row[] {
  return lines.flatMap((text, line) => {
    const words = text.trim().split(/\s+/);
    if (words.length < 2) return [];
    const { count, shape } = timeWords(words);
    return count > 0 && count < words.length ? [{ line, text, words, lead: count, shape }] : [];
  });
}

interface Parted {
  head?: string[];
  cells: string[][];
}

/** Columns one below the other: a place that is blank in every line parts them, and each has its name above it. */
function partByPlace(header: string | undefined, rows: readonly Row[]): Parted | undefined {
  if (header === undefined || rows.some(({ text }) => text.length > WIDEST || text.includes('\t'))) return undefined;
  const texts = [header, ...rows.map(({ text }) => text)];
  const width = Math.max(...texts.slice(0, 1).map(({ length }) => length), ...rows.map(({ text }) => text.length));
  const filled = new Uint8Array(width);
  for (const text of texts) for (let i = 0; i < text.length; i++) if (text[i] !== ' ') filled[i] = 1;
  const spans: Span[] = [];
  for (let i = 0; i < width; i++) {
    if (!filled[i]) continue;
    const from = i;
    while (i < width && filled[i]) i++;
    const name = header.slice(from, i).trim();
    const before = spans.at(-1);
    const goesOn =
      before &&
      header.slice(before.to, from).length === 1 &&
      !tellApart(header.slice(before.from, before.to), name) &&
      rows.every(({ text }) => blank(text, from, i));
    // What has no name above it, or only a unit, goes on with the column before it, as does a name of several words, and a date.
    if (
      before &&
      (goesOn || cutsTime(rows, before, { from, to: i }) || name === '' || anyUnit(name.replace(/^[([]|[)\]]$/g, '')))
    )
      before.to = i;
    else spans.push({ from, to: i });
  }
  const cut = (text: string): string[] => spans.map(({ from, to }) => text.slice(from, to).trim());
  const head = cut(header);
  const cells = rows.map(({ text }) => cut(text));
  if (spans.length < 2 || !namesFit(head, rows)) return undefined;
  // Two numbers in one cell stand where no name tells them from each other.
  const whens = head.map((name, c) => WHEN.includes(columnOf(c, name).role));
  const double = cells.some((row) => row.some((cell, c) => !whens[c] && /^[\d.,]+\s+[\d.,]+$/.test(cell)));
  const ofTime = (row: readonly string[]): string => row.filter((_, c) => whens[c]).join(' ');
  // Cells below a name of several words that share no edge may be those of several columns.
  const uneven = spans.some((span, c) => /\S\s+\S/.test(head[c]!) && !whens[c] && !shareEdge(rows, span));
  const timed = rows.every(
    ({ words, lead }, i) => ofTime(cells[i]!).replaceAll(/\s+/g, ' ') === words.slice(0, lead).join(' '),
  );
  return double || uneven || !timed || whens.indexOf(false) < 1 ? undefined : { head, cells };
}

/** Whether a place that happens to be blank in every line, name and all, stands within a date: both sides together are a time, not each by itself. */
function cutsTime(rows: readonly Row[], left: Span, right: Span): boolean {
  return rows.every(({ text }) => {
    const isTime = (from: number, to: number): boolean => {
      const words = text.slice(from, to).trim().split(/\s+/);
      return timeWords(words).count === words.length;
    };
    return isTime(left.from, right.to) && !(isTime(left.from, left.to) && isTime(right.from, right.to));
  });
}

/** Whether two names mean two things: only those of one may be words of one name. */
function tellApart(left: string, right: string): boolean {
  const [a, b] = [left, right].map((name) => columnOf(0, name.trim()).role);
  // "Time of day" is one name, and so is "Blood sensor".
  const alike = [['glucose', 'sensor', 'fingerstick', 'value'], WHEN];
  return (
    a !== b && a !== 'ignore' && b !== 'ignore' && !alike.some((roles) => roles.includes(a!) && roles.includes(b!))
  );
}

/** Whether the cells between two places all begin below each other, or all end so. */
function shareEdge(rows: readonly Row[], { from, to }: Span): boolean {
  const cells = rows.map(({ text }) => text.slice(from, to)).filter((cell) => cell.trim() !== '');
  const starts = new Set(cells.map((cell) => cell.length - cell.trimStart().length));
  const ends = new Set(cells.map((cell) => cell.trimEnd().length));
  return starts.size < 2 || ends.size < 2;
}

const blank = (text: string, from: number, to: number): boolean => text.slice(from, to).trim() === '';

/** As many words in every line as there are names; words behind the last column are part of it where it holds words. */
function partByWords(header: string | undefined, rows: readonly Row[]): Parted | undefined {
  const widest = Math.max(...rows.map(({ words, lead }) => words.length - lead));
  const least = Math.min(...rows.map(({ words, lead }) => words.length - lead));
  const names = header === undefined ? [] : namesOf(header);
  const leads = new Set(rows.map(({ lead, shape }) => (shape === SHAPE.stamp ? lead : 1)));
  const [lead = 1, ...others] = leads;
  const parted = names.length - lead === least && others.length === 0;
  const count = header === undefined ? least : parted ? least : names.length - 1;
  if (count < 1 || least < count) return undefined;
  const words = header !== undefined && ['note', 'food', 'exercise', 'medication'].includes(lastRole(names));
  if (widest > count && !words) return undefined;
  const when = (row: Row): string[] => (parted ? row.words.slice(0, lead) : [row.words.slice(0, row.lead).join(' ')]);
  const cells = rows.map((row) => {
    const rest = row.words.slice(row.lead);
    return [...when(row), ...rest.slice(0, count - 1), rest.slice(count - 1).join(' ')];
  });
  if (header === undefined) return { cells };
  return namesFit(names, rows) ? { head: names, cells } : undefined;
}

const lastRole = (names: readonly string[]): string => columnOf(0, names.at(-1) ?? '').role;

/** Names parted by blanks; a unit belongs to the name before it. */
function namesOf(header: string): string[] {
  const names: string[] = [];
  for (const word of header.trim().split(/\s+/)) {
    const unit = anyUnit(word.replace(/^[([]|[)\]]$/g, ''));
    if (unit && names.length > 0) names.push(`${names.pop()} ${word}`);
    else names.push(word);
  }
  return names;
}

/** Whether times are named first, and nothing behind them is named a time; and whether nearly all lines are set alike. */
function namesFit(names: readonly string[], rows: readonly Row[]): boolean {
  const roles = names.map((name, c) => columnOf(c, name).role);
  const last = roles.findLastIndex((role) => WHEN.includes(role));
  const alike = rows.filter(({ shape }) => shape === rows[0]!.shape).length;
  return last >= 0 && roles.slice(0, last + 1).every((role) => WHEN.includes(role)) && alike >= rows.length * SHARE;
}
