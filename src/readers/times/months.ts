import { bytesOf, utf8 } from '../../bytes/text.ts';
import { DAY_MS } from '../../time/calendar.ts';
import { plain } from '../table/vocabulary.ts';
import { afterDate, CLOCK_FLAGS } from './clockCell.ts';
import { MONTH_NAMES } from './monthNames.ts';
import { packDate, SHAPE, type Stamp } from './stamp.ts';

const MONTHS = new Map<string, number>(
  MONTH_NAMES.flatMap((names, index) => names.split(' ').map((name) => [plain(name), index + 1] as const)),
);
const NAMES = [...MONTHS];

/** The month of a name, or of a beginning that fits only one; 0 for any other word. */
function monthOf(name: string): number {
  const known = MONTHS.get(name);
  if (known !== undefined || name.length < 3) return known ?? 0;
  const fitting = new Set(NAMES.filter(([whole]) => whole.startsWith(name)).map(([, month]) => month));
  const [only = 0, ...others] = fitting;
  const month = others.length > 0 ? 0 : only;
  // A column of dates has few such words; one of free text must not grow the table without end.
  if (MONTHS.size < 2000) MONTHS.set(name, month);
  return month;
}

const LETTERS = "[\\p{L}\\p{M}][\\p{L}\\p{M}'’׳]{1,23}";
const DAY_NAME = new RegExp(
  `^\\s*(\\d{1,2})\\.?(?:st|nd|rd|th)?[\\s/.-]*(?:de )?(${LETTERS})\\.?[\\s/.,-]*(?:de )?(\\d{4}|\\d\\d)(?!\\d)(.*)$`,
  'u',
);
const NAME_DAY = new RegExp(`^\\s*(${LETTERS})\\.?[\\s/.-]*(\\d{1,2})(?:st|nd|rd|th)?[\\s/.,-]+(\\d{4})(.*)$`, 'u');
const YEAR_NAME = new RegExp(`^\\s*(\\d{4})[\\s/.-]*(${LETTERS})\\.?[\\s/.-]*(\\d{1,2})(?!\\d)(.*)$`, 'u');
const WEEK = /^(\d{4})-?w(\d\d)-?([1-7])(.*)$/;
const SPACED = /^(\d{1,2})\. ?(\d{1,2})\. ?(\d{4})(.*)$/;
const YEAR_SPACED = /^(\d{4})\. ?(\d{1,2})\. ?(\d{1,2})\.?(?!\d)(.*)$/;
/** Year, month and day each behind its number: Chinese, Japanese, Korean. */
const SIGNS = /^(\d{4})\s?[年년]\s?(\d{1,2})\s?[月월]\s?(\d{1,2})\s?[日일号號]?(.*)$/u;

/** Dates with a month written out, an ISO week date, or blanks between the numbers: the slow road. */
export function readNamedDate(bytes: Uint8Array, from: number, to: number, out: Stamp): number {
  if (to - from > 60 || to - from < 6) return SHAPE.none;
  // Every such date has a digit. A header has none, and its words need not be looked at by patterns that are dear to build.
  if (!digitOrForeign(bytes, from, to)) return SHAPE.none;
  const written = utf8(bytes, from, to);
  const signs = SIGNS.exec(written.normalize('NFC'));
  if (signs) return certain(Number(signs[1]), Number(signs[2]), Number(signs[3]), signs[4] ?? '', out);
  const text = plain(written);
  // A weekday in front says nothing more than the date does.
  const body = text.replace(/^[\p{L}\p{M}]{2,12}\.?,? +(?=[\d\p{L}])/u, (word) =>
    monthOf(word.replace(/[.,\s]/g, '')) > 0 ? word : '',
  );
  const week = WEEK.exec(body);
  if (week) return weekDate(Number(week[1]), Number(week[2]), Number(week[3]), week[4] ?? '', out);
  const spaced = SPACED.exec(body);
  // Three numbers with dots and blanks are day, month, year in every language that writes them so.
  if (spaced) return certain(Number(spaced[3]), Number(spaced[2]), Number(spaced[1]), spaced[4] ?? '', out);
  const yearSpaced = YEAR_SPACED.exec(body);
  if (yearSpaced)
    return certain(Number(yearSpaced[1]), Number(yearSpaced[2]), Number(yearSpaced[3]), yearSpaced[4] ?? '', out);
  const yearFirst = YEAR_NAME.exec(body);
  if (yearFirst) return named(Number(yearFirst[1]), yearFirst[2]!, Number(yearFirst[3]), yearFirst[4] ?? '', out);
  const dayFirst = DAY_NAME.exec(body);
  if (dayFirst) {
    const year = Number(dayFirst[3]);
    return named(year < 100 ? 2000 + year : year, dayFirst[2]!, Number(dayFirst[1]), dayFirst[4] ?? '', out);
  }
  const nameFirst = NAME_DAY.exec(body);
  if (nameFirst) return named(Number(nameFirst[3]), nameFirst[1]!, Number(nameFirst[2]), nameFirst[4] ?? '', out);
  return SHAPE.none;
}

function digitOrForeign(bytes: Uint8Array, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (bytes[i]! >= 0x80 || (bytes[i]! >= 0x30 && bytes[i]! <= 0x39)) return true;
  return false;
}

function named(year: number, name: string, day: number, rest: string, out: Stamp): number {
  const month = monthOf(name);
  return month === 0 ? SHAPE.none : certain(year, month, day, rest, out);
}

function certain(year: number, month: number, day: number, rest: string, out: Stamp): number {
  out.date = packDate(year, month, day);
  const tail = bytesOf(rest.trimEnd());
  return afterDate(tail, 0, tail.length, out);
}

function weekDate(year: number, week: number, day: number, rest: string, out: Stamp): number {
  // ISO 8601: week 1 holds 4 January; weeks start on Monday.
  const fourth = Date.UTC(year, 0, 4);
  const monday = fourth - ((new Date(fourth).getUTCDay() + 6) % 7) * DAY_MS;
  const at = new Date(monday + ((week - 1) * 7 + day - 1) * DAY_MS);
  if (week < 1 || week > 53) out.flags |= CLOCK_FLAGS.impossible;
  return certain(at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate(), rest.toUpperCase(), out);
}
