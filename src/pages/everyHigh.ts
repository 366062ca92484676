import type { LongHigh } from '../model/highs.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Below } from '../model/words.ts';
import { count, denseTable, heading, type PageContext } from './context.ts';

/** The long highs one by one, as the lows are, with what was noted near each. */
export function everyHigh(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { longHighs } = analysis.measures;
  if (!longHighs.ok || longHighs.value.list.length === 0) return [];
  const title = (column: Exclude<Below<'pages.everyHigh'>, 'outer' | 'notes'>) =>
    speaker.say(`pages.everyHigh.${column}`);
  const level = { q: 'glucose' as const, value: longHighs.value.level };
  const limit = analysis.targets.limits[analysis.timeline.unit].veryHigh === null ? level : veryHigh;
  return [
    heading(2, title('title')),
    denseTable(
      title('title'),
      [
        { title: title('start'), align: 'start', width: 0.3 },
        { title: title('minutes'), align: 'end', width: 0.12 },
        { title: title('highest'), align: 'end', width: 0.16 },
        { title: speaker.say('pages.everyHigh.outer', { limit }), align: 'end', width: 0.18 },
        { title: title('noted'), align: 'start', width: 0.24 },
      ],
      longHighs.value.list.map((each) => cells(context, each)),
    ),
  ];
}

const veryHigh = { q: 'limit', of: 'very-high' } as const;

function cells({ speaker }: PageContext, { high, minutes, insulin, basal, food }: LongHigh): Cell[] {
  const when = speaker.say('pages.everyLow.when', {
    date: { q: 'date', value: high.date },
    clock: { q: 'clock', value: high.startMinute },
  });
  return [
    { text: when, band: 'very-high' },
    { text: speaker.value({ q: 'minutes', value: high.minutes }, 'short') },
    { text: speaker.value({ q: 'glucose', value: high.extreme, limit: high.extremeLimit }) },
    { text: speaker.value({ q: 'minutes', value: minutes }, 'short') },
    { text: speaker.say('pages.everyHigh.notes', { insulin: count(insulin), basal: count(basal), food: count(food) }) },
  ];
}
