import { signsBeside } from '../../charts/eveningSigns.ts';
import { eveningsChart } from '../../charts/evenings.ts';
import { eveningsOf } from '../../charts/eveningsOf.ts';
import { nightBarsChart } from '../../charts/nightBars.ts';
import { eveningsKeyChart } from '../../charts/signKey.ts';
import { deepest } from '../../findings/evidence/deepest.ts';
import { extremes } from '../../findings/evidence/episodes.ts';
import type { FindingId } from '../../findings/index.ts';
import type { LocalDate } from '../../model/glucose.ts';
import type { Block } from '../../model/report.ts';
import { count, heading, held, type PageContext, paragraph, tellAll, word } from '../context.ts';
import { sideHeaded } from './layout.ts';
import { longActing } from './signs.ts';

/** At most two of these are said here, the gravest first; the rest are named as other findings. */
const LOWS: readonly FindingId[] = [
  'very-low',
  'lows-seen',
  'long-lows',
  'lows-clustered',
  'lows-at-night',
  'lows-averages-hide',
  'brief-lows',
  'no-lows-seen',
];
const MOST_SAID = 2;
/** Rows of evenings that are tried, the most first; all else on the side gives way before. */
const ROWS = [14, 12, 10, 9, 8, 7, 6, 5, 4, 3, 2];
/** So many nights stand in a row; a longer period shows its last ones. */
const NIGHTS_SHOWN = 28;

/** The findings about lows that page 1 says: where lows were seen by its own two sentences and rows, else in their words. */
export function lowsSaid({ analysis }: PageContext): FindingId[] {
  const { lows } = analysis.measures;
  if (lows.ok && lows.value.list.length > 0) return ['very-low', 'lows-seen', 'long-lows', 'lows-at-night'];
  const datesOf = (id: FindingId): LocalDate[] | null => {
    const look = analysis.found.find((one) => one.id === id)?.look;
    return look?.case === 'holds' ? look.where.map(({ date }) => date) : null;
  };
  // Short lows that all lay in nights are told with the nights.
  const nights = datesOf('lows-at-night');
  const again = (id: FindingId): boolean =>
    id === 'brief-lows' && nights !== null && (datesOf(id) ?? []).every((date) => nights.includes(date));
  return LOWS.filter((id) => datesOf(id) !== null && !again(id)).slice(0, MOST_SAID);
}

/** In two sentences, then a row for every evening with a low. */
export function lowsFirst(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { lows, nights, coverage } = analysis.measures;
  const line = (text: string): Block => sideHeaded(speaker.say('pages.visit.lowsTitle'), [paragraph(text)]);
  if (!lows.ok) return [line(speaker.say(`why.${lows.why}`))];
  // Silence is never "no lows": where nothing can be told, that is told.
  const { list, level2, night } = lows.value;
  if (list.length === 0) {
    const none = held(context, 'standing-still') ? 'still' : 'none';
    const said = tellAll(context, lowsSaid(context)).join(' ') || speaker.say(`pages.overview.lows.${none}`);
    return [line(said)];
  }
  const longest = list.reduce((most, one) => (one.minutes > most.minutes ? one : most));
  const { extreme } = extremes(list);
  const ofDays = coverage.ok ? coverage.value.daysWithReadings : analysis.timeline.days.length;
  // Where no night was seen, none began at night is no comfort.
  const all = nights.ok ? nights.value.length : 0;
  const seenNights = nights.ok ? nights.value.filter(({ state }) => state !== 'unknown').length : 0;
  const counted = speaker.say('pages.visit.lows', {
    count: count(list.length),
    limit: { q: 'limit', of: 'low' },
    outer: { q: 'limit', of: 'very-low' },
    days: count(new Set(list.map(({ date }) => date)).size),
    of: count(ofDays),
    seen: word(ofDays < analysis.timeline.days.length ? 'some' : 'all'),
    night: count(night),
    // A sentence of its own says that no night had a low.
    nights: word(isCalm(context) ? 'calm' : seenNights === 0 ? 'none' : seenNights < all ? 'some' : 'all'),
    toldNights: count(seenNights),
    allNights: count(all),
    veryLow: count(level2),
    longest: { q: 'minutes', value: longest.minutes },
    lowest: extreme,
    ...deepest(analysis.measures, extreme),
  });
  // A very low glucose that never lasted a quarter of an hour is no low of level 2, and is told all the same.
  const brief = level2 === 0 ? tellAll(context, ['very-low']) : [];
  const said = [counted, ...brief].join(' ');
  const evenings = eveningsOf(list).length;
  const rows = ROWS.filter((most, i) => most <= evenings || ROWS[i + 1] === undefined || ROWS[i + 1]! < evenings);
  const isLong = longActing(context);
  return [
    line(said),
    {
      kind: 'fit',
      gives: 9,
      forms: rows.map((most) => () => [
        { kind: 'chart', dense: true, drawing: eveningsChart(analysis.timeline, list, most, chart, isLong) },
      ]),
    },
    {
      kind: 'fit',
      gives: 2,
      forms: [true, false].map((hours) => () => [
        {
          kind: 'chart',
          dense: true,
          drawing: eveningsKeyChart(signsBeside(analysis.timeline, list, isLong), chart, hours),
        },
      ]),
    },
  ];
}

/** Every night was seen, and none was low. */
function isCalm({ analysis }: PageContext): boolean {
  const { nights } = analysis.measures;
  return nights.ok && nights.value.every(({ state }) => state === 'none-seen');
}

/** How long each night was low. */
export function nightsRow(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { nights } = analysis.measures;
  const title = speaker.say('pages.overview.nights.title');
  if (!nights.ok) return [heading(3, title), paragraph(speaker.say(`why.${nights.why}`))];
  // Where the line on data says that none can be told, a row of question marks says it again.
  if (nights.value.every(({ state }) => state === 'unknown') && held(context, 'nights-without-data')) return [];
  // Where every night was seen and none was low, a sentence says more than a row of nothing.
  if (isCalm(context)) {
    const calm = { low: { q: 'limit' as const, of: 'low' as const }, nights: count(nights.value.length) };
    return [paragraph(speaker.say('pages.visit.nightsCalm', calm), 'strong')];
  }
  const shown = nights.value.slice(-NIGHTS_SHOWN);
  const key = speaker.say('pages.visit.nightsKey', {
    low: { q: 'limit', of: 'low' },
    shown: count(shown.length),
    all: word(shown.length === nights.value.length ? 'yes' : 'no'),
    unknown: count(shown.filter(({ state }) => state === 'unknown').length),
  });
  return [
    {
      kind: 'fit',
      gives: 5,
      forms: [24, 18].map((height) => () => [
        { kind: 'chart', dense: true, title: key, drawing: nightBarsChart(shown, height, chart) },
      ]),
    },
  ];
}
