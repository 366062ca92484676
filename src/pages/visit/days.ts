import { byMonth, calendarChart, SMALL_MONTHS_A_ROW } from '../../charts/calendar.ts';
import { dayPanelChart, smallDayChart } from '../../charts/dayPanel.ts';
import { movementOf } from '../../charts/drawnNotes.ts';
import { type LongActing, type SignKind, signKind } from '../../charts/noteLanes.ts';
import { signKeyChart } from '../../charts/signKey.ts';
import type { DailySummary } from '../../model/measures.ts';
import type { Block, Form } from '../../model/report.ts';
import { count, heading, lowsOf, type PageContext, type PageMaker, paragraph, word } from '../context.ts';
import { daysThatMatter } from './daysThatMatter.ts';
import { longActing } from './signs.ts';

/** So many days are all shown large; up to four weeks the others are small; then a calendar stands for them. */
const ALL_LARGE = 14;
const MOST_SMALL = 28;

/**
 * Heights of a plot that are tried, in points. From 54 points on, 70 to 180 mg/dL take 9 mm on the axis that all charts share, and a
 * low of 62 is seen to lie below.
 */
const LARGE = [110, 94, 78, 72, 66, 60, 56, 54, 52];
const LEAST_LARGE = 52;
/** Up to four days stand across the page and six two in a row, higher: no side is half empty for want of days. */
const ACROSS = 4;
const FEW = 6;
const HIGHER = [190, 170, 150, 130];
/** Where the days share a side with all else. */
const LOWEST = 40;

const SIGNS: readonly SignKind[] = [
  'food',
  'rapid',
  'long',
  'rate',
  'exercise',
  'alarm',
  'medicine',
  'sensor',
  'remark',
  'stick',
];

/** The front of the second sheet: what single days looked like. */
export const singleDays: PageMaker = (context) => {
  const { speaker, analysis } = context;
  const { daily } = analysis.measures;
  if (!daily.ok) return null;
  const title = speaker.say('pages.visit.days');
  return { id: 'days', title, blocks: [heading(1, title), ...dayBlocks(context, daily.value)] };
};

/** Of little data the days that there are, as many as fit beside all else on the one sheet; how many there are is said where some are missing. */
export function fewDays(context: PageContext): Block[] {
  const { daily } = context.analysis.measures;
  if (!daily.ok) return [];
  const isLong = longActing(context);
  const all = seenOf(context, daily.value).length;
  const forms = [8, 6, 4, 2].flatMap((most) =>
    [LEAST_LARGE, LOWEST].map((height) => (): Block[] => {
      const chosen = daysThatMatter(context, daily.value, most);
      const some = { shown: count(chosen.length), all: count(all) };
      return [
        key(context, isLong),
        ...(chosen.length < all ? [paragraph(context.speaker.say('pages.visit.daysFew', some), 'small')] : []),
        ...large(context, chosen, daily.value, height, isLong),
      ];
    }),
  );
  return [{ kind: 'fit', gives: 5, forms }];
}

const key = (context: PageContext, isLong: LongActing): Block => ({
  kind: 'chart',
  drawing: signKeyChart(
    signsIn(context, isLong),
    movementOf(context.analysis.timeline),
    context.analysis.timeline.readings.limit.some((limit) => limit !== 0),
    context.chart,
  ),
  dense: true,
});

