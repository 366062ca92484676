import type { Episode } from '../model/episodes.ts';
import type { DailySummary } from '../model/measures.ts';
import type { Note, Timeline } from '../model/timeline.ts';
import type { ChartContext } from './context.ts';
import { drawnNotes } from './drawnNotes.ts';
import { amount } from './noteSigns.ts';

/** A note for those who read words only: time, kind, amount, what was written. */
export function noteInWords(note: Note, context: ChartContext): string {
  const { speaker } = context;
  const kind = speaker.say(`notes.${note.kind}.name`);
  const wording = note.label ?? note.text ?? '';
  return [
    note.timed ? speaker.value({ q: 'clock', value: note.minute }, 'short') : '',
    // "Insulin rapid" says its kind.
    wording.toLowerCase().includes(kind.toLowerCase()) ? '' : kind,
    amount(note, context) ?? '',
    wording,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** Each low with its time, length and lowest reading, with its day where several are told. Undefined: none. */
export function lowsInWords(lows: readonly Episode[], { speaker }: ChartContext, dated = false): string | undefined {
  if (lows.length === 0) return undefined;
  const all = lows.map((low) => {
    const text = speaker.say('charts.dayStrip.low', {
      time: { q: 'clock', value: low.startMinute },
      length: { q: 'minutes', value: low.minutes },
      lowest: { q: 'glucose', value: low.extreme, limit: low.extremeLimit },
    });
    return dated ? `${speaker.value({ q: 'date', value: low.date })} ${text}` : text;
  });
  return speaker.say('charts.dayStrip.lows', { lows: { q: 'word', value: all.join('; ') } });
}

/** What a day's picture shows beyond its summary: each low that began on it, and each note, with times. Undefined: neither. */
export function dayInWords(
  timeline: Timeline,
  { date }: DailySummary,
  index: number,
  lows: readonly Episode[],
  context: ChartContext,
): string | undefined {
  const { speaker } = context;
  const seen = lowsInWords(
    lows.filter((low) => low.date === date),
    context,
  );
  const noted = drawnNotes(timeline)
    .filter((note) => note.day === index)
    .map((note) => noteInWords(note, context));
  const written =
    noted.length === 0
      ? undefined
      : speaker.say('charts.dayStrip.written', { notes: { q: 'word', value: noted.join('; ') } });
  return [seen, written].filter((part) => part !== undefined).join(' ') || undefined;
}
