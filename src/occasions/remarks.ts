import type { Near, Remark } from '../model/remarks.ts';
import type { Note } from '../model/timeline.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import type { Signal } from './signal.ts';
import type { LogReader } from './words.ts';

/** A remark from so long before a low or high to so long after its end belongs to it (ours). */
export const NEAR = { before: 30, afterLow: 120, afterHigh: 60 };
/** Of a night speaks who writes from 10 in the evening to 9 in the morning; till then of its lows as well (ours). */
export const NIGHT = { from: 1320, to: 540 };

/** Everything written in a person's own words, each with what it stands near. */
export function findRemarks(signal: Signal, read: LogReader): Remark[] {
  const { notes, days } = signal.timeline;
  return notes.flatMap((note): Remark[] => {
    const text = note.kind === 'text' ? (note.text ?? note.label ?? '').trim() : '';
    if (text === '') return [];
    const { at, day, timed, minute } = note;
    const near = timed ? nearOf(signal, note) : [];
    return [{ at, date: days[day]!.date, minute: timed ? minute : null, text, felt: read.felt(text), near }];
  });
}

function nearOf(signal: Signal, { at, day, minute }: Note): Near[] {
  const { days } = signal.timeline;
  const around = (list: readonly { start: number; end: number }[], after: number) =>
    list.flatMap(({ start, end }, index) =>
      at >= start - NEAR.before * MINUTE_MS && at <= end + after * MINUTE_MS ? [index] : [],
    );
  const night = days[minute >= NIGHT.from ? day + 1 : minute < NIGHT.to ? day : -1];
  const inNight = (minute < NIGHT.to && night ? signal.lows() : []).flatMap(({ start, end }, index) =>
    start < night!.start + NIGHT_END * MINUTE_MS && end > night!.start && start <= at ? [index] : [],
  );
  const lows = [...new Set([...around(signal.lows(), NEAR.afterLow), ...inNight])].sort((a, b) => a - b);
  return [
    ...lows.map((index) => ({ of: 'low' as const, index })),
    ...around(signal.highs(), NEAR.afterHigh).map((index) => ({ of: 'high' as const, index })),
    ...(night ? [{ of: 'night' as const, date: night.date }] : []),
  ];
}
