import { writeFileSync } from 'node:fs';
import { type Forms, type LocaleForms, type Style, toForms } from '../language/locale.ts';
import { REGIONS } from '../language/place.ts';

/*
 * Writes src/language/forms.json from what this Node knows of Unicode's locale data, when a region is added:
 * `npm run forms`. Every form is tried against the engine over all it can say before it is kept.
 */

/** Those of the words without a region, and those of tests. */
const LOCALES = ['en', 'es', 'es-419', ...REGIONS];

const DATES: Record<Style, Intl.DateTimeFormatOptions> = {
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
const STYLES = Object.keys(DATES) as Style[];
const dateFormat = (locale: string, options: Intl.DateTimeFormatOptions) =>
  new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' });

const hourFormat = (locale: string) => dateFormat(locale, { hour: 'numeric' });
const hasTwelveHours = (locale: string) => hourFormat(locale).resolvedOptions().hour12 === true;
const minuteFormat = (locale: string) =>
  dateFormat(locale, { hour: hasTwelveHours(locale) ? 'numeric' : '2-digit', minute: '2-digit' });

/** No line ends inside a time, and a narrow no-break space is missing from many fonts. */
const bound = (text: string): string => text.replace(/[ \u202f]/g, '\u00a0');

function formsOf(locale: string): Forms {
  const names = (options: Intl.DateTimeFormatOptions, type: string, at: number[]) =>
    at.map(
      (one) =>
        dateFormat(locale, options)
          .formatToParts(one)
          .find((part) => part.type === type)!.value,
    );
  // Monday, January 1, 2024 is the first of a week and of a year.
  const days = Array.from({ length: 7 }, (_, i) => Date.UTC(2024, 0, 1 + i));
  const months = Array.from({ length: 12 }, (_, i) => Date.UTC(2024, i, 1));
  const number = new Intl.NumberFormat(locale).formatToParts(12_345_678.9);
  const list = new Intl.ListFormat(locale, { type: 'conjunction', style: 'long' });
  const between = (items: string[]) =>
    list.formatToParts(items).flatMap(({ type, value }) => (type === 'literal' ? [value] : []));
  const clock = (format: Intl.DateTimeFormat) =>
    format
      .formatToParts(Date.UTC(2024, 0, 1, 3, 4))
      .map(({ type, value }) => (type === 'literal' ? bound(value) : `{${type}}`))
      .join('');
  const half = (hour: number) =>
    bound(
      hourFormat(locale)
        .formatToParts(Date.UTC(2024, 0, 1, hour))
        .find(({ type }) => type === 'dayPeriod')!.value,
    );
  return {
    decimal: number.find(({ type }) => type === 'decimal')!.value,
    group: number.find(({ type }) => type === 'group')!.value,
    lakh: number.filter(({ type }) => type === 'integer')[1]!.value.length === 2,
    groupsFrom: new Intl.NumberFormat(locale).format(1234).length > 4 ? 4 : 5,
    weekday: {
      long: names(DATES.long, 'weekday', days),
      short: names(DATES.short, 'weekday', days),
    },
    month: {
      long: names(DATES.plain, 'month', months),
      short: names(DATES.compact, 'month', months),
    },
    date: Object.fromEntries(
      STYLES.map((style) => [
        style,
        dateFormat(locale, DATES[style])
          .formatToParts(days[0])
          .map(({ type, value }) => {
            if (type === 'literal') return value;
            if (type === 'day' && value.length === 2) return '{two-digit day}';
            return type === 'weekday' || type === 'month' ? `{${type} ${DATES[style][type]}}` : `{${type}}`;
          })
          .join(''),
      ]),
    ) as Record<Style, string>,
    clock: clock(minuteFormat(locale)),
    ...(hasTwelveHours(locale) ? { hour: clock(hourFormat(locale)), halves: [half(1), half(13)] } : {}),
    list: [between(['a', 'b', 'c', 'd'])[0]!, between(['a', 'b', 'c']).at(-1)!, between(['a', 'b'])[0]!],
  };
}

/** Compares every form with the engine's own: all days of a leap year, all minutes of a day, numbers, lists. */
function differences(locale: string, forms: LocaleForms): string[] {
  const wrong: string[] = [];
  const same = (got: string, engine: string) => {
    if (got !== engine) wrong.push(`${locale}: "${got}" is "${engine}"`);
  };
  for (const style of STYLES) {
    const format = dateFormat(locale, DATES[style]);
    for (let day = 0; day < 366; day++) {
      const at = Date.UTC(2024, 0, 1 + day);
      same(
        forms.date(new Date(at).toISOString().slice(0, 10) as Parameters<LocaleForms['date']>[0], style),
        format.format(at),
      );
    }
  }
  const [minutes, hours] = [minuteFormat(locale), hourFormat(locale)];
  for (let minute = 0; minute < 1440; minute++) {
    const format = minute % 60 === 0 && hasTwelveHours(locale) ? hours : minutes;
    same(forms.clock(minute), bound(format.format(minute * 60_000)));
  }
  for (const value of [0, 0.05, 0.25, 1.005, 7.5, 99.95, 999, 1000, 1234.5, 9999.996, 12_345.678, 1_234_567.5]) {
    for (const [least, most] of [
      [0, 0],
      [0, 1],
      [1, 1],
      [0, 3],
      [2, 2],
    ] as const) {
      const format = new Intl.NumberFormat(locale, { minimumFractionDigits: least, maximumFractionDigits: most });
      same(forms.number(value, least, most), format.format(value));
      same(
        forms.number(-value, least, most).replace('\u2212', '-'),
        format.format(-value).replace(/^-(?=[0.,]*$)/, ''),
      );
    }
  }
  const list = new Intl.ListFormat(locale, { type: 'conjunction', style: 'long' });
  const items = ['7 June', 'insulina', 'hierro', 'hilo', 'Ida', 'x'];
  for (let n = 0; n <= items.length; n++) {
    same(forms.list(items.slice(0, n)), list.format(items.slice(0, n)));
    same(forms.list(items.slice(-n)), list.format(items.slice(-n)));
  }
  return wrong;
}

/** The text of forms.json; locales that write everything alike share a row. @throws where a form differs from the engine's. */
export function formsText(): string {
  const rows = new Map<string, string[]>();
  for (const locale of LOCALES) {
    const forms = formsOf(locale);
    const wrong = differences(locale, toForms(locale, forms));
    if (wrong.length > 0) throw new Error(wrong.slice(0, 20).join('\n'));
    const text = JSON.stringify(forms);
    rows.set(text, [...(rows.get(text) ?? []), locale]);
  }
  const forms = [...rows].map(([text, locales]) => [locales.join(' '), JSON.parse(text)]);
  return `${JSON.stringify({ cldr: process.versions.cldr, forms: Object.fromEntries(forms) }, null, 1)}\n`;
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  writeFileSync(new URL('../language/forms.json', import.meta.url), formsText());
}
