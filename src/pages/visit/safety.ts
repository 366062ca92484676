import { coverageChart } from '../../charts/coverage.ts';
import { hoursBarChart } from '../../charts/hoursBar.ts';
import { lowsClockChart } from '../../charts/lowsClock.ts';
import { nightsChart } from '../../charts/nights.ts';
import type { FindingId } from '../../findings/index.ts';
import type { Block } from '../../model/report.ts';
import type { ParamsOf } from '../../model/words.ts';
import { DAY_MINUTES } from '../../time/calendar.ts';
import { storyOf } from '../../topics/index.ts';
import { bandsTable } from '../bandsTable.ts';
import {
  count,
  heading,
  heldTopics,
  missingParams,
  type PageContext,
  type PageMaker,
  paragraph,
  periodParams,
  tellAll,
  told,
  word,
} from '../context.ts';
import { numbersTable } from '../numbersTable.ts';

/** At most two of these are said here, the gravest first; the rest stand with all findings. */
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
/** So many nights fit page 1 as boxes; a longer period shows its last ones here and all of them on the day strips. */
const NIGHTS_SHOWN = 28;
/** Days from which a period is not short for lows or for CV (review of 2023, doi 10.1089/dia.2023.0476: 21 to 35, 28 to 35). */
const ENOUGH = { lows: 21, cv: 28 };

/** The front of the first sheet stands alone: enough data, lows, nights, hours, one topic, in the order a visit needs them. */
export const safety: PageMaker = (context) => {
  const { speaker } = context;
  return {
    id: 'overview',
    title: speaker.say('pages.overview.bookmark'),
    blocks: [
      heading(1, speaker.say('pages.overview.title', periodParams(context))),
      ...data(context),
      ...lows(context),
      ...nights(context),
      ...hours(context),
      ...topic(context),
      paragraph(speaker.say('cautions.clinicMethod'), 'small'),
    ],
  };
};

function data(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { coverage } = analysis.measures;
  const blocks: Block[] = [heading(2, speaker.say('pages.overview.data.title'))];
  if (!coverage.ok) return [...blocks, paragraph([speaker.say(`why.${coverage.why}`), ...notUsed(context)].join(' '))];
  const { value } = coverage;
  const params: ParamsOf<'pages.overview.data.sentence'> = {
    hours: { q: 'minutes', value: value.hours * 60 },
    ofHours: { q: 'minutes', value: value.ofHours * 60 },
    share: { q: 'share', value: value.share },
    night: { q: 'share', value: value.night.share },
    reached: { q: 'word', value: value.reached72h ? 'yes' : 'no' },
    interval: { q: 'minutes', value: analysis.timeline.interval },
  };
  const warnings = tellAll(context, ['not-enough-data', 'nights-without-data', 'readings-at-limits']);
  return [
    ...blocks,
    paragraph(
      [
        speaker.say('pages.overview.data.sentence', params),
        ...changedClock(context),
        ...longHoles(context),
        ...notUsed(context),
        ...warnings,
      ].join(' '),
    ),
    { kind: 'fit', gives: 2, forms: [[{ kind: 'chart', drawing: coverageChart(value, chart) }], []] },
  ];
}

/** A pause between two wears that is longer than a sensor lasts: what follows tells of two stretches of life, not of one. */
const LONG_HOLE = 16 * DAY_MINUTES;

function longHoles({ speaker, analysis }: PageContext): string[] {
  const { gaps, days } = analysis.timeline;
  const dateOf = (at: number) => days.findLast(({ start }) => start <= at)?.date ?? days[0]!.date;
  return gaps
    .filter(({ kind, minutes }) => kind !== 'edge' && minutes > LONG_HOLE)
    .map((gap) =>
      speaker.say('pages.overview.data.hole', {
        from: word(speaker.value({ q: 'date', value: dateOf(gap.from) }, 'dated')),
        to: word(speaker.value({ q: 'date', value: dateOf(gap.to) }, 'dated')),
        days: count(Math.floor(gap.minutes / DAY_MINUTES)),
      }),
    );
}

/** What of the files is missing from all that follows. */
function notUsed({ speaker, analysis: { losses, missing } }: PageContext): string[] {
  return [
    ...losses.map(({ file, lost, of, accepted }) =>
      speaker.say('pages.overview.data.lost', {
        file: word(file),
        lost: count(lost),
        of: count(of),
        accepted: word(accepted ? 'yes' : 'no'),
      }),
    ),
    ...(missing.length === 0 ? [] : [speaker.say('pages.overview.data.missing', missingParams(missing))]),
  ];
}

