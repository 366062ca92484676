import { hourBlocksChart } from '../charts/hourBlocks.ts';
import { nightsChart } from '../charts/nights.ts';
import type { FindingId } from '../findings/index.ts';
import { dayOf24, spokenMinutes } from '../language/index.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Block } from '../model/report.ts';
import { BANDS } from '../targets/bands.ts';
import {
  caution,
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
} from './context.ts';

const NIGHTS_SHOWN = 14;

const minutes = (value: number): Quantity => ({ q: 'minutes', value });

/** The first side: what it rests on, any very low glucose, what went well, hours, nights, one thing to look at. */
export const patientFront: PageMaker = (context) => {
  const { speaker } = context;
  return {
    id: 'patient-front',
    title: speaker.say('pages.patientFront.title'),
    blocks: [
      heading(1, speaker.say('pages.patientFront.title')),
      ...data(context),
      ...well(context),
      ...hours(context),
      ...nights(context),
      ...topic(context),
      caution(context, 'C2', true),
      paragraph(speaker.say('cautions.C1'), 'small'),
    ],
  };
};

function data(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { coverage } = analysis.measures;
  const sentences = [speaker.say('pages.patientFront.period', periodParams(context))];
  if (coverage.ok)
    sentences.push(
      speaker.say('pages.patientFront.hours', {
        hours: { q: 'minutes', value: coverage.value.hours * 60 },
      }),
    );
  sentences.push(speaker.say('pages.patientFront.unit'));
  const { losses, missing } = analysis;
  for (const { file, lost, of } of losses)
    sentences.push(speaker.say('pages.patientFront.lost', { file: word(file), lost: count(lost), of: count(of) }));
  if (missing.length > 0) sentences.push(speaker.say('pages.patientFront.missing', missingParams(missing)));
  // A very low glucose stands in the first block, whatever went well.
  sentences.push(...tellAll(context, ['very-low', 'not-enough-data']));
  return [paragraph(sentences.join(' '))];
}

function well(context: PageContext): Block[] {
  const lines = tellAll(context, ['best-window', 'best-days', 'no-lows-seen']).slice(0, 2);
  if (lines.length === 0) return [];
  return [heading(2, context.speaker.say('pages.patientFront.well')), paragraph(lines.join(' '))];
}

function hours(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { timeInBands, coverage } = analysis.measures;
  const title = heading(2, speaker.say('pages.patientFront.hoursTitle'));
  if (!timeInBands.ok) return [title, paragraph(speaker.say('pages.patientFront.cannotTell'))];
  // No day of 24 blocks is made of hours that hold no night.
  if (coverage.ok && !coverage.value.wholeDay) {
    const { hours, night } = coverage.value;
    const params = { hours: minutes(hours * 60), night: minutes(night.hours * 60) };
    return [title, paragraph(speaker.say('pages.patientFront.noDay', params))];
  }
  const day = dayOf24(timeInBands.value.minutes);
  const stack = speaker.stack(timeInBands.value.minutes);
  const shown = BANDS.filter((band) => timeInBands.value.minutes[band] > 0 && band !== 'in-range');
  return [
    title,
    { kind: 'chart', drawing: hourBlocksChart(day, chart) },
    paragraph(
      [
        speaker.say('pages.patientFront.inRange', {
          time: { q: 'minutes', value: spokenMinutes(day['in-range']) },
          low: { q: 'limit', of: 'low' },
          high: { q: 'limit', of: 'high' },
        }),
        ...shown.map((band) =>
          speaker.say('pages.patientFront.band', {
            band: { q: 'word', value: speaker.say(`bands.${band}.patient`) },
            time: { q: 'word', value: stack[band] },
          }),
        ),
      ].join(' '),
    ),
  ];
}

function nights(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { nights } = analysis.measures;
  const title = heading(2, speaker.say('pages.patientFront.nights'));
  if (!nights.ok) return [title, paragraph(speaker.say('pages.patientFront.cannotTell'))];
  const shown = nights.value.slice(-NIGHTS_SHOWN);
  const blocks: Block[] = [title, { kind: 'chart', drawing: nightsChart(shown, chart) }];
  const sentences = tellAll(context, ['lows-at-night', 'nights-without-data']);
  const key = speaker.say('pages.patientFront.nightsKey', {
    shown: count(shown.length),
    all: word(shown.length === nights.value.length ? 'yes' : 'no'),
  });
  const gap = shown.some(({ state }) => state === 'unknown') ? [speaker.say('cautions.C11')] : [];
  blocks.push(paragraph([key, ...gap, ...sentences].join(' ')));
  return blocks;
}

/** What already stands above is not said twice. */
const SAID: readonly FindingId[] = ['very-low', 'lows-at-night', 'not-enough-data', 'best-window', 'best-days'];

function topic(context: PageContext): Block[] {
  const [first] = heldTopics(context);
  if (!first) return [];
  const title = heading(2, context.speaker.say('pages.patientFront.topic', { topic: word(first.name) }));
  const what = told(context, first.id, 'what');
  return what === null || SAID.includes(first.id) ? [title] : [title, paragraph(what)];
}
