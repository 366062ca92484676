import { fieldsIn } from '../table/evenRows.ts';
import { columnOf } from '../table/header.ts';
import { SHAPE, type Stamp } from '../times/stamp.ts';
import { linesIn, mapLines, quoted, shapeOf, stampOf, timeWords } from './lines.ts';

/** A heading is a date and nothing else; longer lines are sentences (ours). */
const LONGEST = 48;
/** Minutes from row to row that go on over a heading: a page ends within a day, and its date may be that of print (ours). */
const GOES_ON = 30;
const WHEN: readonly string[] = ['time', 'date', 'clock'];

/** The date that a line says and nothing else, whatever parts columns behind it. */
export function headingOf(line: string, delimiter: string): string | undefined {
  const text = line
    .replaceAll(delimiter, ' ')
    .replace(/^[\s"#*=-]+|[\s":*=-]+$/g, '')
    .replaceAll(/\s+/g, ' ');
  // Some call the line a day before they say which.
  const named = /^(\p{L}{2,12}) ?: ?(.+)$/u.exec(text);
  const date = named && ['date', 'time'].includes(columnOf(0, named[1]!).role) ? named[2]! : text;
  if (date.length > LONGEST) return undefined;
  if (shapeOf(date) === SHAPE.day) return date;
  // A weekday in front says nothing more than the date does.
  const bare = date.replace(/^[\p{L}\p{M}]{2,12}\.?,? (?=\d)/u, '');
  return bare !== date && shapeOf(bare) === SHAPE.day ? bare : undefined;
}

/**
 * Times of day under headings that say the day, as rows that each have its date in front. Undefined where rows have dates of their
 * own or no times; a clock whose day nobody tells, where one heading alone may be the day of print, the hours under one heading pass
 * midnight or go on under the next, or days come again or run both ways, as those of two people and of pages do.
 */
export function datedRows(
  bytes: Uint8Array,
  delimiter: string,
): { bytes: Uint8Array; days: number } | { clock: string; line: number } | undefined {
  const lines = linesIn(bytes);
  // A cell over several lines is none of a log under headings.
  if (lines.some((line) => line.split('"').length % 2 === 0)) return undefined;
  const dates = new Map<number, string>();
  const days = new Set<string>();
  let current = '';
  let order = 0;
  let before = Number.NaN;
  let step = 0;
  let changed = false;
  let first: { clock: string; line: number } | undefined;
  let untold: { clock: string; line: number } | undefined;
  for (const [i, line] of lines.entries()) {
    const heading = line.length < 200 ? headingOf(line, delimiter) : undefined;
    if (heading !== undefined) {
      changed ||= heading !== current;
      current = heading;
      continue;
    }
    const found = clockIn(line, delimiter);
    if (found === 'dated') return undefined;
    if (found === undefined) {
      // A date with more behind it may be the heading of a day, with a remark.
      const words = line
        .replaceAll(delimiter, ' ')
        .replaceAll(/[:,](?=\s|$)/g, '')
        .trim()
        .split(/\s+/, 8);
      if (timeWords(words).shape === SHAPE.day && !/^\d+$/.test(words[0]!)) current = '';
      continue;
    }
    const { minute, text } = found;
    first ??= { clock: text, line: i + 1 };
    let certain = current !== '';
    const on = minute - before;
    if (changed) {
      const goesOn = step !== 0 && Math.abs(step) <= GOES_ON && on * Math.sign(step) > 0 && Math.abs(on) <= GOES_ON;
      if (days.has(current) || goesOn) certain = false;
      step = 0;
    } else if (on !== 0 && !Number.isNaN(on)) {
      // Rows of one time may follow each other; all days run one way.
      if (order !== 0 && Math.sign(on) !== order) certain = false;
      order = Math.sign(on);
      step = on;
    }
    changed = false;
    before = minute;
    dates.set(i, current);
    days.add(current);
    if (!certain) untold ??= { clock: text, line: i + 1 };
  }
  if (untold || days.size < 2) return untold ?? first;
  if (!runOneWay([...days])) return first;
  return {
    bytes: mapLines(bytes, (line, i) => {
      const date = dates.get(i);
      if (date !== undefined) return `${quoted(date)}${delimiter}${line}`;
      return isNames(line, delimiter) ? `Date${delimiter}${line}` : line;
    }),
    days: days.size,
  };
}

/** Whether dates follow each other one way, by the order of day and month in which they do. */
function runOneWay(dates: readonly string[]): boolean {
  const runs = (numberOf: (stamp: Stamp) => number): boolean => {
    const numbers = dates.map((date) => numberOf(stampOf(date)));
    const signs = new Set(numbers.slice(1).map((number, i) => Math.sign(number - numbers[i]!)));
    return signs.size < 2;
  };
  const open = dates.filter((date) => stampOf(date).open).length;
  if (open === 0) return runs(({ date }) => date);
  if (open < dates.length) return true;
  const parts = ({ date }: Stamp): [number, number, number] => [date >>> 21, (date >>> 14) & 127, date & 16383];
  const number = (year: number, month: number, day: number): number => (year * 100 + month) * 100 + day;
  return (
    runs((stamp) => number(parts(stamp)[2], parts(stamp)[1], parts(stamp)[0])) ||
    runs((stamp) => number(parts(stamp)[2], parts(stamp)[0], parts(stamp)[1])) ||
    runs((stamp) => number(...parts(stamp)))
  );
}

/** Minutes of the day in the one cell that tells a time; `dated` where a cell tells the day itself. */
function clockIn(line: string, delimiter: string): { minute: number; text: string } | 'dated' | undefined {
  let found: { minute: number; text: string } | undefined;
  for (const cell of fieldsIn(line, delimiter).slice(0, 4)) {
    const text = cell.replaceAll('"', '').trim();
    const shape = shapeOf(text);
    if (shape === SHAPE.stamp || (shape === SHAPE.day && !/^\d+$/.test(text))) return 'dated';
    const clock = /^(\d{1,2})[:.h](\d\d)(?![.,\d])(?:[:.](\d\d))?(.*)$/.exec(text);
    if (found || shape !== SHAPE.clock || !clock) continue;
    const half = /p/i.test(clock[4]!) ? 12 : 0;
    const hour = /[ap]/i.test(clock[4]!) ? (Number(clock[1]) % 12) + half : Number(clock[1]);
    found = { minute: hour * 60 + Number(clock[2]) + Number(clock[3] ?? 0) / 60, text };
  }
  return found;
}

/** Names of columns, a time's among them. */
function isNames(line: string, delimiter: string): boolean {
  const cells = fieldsIn(line, delimiter);
  return cells.length > 1 && cells.some((cell, c) => WHEN.includes(columnOf(c, cell.replaceAll('"', '').trim()).role));
}
