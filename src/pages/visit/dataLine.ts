import { coverageChart } from '../../charts/coverage.ts';
import type { Block } from '../../model/report.ts';
import type { ParamsOf } from '../../model/words.ts';
import { DAY_MINUTES } from '../../time/calendar.ts';
import { count, held, missingParams, onTheirWord, type PageContext, paragraph, tellAll, word } from '../context.ts';
import { sideHeaded } from './layout.ts';

/** Bars of the days are drawn where this share of the time is missing; else the line says all. Ours. */
const HOLES = 0.05;
/** So many files with losses are named where room is short. */
const LEAST_NAMED = 1;

/** What the report rests on, in a line; what of the files is missing from it; and bars where there are holes. */
export function dataLine(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const { coverage } = analysis.measures;
  const about = (text: string): Block => sideHeaded(speaker.say('pages.visit.readings'), [paragraph(text)]);
  if (!coverage.ok) return [about([speaker.say(`why.${coverage.why}`), ...notUsed(context, Infinity)].join(' '))];
  const { value } = coverage;
  const params: ParamsOf<'pages.overview.data.sentence'> = {
    hours: { q: 'minutes', value: value.hours * 60 },
    ofHours: { q: 'minutes', value: value.ofHours * 60 },
    share: { q: 'share', value: value.share },
    // Where it is too little that is told in a sentence of its own.
    lacking: word((held(context, 'not-enough-data')?.variant ?? 'days') === 'days' ? 'no' : 'yes'),
    night: { q: 'share', value: value.night.share },
    reached: { q: 'word', value: value.reached72h ? 'yes' : 'no' },
    interval: { q: 'minutes', value: analysis.timeline.interval },
  };
  const warnings = tellAll(context, ['not-enough-data', 'nights-without-data', 'readings-at-limits', 'standing-still']);
  const line = (named: number) => (): Block[] => [
    about(
      [
        speaker.say('pages.overview.data.sentence', params),
        ...changedClock(context),
        ...longHoles(context),
        ...notUsed(context, named),
        ...onTheirWord(context),
        ...warnings,
      ].join(' '),
    ),
  ];
  const bars = (): Block[] => [{ kind: 'chart', drawing: coverageChart(value, chart) }];
  const more = analysis.losses.length > LEAST_NAMED;
  return [
    more ? { kind: 'fit', gives: 3, forms: [line(Infinity), line(LEAST_NAMED)] } : line(Infinity)()[0]!,
    ...(value.share < 1 - HOLES ? [{ kind: 'fit' as const, gives: 2, forms: [bars, () => []] }] : []),
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
function notUsed({ speaker, analysis: { losses, missing } }: PageContext, named: number): string[] {
  const rest = losses.length - named;
  return [
    ...losses.slice(0, named).map(({ file, lost, of, accepted }) =>
      speaker.say('pages.overview.data.lost', {
        file: word(file),
        lost: count(lost),
        of: count(of),
        accepted: word(accepted ? 'yes' : 'no'),
      }),
    ),
    ...(rest > 0 ? [speaker.say('pages.visit.moreLosses', { count: count(rest) })] : []),
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