/** Single days as large as they can be; a day without readings and notes is left out. */
function dayBlocks(context: PageContext, days: DailySummary[]): Block[] {
  const isLong = longActing(context);
  const seen = seenOf(context, days);
  if (seen.length <= ALL_LARGE) {
    const heights = [...(seen.length <= FEW ? HIGHER : []), ...LARGE];
    const set = seen.length <= ACROSS ? across : large;
    return [
      key(context, isLong),
      { kind: 'fit', gives: 1, forms: heights.map((height) => () => set(context, seen, days, height, isLong)) },
    ];
  }
  const small = days.length <= MOST_SMALL;
  const forms = small ? [10, 8, 6] : [12, 10, 8, 6, 4];
  return [
    key(context, isLong),
    {
      kind: 'fit',
      gives: 1,
      forms: forms.flatMap((most): Form[] => {
        const chosen = daysThatMatter(context, days, most);
        const rest = seen.filter((day) => !chosen.includes(day));
        const why = context.speaker.say('pages.visit.daysChosen', {
          shown: count(chosen.length),
          all: count(small ? seen.length : days.length),
          empty: count(small ? days.length - seen.length : 0),
          rest: word(small ? 'small' : 'calendar'),
        });
        const first = (): Block[] => [paragraph(why, 'small'), ...large(context, chosen, days, LEAST_LARGE, isLong)];
        if (!small) return [() => [...first(), ...calendar(context, days)]];
        return [38, 32, 26].map((height) => () => [...first(), ...smallDays(context, rest, days, height)]);
      }),
    },
  ];
}

/** Days with readings or notes. */
const seenOf = (context: PageContext, days: DailySummary[]): DailySummary[] =>
  days.filter(({ share }, i) => share > 0 || hasNotes(context, i));

const hasNotes = ({ analysis }: PageContext, index: number): boolean =>
  analysis.timeline.notes.some(({ day }) => day === index);

const signsIn = ({ analysis }: PageContext, isLong: LongActing): SignKind[] => {
  const seen = new Set(analysis.timeline.notes.filter(({ timed }) => timed).map((note) => signKind(note, isLong)));
  return SIGNS.filter((kind) => seen.has(kind));
};

/** Days one under another, the clock under the last. */
function stacked(
  { analysis, chart }: PageContext,
  days: DailySummary[],
  all: DailySummary[],
  look: { height: number; wide: boolean; isLong: LongActing },
): Block[] {
  return days.map((day, i) => ({
    kind: 'chart',
    dense: true,
    drawing: dayPanelChart(analysis.timeline, day, all.indexOf(day), chart, {
      ...look,
      clock: i === days.length - 1,
      lows: lowsOf(analysis.measures),
    }),
  }));
}

const across = (
  context: PageContext,
  some: DailySummary[],
  all: DailySummary[],
  height: number,
  isLong: LongActing,
): Block[] => stacked(context, some, all, { height, wide: true, isLong });

/** In two columns. */
function large(
  context: PageContext,
  some: DailySummary[],
  all: DailySummary[],
  height: number,
  isLong: LongActing,
): Block[] {
  const half = Math.ceil(some.length / 2);
  const columns = [some.slice(0, half), some.slice(half)];
  const look = { height, wide: false, isLong };
  return [{ kind: 'columns', widths: [0.5, 0.5], columns: columns.map((days) => stacked(context, days, all, look)) }];
}

function smallDays(
  { analysis, chart }: PageContext,
  some: DailySummary[],
  all: DailySummary[],
  height: number,
): Block[] {
  const rows = Math.ceil(some.length / 4);
  const columns = [0, 1, 2, 3].map((n) =>
    some.slice(n * rows, (n + 1) * rows).map(
      (day): Block => ({
        kind: 'chart',
        dense: true,
        drawing: smallDayChart(analysis.timeline, day, all.indexOf(day), chart, height, lowsOf(analysis.measures)),
      }),
    ),
  );
  return [{ kind: 'columns', widths: [0.25, 0.25, 0.25, 0.25], columns }];
}

function calendar({ chart }: PageContext, days: DailySummary[]): Block[] {
  const months = byMonth(days);
  return Array.from({ length: Math.ceil(months.length / SMALL_MONTHS_A_ROW) }, (_, row): Block => {
    const some = months.slice(row * SMALL_MONTHS_A_ROW, (row + 1) * SMALL_MONTHS_A_ROW);
    return { kind: 'chart', drawing: calendarChart(some, chart, 'small') };
  });
}
