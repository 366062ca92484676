import type { Choice } from '../../model/input.ts';
import type { IssueBook } from '../book.ts';
import type { Hints } from '../hints.ts';
import type { CheckedSettings } from '../reading.ts';
import { fitDelimiters, hintedDelimiter } from '../table/delimiter.ts';
import { partBlanks } from './blanks.ts';
import { datedRows, headingOf } from './dayHeadings.ts';
import { firstLines, timeWords } from './lines.ts';
import { partPairs } from './pairs.ts';
import { clockedRows, countedTimes, countsBack } from './sinceStart.ts';
import { yearedRows, yearlessDates } from './yearless.ts';

/** Larger texts are not looked at line by line (ours): a year of readings every minute takes 20 million bytes. */
const LARGEST = 64_000_000;
const PARTING = /[,;\t|]/;
/** A number of its own with a decimal comma, of a limit too: `≤2,2`. */
const DECIMAL = /(?<=\s\p{Sm}{0,2})\d{1,3},\d+(?=\s|$)/gu;
/** A time, then a name with its value. */
const PAIR = /^\s*\d[^=]*[\s,;][\p{L}_][\p{L}\p{N}_.-]*\s*=\s*[^\s=]/u;
/** Lines of the first that may hold such a sign by chance, and those that must begin with a time (ours). */
const FEW = 0.1;
const TIMED = 0.5;
const HEAD = 8192;

export interface SetOut {
  bytes: Uint8Array;
  /** What parted the columns, where it was no delimiter. */
  parted?: 'blanks' | 'pairs';
  /** Lines that were put above the text. */
  above: number;
  /** Something is asked for, and nothing can be read before it is answered. */
  open: boolean;
}

/**
 * A text that people write by hand, brought into rows of which each has its columns and its whole time: columns parted by blanks,
 * `name=value`, days as headings, time counted from a start, dates without a year. Any other text is left as it is.
 */
export function setOut(
  bytes: Uint8Array,
  settings: CheckedSettings,
  hints: Hints,
  book: IssueBook,
  choices: Choice[],
): SetOut {
  const out: SetOut = { bytes, above: 0, open: false };
  if (bytes.length > LARGEST) return out;
  let lines = firstLines(bytes);
  const pairs = lines.filter((line) => line.includes('=') && PAIR.test(line)).length > 1 ? partPairs(bytes) : undefined;
  const parted = pairs ?? (mayBePartedByBlanks(lines) ? partBlanks(bytes) : undefined);
  if (parted) {
    out.bytes = parted;
    out.parted = pairs ? 'pairs' : 'blanks';
    out.above = pairs ? 1 : 0;
    lines = firstLines(parted);
  }
  const last = lines.findLast((line) => line.trim() !== '') ?? '';
  const delimiter = (): string => settings.layout?.delimiter ?? delimiterOf(out.bytes, out.parted !== undefined);
  if (lines.some((line) => mayBeHeading(line) && headingOf(line, delimiter()) !== undefined)) {
    const dated = datedRows(out.bytes, delimiter());
    if (dated && 'clock' in dated) {
      out.open = true;
      book.add('days-not-said', 'refusal', dated.line, { actual: dated.clock });
      return out;
    }
    if (dated) {
      out.bytes = dated.bytes;
      choices.push({ id: 'day-headings', value: dated.days, by: 'file' });
      return out;
    }
  }
  if (mayCount(last)) count(out, lines, delimiter(), settings, book, choices);
  else if (mayLackYear(last)) fillYears(out, lines, delimiter(), settings, hints, book, choices);
  return out;
}

function mayBePartedByBlanks(lines: readonly string[]): boolean {
  const filled = lines.filter((line) => line.trim() !== '');
  const parted = (line: string): boolean => PARTING.test(line) && PARTING.test(line.replaceAll(DECIMAL, ''));
  if (filled.filter(parted).length > filled.length * FEW) return false;
  const timed = filled.filter((line) => timeWords(line.trim().split(/\s+/, 8)).count > 0);
  return timed.length >= filled.length * TIMED && timed.length > 1;
}

