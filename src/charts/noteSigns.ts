import type { Mark, SignShape } from '../model/drawing.ts';
import type { NoteKind } from '../model/input.ts';
import type { Note } from '../model/timeline.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { round } from './pen.ts';

const SHAPES: Record<NoteKind, SignShape> = {
  meal: 'circle',
  insulin: 'triangle',
  exercise: 'diamond',
  medication: 'square',
  fingerstick: 'plus',
  calibration: 'plus',
  alarm: 'bell',
  sensor: 'ring',
  text: 'dash',
};

const SIZE = 8;

/** Signs of the day's notes under the curve, on its time axis; the amount beside a sign where there is room. */
export function noteSigns(
  notes: Note[],
  x: (minute: number) => number,
  top: number,
  room: { left: number; right: number; lanes: number },
  context: ChartContext,
): Mark[] {
  const free = new Array<number>(room.lanes).fill(room.left - 20);
  const marks: Mark[] = [];
  let crowded = 0;
  for (const note of notes.filter((one) => one.timed).sort((a, b) => a.minute - b.minute)) {
    const centre = x(note.minute);
    const lane = free.findIndex((end) => end <= centre - SIZE / 2);
    if (lane < 0) {
      crowded += 1;
      continue;
    }
    const y = top + lane * (SIZE + 2.5) + SIZE / 2;
    const letter = context.say.say(`notes.${note.kind}.letter`);
    marks.push({
      kind: 'sign',
      shape: SHAPES[note.kind],
      role: 'ink',
      x: round(centre),
      y: round(y),
      size: SIZE,
      letter,
    });
    const label = amount(note, context);
    const width = label === null ? 0 : roughWidth(label, LABEL) + 2;
    const next = notes.find((other) => other.timed && other.minute > note.minute);
    const until = next ? x(next.minute) - SIZE / 2 : room.right;
    const fits = label !== null && centre + SIZE / 2 + 1 + width <= Math.min(until, room.right);
    if (fits)
      marks.push({
        kind: 'text',
        role: 'axis',
        x: round(centre + SIZE / 2 + 1),
        y: round(y + LABEL * 0.36),
        text: label,
        size: LABEL,
        anchor: 'start',
      });
    free[lane] = centre + SIZE / 2 + 1 + (fits ? width : 0);
  }
  if (crowded > 0) {
    const text = context.say.say('charts.dayStrip.crowded', { count: { q: 'count', value: crowded } });
    marks.push({
      kind: 'text',
      role: 'axis',
      x: room.right,
      y: round(top + signsHeight(room.lanes) + LABEL * 0.2),
      text,
      size: LABEL,
      anchor: 'end',
    });
  }
  return marks;
}

const LABEL = 7.5;

/** Height that lanes of signs take. */
export const signsHeight = (lanes: number): number => lanes * (SIZE + 2.5);

/** Only what was written: an amount with its unit, or the minutes; nothing where nothing was noted. */
export function amount(note: Note, { say }: ChartContext): string | null {
  if (note.kind === 'exercise' && note.minutes !== undefined)
    return say.value({ q: 'minutes', value: note.minutes }, 'short');
  if (note.amount === undefined) return null;
  const number = say.number(
    note.amount,
    Number.isInteger(note.amount) ? 0 : note.amount * 10 === Math.round(note.amount * 10) ? 1 : 2,
  );
  if (note.kind === 'fingerstick' || note.kind === 'calibration') return number;
  const unit = note.unit === 'IU' ? say.say('units.insulin') : (note.unit ?? '');
  return say.say('charts.dayStrip.amount', { amount: { q: 'word', value: number }, unit: { q: 'word', value: unit } });
}
