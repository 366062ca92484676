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

/** What a day's picture shows beyond its summary: each low that began on it, and each note, with times. Undefined: neither. */
export function dayInWords(
  timeline: Timeline,
  { date }: DailySummary,
  index: number,
  lows: readonly Episode[],
  context: ChartContext,
): string | undefined {
  const { speaker } = context;
  const seen = lows
    .filter((low) => low.date === date)
    .map((low) =>
      speaker.say('charts.dayStrip.low', {
        time: { q: 'clock', value: low.startMinute },
        length: { q: 'minutes', value: low.minutes },
        lowest: { q: 'glucose', value: low.extreme, limit: low.extremeLimit },
      }),
    );
  const noted = drawnNotes(timeline)
    .filter((note) => note.day === index)
    .map((note) => noteInWords(note, context));
  const parts = [
    ...(seen.length > 0 ? [speaker.say('charts.dayStrip.lows', { lows: { q: 'word', value: seen.join('; ') } })] : []),
    ...(noted.length > 0
      ? [speaker.say('charts.dayStrip.written', { notes: { q: 'word', value: noted.join('; ') } })]
      : []),
  ];
  return parts.length > 0 ? parts.join(' ') : undefined;
}
