import type { MgPerDl } from '../model/glucose.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Timeline } from '../model/timeline.ts';
import type { ChartContext } from './context.ts';
import { noteInWords } from './dayInWords.ts';
import { drawnNotes } from './drawnNotes.ts';

const HOURS = 24;

/**
 * A day as one row an hour of the clock on the wall: lowest and highest reading, and what was written down. A day that
 * holds nothing has no rows.
 */
export function dayHours(timeline: Timeline, index: number, context: ChartContext) {
  const { speaker } = context;
  const { mgdl, limit, minute } = timeline.readings;
  const day = timeline.days[index]!;
  const lowest = new Array<number>(HOURS).fill(-1);
  const highest = new Array<number>(HOURS).fill(-1);
  // A reading beyond the sensor's range lies beyond all others, also where its bound is not known.
  const height = (i: number): number =>
    limit[i] === 0 ? mgdl[i]! : limit[i]! < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  for (let i = day.from; i < day.to; i += 1) {
    const hour = Math.floor(minute[i]! / 60);
    if (lowest[hour]! < 0 || height(i) < height(lowest[hour]!)) lowest[hour] = i;
    if (highest[hour]! < 0 || height(i) > height(highest[hour]!)) highest[hour] = i;
  }
  const readingText = (i: number): string => {
    if (i < 0) return '–';
    const reading: Quantity = { q: 'glucose', value: mgdl[i]! as MgPerDl, limit: Math.sign(limit[i]!) as -1 | 0 | 1 };
    return speaker.value(reading, 'short');
  };
  const written = drawnNotes(timeline).filter((note) => note.day === index && note.timed);
  return {
    columns: [
      speaker.say('charts.words.clock'),
      speaker.say('charts.words.lowest'),
      speaker.say('charts.words.highest'),
      speaker.say('charts.words.notes'),
    ],
    rows: Array.from({ length: day.to > day.from || written.length > 0 ? HOURS : 0 }, (_, hour) => [
      speaker.value({ q: 'clock', value: hour * 60 }, 'short'),
      readingText(lowest[hour]!),
      readingText(highest[hour]!),
      written
        .filter((note) => Math.floor(note.minute / 60) === hour)
        .map((note) => noteInWords(note, context))
        .join(', '),
    ]),
  };
}
