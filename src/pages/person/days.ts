import { hourBlocksChart } from '../../charts/hourBlocks.ts';
import { beyondIn, modalDayChart } from '../../charts/modalDay.ts';
import { nightsChart } from '../../charts/nights.ts';
import { dayOf24, spokenMinutes } from '../../language/index.ts';
import type { Quantity } from '../../model/quantity.ts';
import type { Block } from '../../model/report.ts';
import { BANDS } from '../../targets/bands.ts';
import { count, heading, type PageContext, paragraph, tellAll, word } from '../context.ts';
import { isLarge } from './sides.ts';

const NIGHTS_SHOWN = 14;
/** Points of the usual day's curve, the fullest first. */
const CURVES = { usual: [96, 64], large: [150, 100] };

const minutes = (value: number): Quantity => ({ q: 'minutes', value });
const cannotTell = ({ speaker }: PageContext): Block => paragraph(speaker.say('pages.patientFront.cannotTell'));

export function hours(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { timeInBands, coverage } = analysis.measures;
  const title = heading(2, speaker.say('pages.patientFront.hoursTitle'));
  if (!timeInBands.ok) return [title, cannotTell(context)];
  // No day of 24 blocks is made of hours that hold no night.
  if (coverage.ok && !coverage.value.wholeDay) {
    const night = minutes(coverage.value.night.hours * 60);
    return [
      title,
      paragraph(
        speaker.say('pages.patientFront.noDay', { night, any: word(coverage.value.night.hours > 0 ? 'yes' : 'no') }),
      ),
    ];
  }
  const day = dayOf24(timeInBands.value.minutes);
  const stack = speaker.stack(timeInBands.value.minutes);
  const shown = BANDS.filter((band) => timeInBands.value.minutes[band] > 0 && band !== 'in-range');
  const inRange = speaker.say('pages.patientFront.inRange', {
    time: { q: 'minutes', value: spokenMinutes(day['in-range']) },
    low: { q: 'limit', of: 'low' },
    high: { q: 'limit', of: 'high' },
  });
  const text = [
    inRange,
    ...shown.map((band) =>
      speaker.say('pages.patientFront.band', {
        band: word(speaker.say(`bands.${band}.patient`)),
        time: word(stack[band]),
      }),
    ),
  ].join(' ');
  return [
    title,
    // Only where nothing else can give way any more: the words say the same.
    { kind: 'fit', gives: 10, forms: [() => [{ kind: 'chart', drawing: hourBlocksChart(day, chart) }], () => []] },
    {
      kind: 'fit',
      gives: 3,
      forms: [() => [paragraph(text)], () => [paragraph(text, 'small')], () => [paragraph(inRange, 'small')]],
    },
  ];
}

export function nights(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { nights } = analysis.measures;
  if (!nights.ok) return [heading(2, speaker.say('pages.patientFront.nightsNone')), cannotTell(context)];
  const shown = nights.value.slice(-NIGHTS_SHOWN);
  const all = word(shown.length === nights.value.length ? 'yes' : 'no');
  const unknown = shown.filter(({ state }) => state === 'unknown').length;
  const cautions = [
    ...(unknown > 0 ? [speaker.say('cautions.C11')] : []),
    ...tellAll(context, ['nights-without-data']),
  ];
  const small = (lines: string[]): Block[] => (lines.length > 0 ? [paragraph(lines.join(' '), 'small')] : []);
  const dotted = unknown > 0 ? [speaker.say('pages.patientFront.nightsDotted')] : [];
  const full = (): Block[] => [
    heading(2, speaker.say('pages.patientFront.nights', { shown: count(shown.length), all })),
    { kind: 'chart', drawing: nightsChart(shown, chart) },
    ...small([...dotted, ...cautions]),
  ];
  // Boxes of which none can tell may give way to the words that say so.
  const words = () => [heading(2, speaker.say('pages.patientFront.nightsNone')), ...small(cautions)];
  return [{ kind: 'fit', gives: 8, forms: unknown === shown.length ? [full, words] : [full] }];
}

/** Where there is room for it. */
export function usual(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { modalDay } = analysis.measures;
  if (!modalDay.ok) return [];
  const { value } = modalDay;
  const gap = value.bins.some(({ p50 }) => p50 === null);
  const lines = (['pages.patientBack.usualKey', ...(gap ? (['cautions.C11'] as const) : [])] as const).map((key) =>
    speaker.say(key),
  );
  const forms = CURVES[isLarge(context) ? 'large' : 'usual'].map((height) => (): Block[] => [
    heading(2, speaker.say('pages.patientBack.usual')),
    {
      kind: 'chart',
      drawing: modalDayChart(value, chart, { height, outer: false, beyond: beyondIn(analysis.timeline) }),
    },
    paragraph(lines.join(' '), 'small'),
  ]);
  return [{ kind: 'fit', gives: 1, forms: [...forms, () => []] }];
}
