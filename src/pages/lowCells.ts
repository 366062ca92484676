import type { Episode } from '../model/measures.ts';
import type { Cell } from '../model/report.ts';
import type { PageContext } from './context.ts';

/** The first cells of a row about one low: when it began, how long it lasted, its lowest reading. */
export function lowCells({ speaker }: PageContext, low: Episode): Cell[] {
  const when = speaker.say('pages.everyLow.when', {
    date: { q: 'date', value: low.date },
    clock: { q: 'clock', value: low.startMinute },
  });
  return [
    { text: when, band: low.level === 2 ? 'very-low' : 'low' },
    { text: speaker.value({ q: 'minutes', value: low.minutes }, 'short') },
    { text: speaker.value({ q: 'glucose', value: low.extreme, limit: low.extremeLimit }) },
  ];
}
