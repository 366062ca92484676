import type { MgPerDl } from '../model/glucose.ts';
import type { Cell } from '../model/report.ts';
import type { VisitNumber, VisitRow, VisitTrend } from '../model/visits.ts';
import {
  columnsOf,
  count,
  denseTable,
  dotted,
  heading,
  type PageContext,
  type PageMaker,
  paragraph,
  word,
  yearOf,
} from './context.ts';
import { agreedLines } from './visit/lastTime.ts';

/** One before this would only say again what then and now says. */
const LEAST_SHOWN = 3;
/** Of 100 people with usual days whose time in range rises by 8 points over four visits of 28 days, so many are told it (tests/visits/simulated.json). */
const POWER = 33;

/** A row a visit, from three on, and the one line through them. */
export const visitByVisit: PageMaker = (context) => {
  const { speaker, analysis } = context;
  const found = analysis.measures.visitByVisit;
  if (!found.ok || found.value.rows.length < LEAST_SHOWN) return null;
  const { rows, trend } = found.value;
  const title = speaker.say('pages.visitByVisit.title');
  const column = (name: 'visit' | 'days' | 'inRange' | 'low' | 'mean' | 'nights') =>
    speaker.say(`pages.visitByVisit.columns.${name}`, { unit: word(speaker.unit) });
  return {
    id: 'visit-by-visit',
    title,
    blocks: [
      heading(1, title),
      paragraph(speaker.say('pages.visitByVisit.about')),
      paragraph(trendSaid(context, trend), 'strong'),
      denseTable(
        title,
        columnsOf(
          column,
          ['visit', 0.31],
          ['days', 0.09],
          ['inRange', 0.15],
          ['low', 0.15],
          ['mean', 0.15],
          ['nights', 0.15],
        ),
        rows.flatMap((row, i) => [cells(context, row), ...(i < rows.length - 1 ? [between(context, row)] : [])]),
      ),
      paragraph(speaker.say('pages.visitByVisit.power', { power: count(POWER) }), 'small'),
    ],
  };
};

/** The line through time in range in a sentence, or why there is none. */
export function trendSaid({ speaker }: PageContext, trend: VisitTrend): string {
  if (trend.case === 'none') return speaker.say(`pages.visitByVisit.trend.${trend.why}`);
  const { per30Days, low, high, visits, verdict } = trend;
  const sure = verdict === 'more-than-noise';
  const points = (share: number, sign: boolean) => {
    const text = speaker.number(Math.abs(share) * 100, 1);
    return word(sign ? `${share < 0 ? '\u2212' : '+'}${text}` : text);
  };
  const params = {
    visits: count(visits),
    points: points(per30Days, !sure),
    low: points(low, true),
    high: points(high, true),
  };
  return sure
    ? speaker.say('pages.visitByVisit.trend.told', { ...params, way: word(per30Days > 0 ? 'more' : 'less') })
    : speaker.say('pages.visitByVisit.trend.notTold', params);
}

function cells({ speaker }: PageContext, row: VisitRow): Cell[] {
  const { from, to, numbers } = row;
  const ranged = (number: VisitNumber | null, say: (value: number) => string): Cell => {
    if (number === null) return { text: '–' };
    const { value, low, high } = number;
    if (low === null || high === null) return { text: say(value) };
    const range = speaker.say('pages.bandsTable.range', { low: word(say(low)), high: word(say(high)) });
    return { text: `${say(value)} (${range.replaceAll(' ', '\u00a0')})` };
  };
  const share = (value: number) => speaker.value({ q: 'share', value });
  const mean = (value: number) => speaker.value({ q: 'glucose', value: value as MgPerDl }, 'short');
  const remarks = [
    ...(row.pauseDays === null ? [] : [speaker.say('pages.visitByVisit.pause', { days: count(row.pauseDays) })]),
    ...row.differs.map((what) => speaker.say(`pages.visitByVisit.differs.${what}`)),
  ].filter((text) => text !== '');
  const period = speaker.say('pages.bandsTable.range', {
    low: word(speaker.value({ q: 'date', value: from }, yearOf(from, to))),
    high: word(speaker.value({ q: 'date', value: to }, 'dated')),
  });
  return [
    { text: dotted([period, ...remarks]), strong: true },
    { text: speaker.say('pages.visitByVisit.days', { full: count(row.fullDays), days: count(row.days) }) },
    ranged(numbers.inRangeShare, share),
    ranged(numbers.lowShare, share),
    ranged(numbers.meanMgPerDl, mean),
    ranged(numbers.nightsLowShare, share),
  ];
}

/** What was agreed at the end of a visit, over the whole width before the row of the next. */
function between(context: PageContext, { agreed }: VisitRow): Cell[] {
  const lines = agreedLines(context, agreed);
  const text = lines.length > 0 ? lines.join(' ') : context.speaker.say('pages.visitByVisit.nothingTyped');
  return [
    {
      text: `${context.speaker.say('pages.visitByVisit.thenAgreed')} ${text}`,
      across: true,
      muted: lines.length === 0,
    },
  ];
}