/** Why the hours of the period are not 24 times its days. */
function changedClock({ speaker, analysis }: PageContext): string[] {
  const changed = analysis.timeline.days.filter(({ minutes }) => minutes !== DAY_MINUTES);
  if (changed.length === 0) return [];
  const dates = { q: 'dates' as const, value: changed.map(({ date }) => date) };
  return [speaker.say('pages.overview.data.changed', { dates, days: count(changed.length) })];
}

function lows(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { lows } = analysis.measures;
  const blocks: Block[] = [heading(2, speaker.say('pages.overview.lows.title'))];
  if (!lows.ok) return [...blocks, paragraph(speaker.say(`why.${lows.why}`))];
  // Silence is never "no lows": where nothing can be told, that is told.
  const sentences = tellAll(context, LOWS).slice(0, 2);
  blocks.push(paragraph(sentences.join(' ') || speaker.say('pages.overview.lows.none')));
  if (lows.value.list.length > 0) blocks.push({ kind: 'chart', drawing: lowsClockChart(lows.value.list, chart) });
  return blocks;
}

function nights(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { nights } = analysis.measures;
  const blocks: Block[] = [heading(2, speaker.say('pages.overview.nights.title'))];
  if (!nights.ok) return [...blocks, paragraph(speaker.say(`why.${nights.why}`))];
  const shown = nights.value.slice(-NIGHTS_SHOWN);
  blocks.push({ kind: 'chart', drawing: nightsChart(shown, chart) });
  const key = paragraph(
    speaker.say('pages.overview.nights.key', {
      low: { q: 'limit', of: 'low' },
      shown: { q: 'count', value: shown.length },
      all: { q: 'word', value: shown.length === nights.value.length ? 'yes' : 'no' },
    }),
    'small',
  );
  blocks.push({ kind: 'fit', gives: 4, forms: [[key], []] });
  return blocks;
}

function hours(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { timeInBands } = analysis.measures;
  const blocks: Block[] = [heading(2, speaker.say('pages.overview.hours.title'))];
  if (!timeInBands.ok) return [...blocks, paragraph(speaker.say(`why.${timeInBands.why}`))];
  return [
    ...blocks,
    { kind: 'chart', drawing: hoursBarChart(timeInBands.value, chart) },
    {
      kind: 'columns',
      widths: [0.645, 0.355],
      columns: [[bandsTable(timeInBands.value, context)], [numbersTable(context)]],
    },
    {
      kind: 'fit',
      gives: 3,
      forms: [shortFor(context, !timeInBands.value.judged && timeInBands.value.goals.length > 0), []],
    },
  ];
}

/** What is too little for a verdict; then each number's own minimum: a fortnight is enough for an average, not for lows or CV. */
function shortFor({ speaker, analysis }: PageContext, open: boolean): Block[] {
  const days = analysis.timeline.days.length;
  const notJudged = open ? [speaker.say('pages.overview.hours.open')] : [];
  if (days >= ENOUGH.cv) return notJudged.map((line) => paragraph(line, 'small'));
  const params = { days: count(days), lows: word(days < ENOUGH.lows ? 'yes' : 'no') };
  return [paragraph([...notJudged, speaker.say('pages.overview.hours.short', params)].join(' '), 'small')];
}

/** Whole, or where room is short without the rule that chose it. */
function topic(context: PageContext): Block[] {
  return [{ kind: 'fit', gives: 5, forms: [topicBox(context, true), topicBox(context, false)] }];
}

function topicBox(context: PageContext, whole: boolean): Block[] {
  const { speaker } = context;
  const topics = heldTopics(context);
  const story = storyOf(context.analysis.found, context.analysis.topics);
  const inside: Block[] = [];
  if (topics.length === 0)
    inside.push(
      heading(2, speaker.say('pages.overview.topic.title')),
      paragraph(speaker.say('pages.overview.topic.none')),
    );
  for (const [index, { id, rule, name }] of topics.entries()) {
    if (index === 0) inside.push(heading(2, speaker.say('pages.overview.topic.first', { topic: word(name) })));
    else inside.push(paragraph(speaker.say('pages.overview.topic.second', { topic: word(name) }), 'strong'));
    // What was noted before says more than why the topic matters in general.
    const why = story ? told(context, story, 'what') : told(context, id, 'why');
    const lines = index === 0 ? [why, told(context, id, 'ask')] : story ? [] : [told(context, id, 'ask')];
    if (whole) lines.push(speaker.say(`findings.rules.${rule}`));
    const text = lines.filter((line) => line !== null).join(' ');
    if (text !== '') inside.push(paragraph(text));
  }
  // Treatment in pregnancy rests on fingersticks: where they disagree, that stands with the topic.
  const sticks = context.analysis.targets.id.startsWith('pregnancy')
    ? told(context, 'fingersticks-differ', 'what')
    : null;
  if (sticks !== null) inside.push(paragraph(sticks));
  return [{ kind: 'panel', blocks: inside }];
}
