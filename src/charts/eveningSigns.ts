import type { Mark } from '../model/drawing.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Episode } from '../model/measures.ts';
import type { Note, Timeline } from '../model/timeline.ts';
import { addDays, MINUTE_MS } from '../time/calendar.ts';
import { drawnNotes } from './drawnNotes.ts';
import { type EveningFrame, place } from './eveningFrame.ts';
import { NOON } from './eveningsOf.ts';
import { type LongActing, type SignKind, shapeOf, signKind } from './noteLanes.ts';
import { round } from './pen.ts';

const SIGN = 5.6;
/** Middle of the signs, from the top of a row. */
const SIGNS_AT = 3.3;
/** From the middle of one to that of the next. */
const STEP = 8;

/** Noted so long before a low began and after it ended stands beside it; exercise longer before (ours). */
const MINUTES_ROUND_LOW = { before: 360, exercise: 720, after: 120 };
/** What may go with a low; the first named has the first claim to room. */
const SHOWN = ['alarm', 'exercise', 'food', 'rapid'] as const satisfies readonly SignKind[];
export type SignBeside = (typeof SHOWN)[number];

const isNearLow = (note: Note, kind: SignKind, lows: readonly Episode[]): boolean =>
  note.timed &&
  lows.some(({ start, end }) => {
    const before = kind === 'exercise' ? MINUTES_ROUND_LOW.exercise : MINUTES_ROUND_LOW.before;
    return note.at >= start - before * MINUTE_MS && note.at <= end + MINUTES_ROUND_LOW.after * MINUTE_MS;
  });

/** The signs that stand beside lows, for their key. */
export const signsBeside = (timeline: Timeline, lows: readonly Episode[], isLong: LongActing): SignBeside[] =>
  SHOWN.filter((kind) =>
    drawnNotes(timeline).some((note) => signKind(note, isLong) === kind && isNearLow(note, kind, lows)),
  );

/** So many signs further right or left a sign may stand. */
const BY = [0, 1, -1, 2, -2, 3, -3];

/** Notes of one kind within the width of a sign are one; another kind stands a little beside its time rather than on a sign. */
export function eveningSigns(
  timeline: Timeline,
  date: LocalDate,
  lows: Episode[],
  top: number,
  isLong: LongActing,
  frame: EveningFrame,
): Mark[] {
  const inRow = ({ day, minute }: Note): boolean => {
    const own = timeline.days[day]!.date;
    return minute < NOON ? own === addDays(date, 1) : own === date;
  };
  const taken: { x: number; kind: SignKind }[] = [];
  for (const kind of SHOWN) {
    for (const note of drawnNotes(timeline)) {
      if (signKind(note, isLong) !== kind || !inRow(note) || !isNearLow(note, kind, lows)) continue;
      const wished = place(note.minute, frame);
      if (taken.some((one) => one.kind === kind && Math.abs(one.x - wished) < STEP)) continue;
      const x = BY.map((by) => wished + by * STEP)
        .filter((at) => at >= frame.left && at <= frame.end - SIGN / 2 - 1)
        .find((at) => taken.every((one) => Math.abs(one.x - at) >= STEP));
      if (x !== undefined) taken.push({ x, kind });
    }
  }
  return taken.map(
    ({ x, kind }): Mark => ({
      kind: 'sign',
      shape: shapeOf(kind),
      role: 'ink',
      x: round(x),
      y: round(top + SIGNS_AT),
      size: SIGN,
    }),
  );
}
