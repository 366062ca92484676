import { bytesOf, utf8 } from '../../bytes/text.ts';
import { DAY_MS } from '../../time/calendar.ts';
import { plain } from '../table/vocabulary.ts';
import { afterDate, CLOCK_FLAGS } from './clockCell.ts';
import { packDate, SHAPE, type Stamp } from './stamp.ts';

/** Month names by number; English, Spanish, German, French, Italian, Portuguese, Dutch, Swedish, Finnish, Polish. */
const NAMES: string[] = [
  'january enero januar janvier gennaio janeiro januari tammikuu tammikuuta stycznia styczen ene genn',
  'february febrero februar fevrier febbraio fevereiro februari helmikuu helmikuuta lutego luty fev',
  'march marzo marz mars marco maart maaliskuu maaliskuuta marca marzec mrt maerz mar',
  'april abril avril aprile huhtikuu huhtikuuta kwietnia kwiecien abr avr',
  'may mayo mai maggio maio mei maj toukokuu toukokuuta maja mag',
  'june junio juni juin giugno junho kesakuu kesakuuta czerwca czerwiec giu jun',
  'july julio juli juillet luglio julho heinakuu heinakuuta lipca lipiec lug juil jul',
  'august agosto aout augustus augusti elokuu elokuuta sierpnia sierpien ago',
  'september septiembre septembre settembre setembro syyskuu syyskuuta wrzesnia wrzesien set sept',
  'october octubre oktober octobre ottobre outubro lokakuu lokakuuta pazdziernika pazdziernik okt ott out',
  'november noviembre novembre novembro marraskuu marraskuuta listopada listopad lis',
  'december diciembre dezember decembre dicembre dezembro joulukuu joulukuuta grudnia grudzien dez dic',
];

/** Every name, and its first three letters where only one month starts with them. */
const MONTHS = new Map<string, number>();
const shortForms = new Map<string, Set<number>>();
NAMES.forEach((names, index) => {
  for (const name of names.split(' ')) {
    MONTHS.set(name, index + 1);
    const short = name.slice(0, 3);
    shortForms.set(short, (shortForms.get(short) ?? new Set()).add(index + 1));
  }
});
for (const [short, months] of shortForms) {
  const only = [...months][0];
  if (months.size === 1 && only !== undefined && !MONTHS.has(short)) MONTHS.set(short, only);
}

const DAY_NAME =
  /^\s*(\d{1,2})\.?(?:st|nd|rd|th)?[\s/.-]*(?:de )?([a-z]{3,12})\.?[\s/.,-]*(?:de )?(\d{4}|\d\d)(?!\d)(.*)$/;
const NAME_DAY = /^\s*([a-z]{3,12})\.?[\s/.-]*(\d{1,2})(?:st|nd|rd|th)?[\s/.,-]+(\d{4})(.*)$/;
const YEAR_NAME = /^\s*(\d{4})[\s/.-]*([a-z]{3,12})\.?[\s/.-]*(\d{1,2})(?!\d)(.*)$/;
const WEEK = /^(\d{4})-?w(\d\d)-?([1-7])(.*)$/;
const SPACED = /^(\d{1,2})\. ?(\d{1,2})\. ?(\d{4})(.*)$/;

/** Dates with a month written out, an ISO week date, or blanks between the numbers: the slow road. */
export function readNamedDate(bytes: Uint8Array, from: number, to: number, out: Stamp): number {
  if (to - from > 60 || to - from < 6) return SHAPE.none;
  const text = plain(utf8(bytes, from, to));
  // A weekday in front says nothing more than the date does.
  const body = text.replace(/^[a-z]{2,10}\.?,? +(?=[\da-z])/, (word) =>
    MONTHS.has(word.replace(/[^a-z]/g, '')) ? word : '',
  );
  const week = WEEK.exec(body);
  if (week) return weekDate(Number(week[1]), Number(week[2]), Number(week[3]), week[4] ?? '', out);
  const spaced = SPACED.exec(body);
  // Three numbers with dots and blanks are day, month, year in every language that writes them so.
  if (spaced) return certain(Number(spaced[3]), Number(spaced[2]), Number(spaced[1]), spaced[4] ?? '', out);
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

function named(year: number, name: string, day: number, rest: string, out: Stamp): number {
  const month = MONTHS.get(name);
  return month === undefined ? SHAPE.none : certain(year, month, day, rest, out);
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