/** Short, with a number and without a time of day. */
const mayBeHeading = (line: string): boolean =>
  line.length > 5 && line.length < 80 && /\d/.test(line) && !/\d:\d/.test(line);

/** Neither a clock nor a date nor a long number stands in a row that counts. */
const mayCount = (line: string): boolean =>
  /\d/.test(line) && !/\d:\d|(?<![\d.,])\d{8}|\d[-/.]\d{1,2}[-/.]\d/.test(line);

const mayLackYear = (line: string): boolean =>
  !/(?<!\d)(?:19|20)\d\d(?!\d)|\d[-/.]\d{1,2}[-/.]\d/.test(line) &&
  /(?<![\d:.,/-])\d{1,2}[./-]\d{1,2}\.?(?![\d:.])|\d{1,2}\.?[\s-]*\p{L}{3}|\p{L}{3}\.?\s*\d{1,2}(?!\d)/u.test(line);

function delimiterOf(bytes: Uint8Array, tabs: boolean): string {
  if (tabs) return '\t';
  const head = bytes.subarray(0, HEAD);
  return String.fromCharCode(hintedDelimiter(head) ?? fitDelimiters(head).fits[0]?.delimiter ?? 0x2c);
}

function count(
  out: SetOut,
  lines: readonly string[],
  delimiter: string,
  { layout, today }: CheckedSettings,
  book: IssueBook,
  choices: Choice[],
): void {
  const counted = countedTimes(lines, delimiter, today);
  if (!counted) return;
  const start = counted.start?.text ?? layout?.start;
  if (start === undefined) {
    out.open = true;
    book.add('start-not-said', 'refusal', counted.line + 1, {
      actual: counted.name,
      question: { of: 'layout', field: 'start', answer: JSON.stringify({ start: '…' }) },
    });
    return;
  }
  const back = countsBack(out.bytes, delimiter, counted);
  if (back !== undefined) {
    out.open = true;
    book.add('count-runs-back', 'refusal', back, { actual: counted.name });
    return;
  }
  book.add('counted-times', 'note', counted.line + 1, { actual: counted.name });
  out.bytes = clockedRows(out.bytes, delimiter, counted, start, today);
  choices.push({
    id: 'start',
    value: start.slice(0, 40),
    by: counted.start ? 'file' : 'user',
    ...(counted.start ? { evidence: { is: 'line', line: counted.start.line } } : {}),
  });
}

function fillYears(
  out: SetOut,
  lines: readonly string[],
  delimiter: string,
  { layout, dateOrder }: CheckedSettings,
  hints: Hints,
  book: IssueBook,
  choices: Choice[],
): void {
  const dates = yearlessDates(lines, delimiter);
  if (!dates) return;
  const year = layout?.year;
  const order = dateOrder ?? layout?.dateOrder ?? hints.order?.order;
  if (year === undefined) {
    out.open = true;
    book.add('year-not-said', 'refusal', dates.line + 2, {
      actual: dates.sample,
      question: { of: 'layout', field: 'year', answer: JSON.stringify({ year: '…' }) },
    });
    return;
  }
  const filled = yearedRows(out.bytes, delimiter, dates, year, order);
  if (filled === 'order') {
    out.open = true;
    book.add('year-turns-unclear', 'refusal', dates.line + 2, {
      actual: dates.sample,
      question: { of: 'day-order', answer: 'day-first' },
    });
    return;
  }
  if ('unclear' in filled) {
    out.open = true;
    book.add('years-unclear', 'refusal', filled.unclear + 1, { actual: dates.sample });
    return;
  }
  out.bytes = filled.bytes;
  choices.push({ id: 'year', value: year, by: 'user' });
}
