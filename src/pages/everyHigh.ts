import type { LongHigh } from '../model/highs.ts';
import type { Block, Cell } from '../model/report.ts';
import type { Below } from '../model/words.ts';
import { columnsOf, count, denseTable, heading, type PageContext } from './context.ts';

/** The long highs one by one, as the lows are, with what was noted near each. */
export function everyHigh(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { longHighs } = analysis.measures;
  if (!longHighs.ok || longHighs.value.list.length === 0) return [];
  const level = { q: 'glucose' as const, value: longHighs.value.level };
  const limit = analysis.targets.limits[analysis.timeline.unit].veryHigh === null ? level : veryHigh;
  const title = (column: Exclude<Below<'pages.everyHigh'>, 'notes'>) =>
    speaker.say(`pages.everyHigh.${column}`, { limit });
  return [
    heading(2, title('title')),
    denseTable(
      title('title'),
      columnsOf(title, ['start', 0.3], ['minutes', 0.12], ['highest', 0.16], ['outer', 0.18], ['noted', 0.24, 'words']),
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
