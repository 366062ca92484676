import type { Measured } from '../model/measured.ts';
import type { Stretch } from '../model/readingOrders.ts';
import type { Block, Cell } from '../model/report.ts';
import { columnsOf, count, denseTable, heading, type PageContext, paragraph, word } from './context.ts';

/** Further places where published reading orders look: as small blocks, without a verdict. */
export function readingOrders(context: PageContext): Block[] {
  const blocks = [...fixed(context), ...weekParts(context), ...linedUpLows(context), ...insulin(context)];
  if (blocks.length === 0) return [];
  return [heading(2, context.speaker.say('pages.readingOrders.title')), ...blocks];
}

const hasValue = <T>(found: Measured<T>): T | null => (found.ok ? found.value : null);

function fixed({ speaker, analysis }: PageContext): Block[] {
  const found = hasValue(analysis.measures.fixedTimes);
  if (found === null) return [];
  const said = (['fasting', 'bedtime'] as const).flatMap((of) => {
    const median = found[`${of}Median`];
    if (median === null) return [];
    const params = { median: { q: 'glucose' as const, value: median }, days: count(found[of].length) };
    return [speaker.say(`pages.readingOrders.${of}`, params)];
  });
  return said.length === 0 ? [] : [paragraph(said.join(' '))];
}

function weekParts({ speaker, analysis }: PageContext): Block[] {
  const found = hasValue(analysis.measures.weekParts);
  if (found === null) return [];
  const title = (column: 'clock' | 'weekday' | 'weekend', days: number) =>
    speaker.say(`pages.readingOrders.week.${column}`, { days: count(days) });
  const value = (mgdl: number | null): Cell => ({
    text: mgdl === null ? '–' : speaker.value({ q: 'rise', value: mgdl }, 'short'),
  });
  const caption = speaker.say('pages.readingOrders.week.caption');
  return [
    denseTable(
      caption,
      [
        { title: title('clock', 0), align: 'start', width: 0.3 },
        { title: title('weekday', found.weekdays), align: 'end', width: 0.35 },
        { title: title('weekend', found.weekends), align: 'end', width: 0.35 },
      ],
      found.hours
        .filter(({ hour }) => hour % 3 === 0)
        .map(({ hour, weekday, weekend }) => [
          { text: speaker.value({ q: 'clock', value: hour * 60 }) },
          value(weekday),
          value(weekend),
        ]),
    ),
  ];
}

/** What lows are lined up on. */
export type LinedOn = 'both' | 'exercise' | 'bedtime';

/** Lows by the hours since exercise and since bedtime, beside the hours that were read. */
export function linedUpLows({ speaker, analysis }: PageContext, on: LinedOn = 'both'): Block[] {
  const found = hasValue(analysis.measures.lowsLined);
  const { lows } = analysis.measures;
  if (found === null || !lows.ok || lows.value.list.length === 0) return [];
  const row = (label: string, { lows, hours }: { lows: number; hours: number }): Cell[] =>
    [label, speaker.number(lows, 0), speaker.value({ q: 'minutes', value: hours * 60 }, 'short')].map((text) => ({
      text,
    }));
  const label = (of: 'exercise' | 'bedtime', { from, to }: Stretch): string =>
    speaker.say(`pages.readingOrders.lined.${of}`, { from: count(from), to: count(to) });
  // Hours that nobody read hold no lows either.
  const seen = (list: readonly Stretch[]): Stretch[] => list.filter(({ hours }) => hours > 0);
  const exercise = seen(found.exercise);
  const noted = exercise.length > 0 || found.during.hours > 0;
  if (on === 'exercise' && !noted) return [];
  const byExercise = [
    ...(found.during.hours > 0 ? [row(speaker.say('pages.readingOrders.lined.during'), found.during)] : []),
    ...exercise.map((stretch) => row(label('exercise', stretch), stretch)),
    ...(noted ? [row(speaker.say('pages.readingOrders.lined.without'), found.without)] : []),
  ];
  const byBedtime = seen(found.bedtime).map((stretch) => row(label('bedtime', stretch), stretch));
  const rows = [...(on === 'bedtime' ? [] : byExercise), ...(on === 'exercise' ? [] : byBedtime)];
  if (rows.length === 0) return [];
  const title = (column: 'caption' | 'when' | 'lows' | 'hours') => speaker.say(`pages.readingOrders.lined.${column}`);
  return [denseTable(title('caption'), columnsOf(title, ['when', 0.5], ['lows', 0.22], ['hours', 0.28]), rows)];
}

function insulin({ speaker, analysis }: PageContext): Block[] {
  const found = hasValue(analysis.measures.insulinNoted);
  if (found === null) return [];
  const units = (value: number): string => speaker.number(value, Number.isInteger(value) ? 0 : 1);
  return [
    paragraph(
      speaker.say('pages.readingOrders.insulin', {
        noted: count(found.noted),
        days: count(found.days),
        median: word(units(found.median)),
        parts: word(found.longActing !== null && found.others !== null ? 'yes' : 'no'),
        long: word(units(found.longActing?.median ?? 0)),
        longDays: count(found.longActing?.noted ?? 0),
        others: word(units(found.others?.median ?? 0)),
        otherDays: count(found.others?.noted ?? 0),
        rates: word(found.rates ? 'yes' : 'no'),
        without: count(found.withoutAmount),
      }),
    ),
  ];
}
