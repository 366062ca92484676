import type { Stretch } from '../../model/readingOrders.ts';
import type { Block, Cell } from '../../model/report.ts';
import type { Note } from '../../model/timeline.ts';
import type { InsulinKind } from '../../occasions/insulin.ts';
import { storyOf } from '../../topics/index.ts';
import { mealsLaid, sessionPairs } from '../aroundPictures.ts';
import { columnsOf, denseTable, heading, type PageContext, paragraph } from '../context.ts';
import { type LinedOn, linedUpLows } from '../readingOrders.ts';
import { ABOUT_HIGHS, highDays } from './highsLine.ts';
import { notedInsulin } from './notedInsulin.ts';

/** Heights of a picture's plot that are tried, points. */
const HEIGHTS = [96, 84, 72, 60];

/** Topics that meals laid over one another say something of. */
const ABOUT_MEALS = new RegExp(`${ABOUT_HIGHS.source}|meal|food|carb|spread|cv`);

/** What the topic rests on, and nothing else: lows lined up, exercise beside lows, insulin notes beside highs, meals laid over one another. */
export function evidence(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const [first] = analysis.topics;
  if (!first) return [];
  const { exercise, meals } = analysis.measures;
  const story = storyOf(analysis.found, analysis.topics);
  const low = /low/.test(first.id) || story === 'before-lows';
  // Sessions that no low followed are nothing a topic of lows rests on.
  const followed = exercise.ok && exercise.value.some(({ untilMorning }) => untilMorning.low === true);
  const pairs = (height?: number): Block[] =>
    low && followed && exercise.value.length > 1 ? sessionPairs(context, height) : [];
  const lined = low ? linedUpLows(context, carrying(context)) : [];
  const highs = !low && ABOUT_HIGHS.test(first.id) && highDays(context).length > 0 ? [besideHighs(context)] : [];
  const laid = (height?: number): Block[] =>
    meals.ok && ABOUT_MEALS.test(first.id) ? mealsUnder(mealsLaid(context, meals.value, height)) : [];
  const single = [
    ...HEIGHTS.map(pairs),
    lined,
    low && carrying(context) !== 'bedtime' ? linedUpLows(context, 'exercise') : [],
    highs,
    // The days of the highs say more of them than meals do, and take less room.
    ...(highs.length > 0 ? [] : HEIGHTS.map(laid)),
  ].filter((some) => some.length > 0);
  if (single.length === 0) return [];
  const title = heading(2, speaker.say('pages.visit.evidence'));
  const [one, other] = low ? [pairs, () => lined] : [() => highs, laid];
  const both = HEIGHTS.map((height) => [one(height), other(height)]).flatMap(([a = [], b = []]) =>
    a.length > 0 && b.length > 0 ? [[...a, ...b]] : [],
  );
  const under = (blocks: Block[]) => () => [title, ...blocks];
  // Without it the topic is a mere word: it goes when all else of the side is at its least.
  return [{ kind: 'fit', gives: 3, goes: 5, forms: [...[...both, ...single].map(under), () => []] }];
}

/** Under the heading of the evidence a picture needs none of its own. */
const mealsUnder = (laid: ReturnType<typeof mealsLaid>): Block[] =>
  laid === null ? [] : [{ kind: 'chart', title: laid.title, drawing: laid.drawing }, paragraph(laid.how, 'small')];

/** What the lows are lined up on: exercise that none followed within a day is no evidence beside a bedtime that some did follow. */
function carrying({ analysis }: PageContext): LinedOn {
  const { lowsLined } = analysis.measures;
  if (!lowsLined.ok) return 'both';
  const { during, exercise, bedtime } = lowsLined.value;
  const followed = (some: readonly Stretch[]): boolean => some.some(({ lows }) => lows > 0);
  if (during.lows === 0 && !followed(exercise) && followed(bedtime)) return 'bedtime';
  return 'both';
}

/** The days with most time far above range, each with the insulin and the food that is noted. */
function besideHighs(context: PageContext): Block {
  const { speaker, analysis } = context;
  const { notes, days } = analysis.timeline;
  const title = (name: 'day' | 'far' | 'highest' | 'insulin' | 'food') => speaker.say(`pages.visit.beside.${name}`);
  const noted = notedInsulin(context);
  const rows = highDays(context).map((day): Cell[] => {
    const notedText = (kind: 'dose' | 'long' | 'meal', some: readonly Note[]): string => {
      const sum = some.reduce((total, { amount }) => total + (amount ?? 0), 0);
      return speaker.say('pages.visit.beside.noted', {
        notes: { q: 'count', value: some.length },
        kind: { q: 'word', value: kind },
        sum: { q: 'word', value: sum === 0 ? '' : speaker.number(Math.round(sum * 10) / 10, sum % 1 === 0 ? 0 : 1) },
        known: { q: 'word', value: sum === 0 ? 'no' : 'yes' },
      });
    };
    const insulin = noted.filter(({ date }) => date === day.date);
    const kind = (wanted: InsulinKind) => insulin.filter(({ is }) => is === wanted).map(({ note }) => note);
    const none = speaker.say('pages.visit.beside.none');
    const long = kind('long-acting');
    // What runs all day is told by itself: it must not look like insulin for a meal.
    const insulins = [
      ...(kind('dose').length > 0 ? [notedText('dose', kind('dose'))] : []),
      ...(long.length > 0 ? [notedText('long', long)] : []),
      ...(kind('rate').length > 0 ? [speaker.say('pages.visit.beside.rates')] : []),
    ];
    const meals = notes.filter((note) => note.kind === 'meal' && days[note.day]!.date === day.date);
    const outer = analysis.targets.limits[analysis.timeline.unit].veryHigh !== null;
    return [
      { text: speaker.value({ q: 'date', value: day.date }, 'short'), strong: true },
      { text: speaker.value({ q: 'minutes', value: outer ? day.minutes['very-high'] : day.minutes.high }, 'short') },
      {
        text:
          day.highest === null ? '–' : speaker.value({ q: 'glucose', value: day.highest, limit: day.limits.highest }),
      },
      { text: insulins.length > 0 ? insulins.join('; ') : none },
      { text: meals.length > 0 ? notedText('meal', meals) : none },
    ];
  });
  return denseTable(
    speaker.say('pages.visit.beside.caption'),
    columnsOf(
      title,
      ['day', 0.2],
      ['far', 0.12],
      ['highest', 0.18],
      ['insulin', 0.31, 'words'],
      ['food', 0.19, 'words'],
    ),
    rows,
  );
}
