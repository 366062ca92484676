import type { MgPerDl } from '../model/glucose.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Timeline } from '../model/timeline.ts';
import type { ChartContext } from './context.ts';
import { noteInWords } from './dayInWords.ts';
import { daySlots } from './daySlots.ts';

/** A reading as a quantity, beyond the sensor's limits as a bound. */
export const readingAt = ({ readings: { mgdl, limit } }: Timeline, i: number): Quantity & { q: 'glucose' } => ({
  q: 'glucose',
  value: mgdl[i]! as MgPerDl,
  limit: Math.sign(limit[i]!) as -1 | 0 | 1,
});

/**
 * A day as one row an hour of the clock on the wall: lowest and highest reading, and what was written down. A day that
 * holds nothing has no rows.
 */
export function dayHours(timeline: Timeline, index: number, context: ChartContext) {
  const { speaker } = context;
  const readingText = (i: number): string => (i < 0 ? '–' : speaker.value(readingAt(timeline, i), 'short'));
  return {
    columns: [
      speaker.say('charts.words.clock'),
      speaker.say('charts.words.lowest'),
      speaker.say('charts.words.highest'),
      speaker.say('charts.words.notes'),
    ],
    rows: daySlots(timeline, index, 60).map(({ minute, lowest, highest, notes }) => [
      speaker.value({ q: 'clock', value: minute }, 'short'),
      readingText(lowest),
      readingText(highest),
      notes.map((note) => noteInWords(note, context)).join(', '),
    ]),
  };
}
