import type { LocalDate } from '../model/glucose.ts';
import { onceUpTo } from '../once.ts';
import { weekdayOf } from '../time/calendar.ts';
import shipped from './forms.json' with { type: 'json' };

/**
 * How much of a date or value is said. For dates, `full` adds the year, `dated` is day, month and year without the
 * weekday, `brief` the same with a short month, and `plain` day and month; `compact` (Jun 4), `weekday` (Thu), `day` (4)
 * and `month` (June 2031) are for charts.
 */
export type Style = 'short' | 'long' | 'full' | 'dated' | 'brief' | 'plain' | 'compact' | 'weekday' | 'day' | 'month';

/*
 * What Unicode's locale data say of the places papers are read in travels with the program: engines carry other versions of them,
 * and the same paper would name a day or an hour otherwise. `forms.json` is written by `npm run forms`.
 */

/** How one locale writes numbers, dates, times of day and lists. */
export interface Forms {
  decimal: string;
  group: string;
  /** Groups of two above the thousands: 1,00,000. */
  lakh: boolean;
  /** Digits from which groups are marked. */
  groupsFrom: number;
  /** Monday first. */
  weekday: { long: string[]; short: string[] };
  month: { long: string[]; short: string[] };
  date: Record<Style, string>;
  clock: string;
  /** Where the clock has 12 hours: a full hour, and the names of the day's halves. */
  hour?: string;
  halves?: string[];
  /** Between items, before the last of several, and between two. */
  list: string[];
}

/** Numbers, dates and lists as one locale writes them. The host's own locale and zone never show through. */
export interface LocaleForms {
  /** At most `most` and at least `least` decimals; true minus sign. */
  number(value: number, least?: number, most?: number): string;
  date(date: LocalDate, style: Style): string;
  list(items: string[]): string;
  /** A minute of the day, 0 … 1439, with its minutes left out on the hour where the clock has 12 hours. */
  clock(minute: number): string;
  /** The hour that `clock` shows: 1 at 01:20, and at 13:20 where the clock has 12 hours. */
  hour(minute: number): number;
}

/** Letters of YYYY-MM-DD, and how many dates a locale keeps as they were said: a report says each many times. */
const DATE = 10;
const DATES = 4000;

function formsOf(locale: string): Forms {
  const row = Object.entries<Forms>(shipped.forms).find(([locales]) => locales.split(' ').includes(locale));
  if (!row) throw new Error(`No forms for the locale "${locale}" (npm run forms).`);
  return row[1];
}

export function localeForms(locale: string): LocaleForms {
  return toForms(locale, formsOf(locale));
}

/** For who makes the table as well. */
export function toForms(locale: string, forms: Forms): LocaleForms {
  const { halves } = forms;
  const clocks: string[] = [];
  const dates = onceUpTo(DATES, (asked) => {
    const date = asked.slice(0, DATE) as LocalDate;
    const [year, month, day] = date.split('-').map(Number) as [number, number, number];
    return filled(forms.date[asked.slice(DATE) as Style], {
      year,
      day,
      'two-digit day': date.slice(8),
      'month long': forms.month.long[month - 1]!,
      'month short': forms.month.short[month - 1]!,
      'weekday long': forms.weekday.long[weekdayOf(date) - 1]!,
      'weekday short': forms.weekday.short[weekdayOf(date) - 1]!,
    });
  });
  const hourShown = (hour: number): number => (halves ? ((hour + 11) % 12) + 1 : hour);
  return {
    number(value, least = 0, most = least) {
      const [whole, decimals = ''] = rounded(Math.abs(value), most).split('.') as [string, string?];
      const kept = decimals.slice(0, least) + decimals.slice(least).replace(/0+$/, '');
      const text = grouped(whole, forms) + (kept === '' ? '' : forms.decimal + kept);
      // "-0" would say that a rounded-away difference had a direction.
      return value < 0 && /[1-9]/.test(text) ? `\u2212${text}` : text;
    },
    date: (date, style) => dates(date + style),
    list: (items) => listed(items, forms.list, locale),
    clock(minuteOfDay) {
      const known = clocks[minuteOfDay];
      if (known !== undefined) return known;
      const [hour, minute] = [Math.floor(minuteOfDay / 60), minuteOfDay % 60];
      const text = filled(minute === 0 && forms.hour !== undefined ? forms.hour : forms.clock, {
        hour: halves ? hourShown(hour) : String(hour).padStart(2, '0'),
        minute: String(minute).padStart(2, '0'),
        dayPeriod: halves?.[hour < 12 ? 0 : 1] ?? '',
      });
      // A chart may ask for a minute beyond the day, or a part of one.
      if (Number.isInteger(minuteOfDay) && minuteOfDay >= 0 && minuteOfDay < 1440) clocks[minuteOfDay] = text;
      return text;
    },
    hour: (minuteOfDay) => hourShown(Math.floor(minuteOfDay / 60)),
  };
}

/** Half away from zero as the number is written: 1.005 becomes 1.01, though its double lies a little below. */
function rounded(value: number, decimals: number): string {
  const text = String(value);
  if (decimals === 0 && Number.isSafeInteger(value)) return text;
  if (text.includes('e')) return value.toFixed(decimals);
  const digits = String(Math.round(Number(`${text}e${decimals}`))).padStart(decimals + 1, '0');
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

function filled(form: string, values: Record<string, string | number>): string {
  return form.replace(/\{([a-zA-Z -]+)\}/g, (_, name: string) => String(values[name]));
}

function grouped(whole: string, { group, lakh, groupsFrom }: Forms): string {
  if (whole.length < groupsFrom) return whole;
  const places = lakh ? /\d(?=(?:\d{2})*\d{3}$)/g : /\d(?=(?:\d{3})+$)/g;
  return whole.replace(places, (digit) => digit + group);
}

/** Before a spoken i Spanish says "e" for "y", but not before hia and hie (Unicode CLDR, list patterns). */
const SPOKEN_I = /^(?:i|hi(?![ae]))/i;

function listed(items: string[], [comma, and, two]: string[], locale: string): string {
  const last = items.at(-1) ?? '';
  if (items.length < 2) return last;
  const before = items.slice(0, -1).join(comma);
  const word = items.length === 2 ? two! : and!;
  return before + (locale.startsWith('es') && SPOKEN_I.test(last) ? word.replace('y', 'e') : word) + last;
}
