import type { LocalDate } from '../model/glucose.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { once } from './once.ts';

/**
 * How much of a date or value is said. For dates, `full` adds the year, `dated` is day, month and year without the
 * weekday, `brief` the same with a short month, and `plain` day and month; `compact` (Jun 4), `weekday` (Thu), `day` (4)
 * and `month` (June 2031) are for charts.
 */
export type Style = 'short' | 'long' | 'full' | 'dated' | 'brief' | 'plain' | 'compact' | 'weekday' | 'day' | 'month';

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

const DATE_STYLES: Record<Style, Intl.DateTimeFormatOptions> = {
  short: { weekday: 'short', day: 'numeric', month: 'long' },
  long: { weekday: 'long', day: 'numeric', month: 'long' },
  full: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
  dated: { day: 'numeric', month: 'long', year: 'numeric' },
  brief: { day: 'numeric', month: 'short', year: 'numeric' },
  plain: { day: 'numeric', month: 'long' },
  compact: { day: 'numeric', month: 'short' },
  weekday: { weekday: 'short' },
  day: { day: 'numeric' },
  month: { month: 'long', year: 'numeric' },
};

export function localeForms(locale: string): LocaleForms {
  const numberFormat = once((decimals: string) => {
    const [least, most] = decimals.split(' ').map(Number);
    return new Intl.NumberFormat(locale, { minimumFractionDigits: least!, maximumFractionDigits: most! });
  });
  const dateFormat = once(
    (style: Style) => new Intl.DateTimeFormat(locale, { ...DATE_STYLES[style], timeZone: 'UTC' }),
  );
  const clockFormat = once((precision: 'hour' | 'minute') => {
    const hour = new Intl.DateTimeFormat(locale, { hour: 'numeric', timeZone: 'UTC' });
    if (precision === 'hour') return hour;
    const digits = hour.resolvedOptions().hour12 === true ? 'numeric' : '2-digit';
    return new Intl.DateTimeFormat(locale, { hour: digits, minute: '2-digit', timeZone: 'UTC' });
  });
  const twelveHours = once((_: 'clock') => clockFormat('hour').resolvedOptions().hour12 === true);
  const listFormat = once((_: 'and') => new Intl.ListFormat(locale, { type: 'conjunction', style: 'long' }));
  const utc = (date: LocalDate) => Date.parse(`${date}T00:00:00Z`);

  return {
    number(value, least = 0, most = least) {
      // Most numbers of a report are counts, and every locale here writes a short one alike.
      if (least === 0 && value >= 0 && value < 1000 && Number.isInteger(value)) return String(value);
      const text = numberFormat(`${least} ${most}`).format(value);
      // "-0" would say that a rounded-away difference had a direction.
      return /[1-9]/.test(text) ? text.replace('-', '\u2212') : text.replace('-', '');
    },
    date: (date, style) => dateFormat(style).format(utc(date)),
    list: (items) => listFormat('and').format(items),
    clock(minute) {
      const format = clockFormat(minute % 60 === 0 && twelveHours('clock') ? 'hour' : 'minute');
      // No line ends inside a time, and Intl's narrow no-break space is missing from many fonts.
      return format.format(minute * MINUTE_MS).replace(/[ \u202f]/g, '\u00a0');
    },
    hour(minute) {
      const hour = Math.floor(minute / 60);
      return twelveHours('clock') ? ((hour + 11) % 12) + 1 : hour;
    },
  };
}
