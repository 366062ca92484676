import { hoursBarChart } from '../../charts/hoursBar.ts';
import type { Block } from '../../model/report.ts';
import { bandsTable } from '../bandsTable.ts';
import { count, heading, type PageContext, type PageMaker, paragraph, periodParams, word } from '../context.ts';
import { numbersTable } from '../numbersTable.ts';
import { dataLine } from './dataLine.ts';
import { highsLine } from './highsLine.ts';
import { samePerson } from './lastTime.ts';
import { lowsFirst, nightsRow } from './lowsFirst.ts';
import { otherFindings } from './otherFindings.ts';
import { remarksApart } from './remarks.ts';
import { topicBox } from './topicBox.ts';

/** Days from which a period is not short for lows or for CV (review of 2023, doi 10.1089/dia.2023.0476: 21 to 35, 28 to 35). */
const ENOUGH = { lows: 21, cv: 28 };

/** The front of the first sheet stands alone: whose it is, enough data, lows, highs, nights, hours, one topic, all else by name. */
export const safety: PageMaker = (context) => {
  const { speaker } = context;
  return {
    id: 'overview',
    title: speaker.say('pages.overview.bookmark'),
    blocks: [
      heading(1, speaker.say('pages.overview.title', periodParams(context))),
      who(context),
      ...samePerson(context),
      ...dataLine(context),
      ...lowsFirst(context),
      ...highsLine(context),
      ...nightsRow(context),
      ...hours(context),
      ...topicBox(context),
      ...otherFindings(context),
      ...remarksBeside(context),
      paragraph(speaker.say('cautions.clinicMethod'), 'small'),
    ],
  };
};

/** Which goals hold, and a box to tick once it is sure whose paper this is. */
function who({ speaker, analysis }: PageContext): Block {
  const goals = speaker.say('pages.visit.goals', { name: word(speaker.say(`targets.${analysis.targets.id}.name`)) });
  return {
    kind: 'columns',
    widths: [0.6, 0.4],
    columns: [[paragraph(goals)], [{ kind: 'boxes', inline: true, items: [speaker.say('pages.visit.rightPerson')] }]],
  };
}

function hours(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { timeInBands } = analysis.measures;
  if (!timeInBands.ok)
    return [heading(2, speaker.say('pages.overview.hours.title')), paragraph(speaker.say(`why.${timeInBands.why}`))];
  const bar = { kind: 'chart' as const, dense: true, drawing: hoursBarChart(timeInBands.value, chart, 'bare') };
  const short = shortFor(context, !timeInBands.value.judged && timeInBands.value.goals.length > 0);
  return [
    {
      kind: 'fit',
      gives: 6,
      forms: [
        () => [{ ...bar, title: speaker.say('pages.overview.hours.title') }],
        // The parts of the bar and the table below name themselves.
        () => [bar],
      ],
    },
    {
      kind: 'columns',
      widths: [0.645, 0.355],
      columns: [[bandsTable(timeInBands.value, context)], [numbersTable(context)]],
    },
    { kind: 'fit', gives: 3, forms: [() => short, () => []] },
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

function remarksBeside(context: PageContext): Block[] {
  const more = remarksApart(context);
  if (more === 0) return [];
  return [paragraph(context.speaker.say('pages.visit.remarksMore', { count: count(more) }), 'small')];
}
