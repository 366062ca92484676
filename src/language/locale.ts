import type { LocalDate } from '../model/glucose.ts';
import { once } from './once.ts';

/**
 * How much of a date or value is said. For dates, `full` adds the year, `dated` is day, month and year without the
 * weekday, and `plain` day and month; `compact` (Jun 4), `weekday` (Thu) and `day` (4) are for charts.
 */
export type Style = 'short' | 'long' | 'full' | 'dated' | 'plain' | 'compact' | 'weekday' | 'day';

/** Numbers, dates and lists as one locale writes them. The host's own locale and zone never show through. */
export interface LocaleForms {
  /** At most `most` and at least `least` decimals; true minus sign. */
  number(value: number, least?: number, most?: number): string;
  date(date: LocalDate, style: Style): string;
  /** Day and month, for lists of dates. */
  dayAndMonth(date: LocalDate): string;
  list(items: string[]): string;
  /** A minute of the day, 0 … 1439, with its minutes left out on the hour where the clock has 12 hours. */
  clock(minute: number): string;
}

const MINUTE_MS = 60_000;

const DATE_STYLES: Record<Style, Intl.DateTimeFormatOptions> = {
  short: { weekday: 'short', day: 'numeric', month: 'long' },
  long: { weekday: 'long', day: 'numeric', month: 'long' },
  full: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
  dated: { day: 'numeric', month: 'long', year: 'numeric' },
  plain: { day: 'numeric', month: 'long' },
  compact: { day: 'numeric', month: 'short' },
  weekday: { weekday: 'short' },
  day: { day: 'numeric' },
};

export function localeForms(locale: string): LocaleForms {
  const numberFormat = once((decimals: string) => {
    const [least, most] = decimals.split(' ').map(Number);
    return new Intl.NumberFormat(locale, { minimumFractionDigits: least!, maximumFractionDigits: most! });
  });
  const dateFormat = once((style: Style | 'hour' | 'minute') => {
    if (style === 'hour') return new Intl.DateTimeFormat(locale, { hour: 'numeric', timeZone: 'UTC' });
    if (style === 'minute') {
      return new Intl.DateTimeFormat(locale, { hour: 'numeric', minute: '2-digit', timeZone: 'UTC' });
    }
    return new Intl.DateTimeFormat(locale, { ...DATE_STYLES[style], timeZone: 'UTC' });
  });
  const listFormat = once((_: 'and') => new Intl.ListFormat(locale, { type: 'conjunction', style: 'long' }));
  const utc = (date: LocalDate) => Date.parse(`${date}T00:00:00Z`);

  return {
    number(value, least = 0, most = least) {
      const text = numberFormat(`${least} ${most}`).format(value);
      // "-0" would say that a rounded-away difference had a direction.
      return /[1-9]/.test(text) ? text.replace('-', '\u2212') : text.replace('-', '');
    },
    date: (date, style) => dateFormat(style).format(utc(date)),
    dayAndMonth: (date) => dateFormat('plain').format(utc(date)),
    list: (items) => listFormat('and').format(items),
    clock(minute) {
      const minutes = dateFormat('minute');
      const twelve = minutes.resolvedOptions().hour12 === true;
      const format = twelve && minute % 60 === 0 ? dateFormat('hour') : minutes;
      // Intl's narrow no-break space is missing from many fonts.
      return format.format(minute * MINUTE_MS).replaceAll('\u202f', '\u00a0');
    },
  };
}
