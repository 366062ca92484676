import { isolated } from '../language/index.ts';
import type { Mark, SignShape } from '../model/drawing.ts';
import type { NoteKind } from '../model/input.ts';
import type { Note } from '../model/timeline.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { round } from './pen.ts';

const SHAPES: Record<NoteKind, SignShape> = {
  meal: 'circle',
  insulin: 'triangle',
  'insulin-rate': 'dash',
  exercise: 'diamond',
  medication: 'square',
  fingerstick: 'plus',
  calibration: 'plus',
  alarm: 'bell',
  sensor: 'ring',
  text: 'dash',
};

const SIZE = 8.5;
const LANE = 11;
const LABEL = 8.5;
const LONGEST_LABEL = 26;
/** The least of a note that says more than its sign, in letters. */
const SHORT_LABEL = 14;
/** Between a sign, which holds its letter, and its label; points. */
const SPACE = { narrow: 1.5, wide: 2.5 };

/** Height that lanes of signs take. */
export const signsHeight = (lanes: number): number => lanes * LANE;

interface Room {
  left: number;
  right: number;
  lanes: number;
}

/** Signs of the day's notes under the curve, on its time axis; amount and label beside a sign where there is room. */
export function noteSigns(
  notes: Note[],
  x: (minute: number) => number,
  top: number,
  room: Room,
  context: ChartContext,
): Mark[] {
  const timed = notes.filter((one) => one.timed).sort((a, b) => a.minute - b.minute);
  const lanes: { note: Note; centre: number }[][] = Array.from({ length: room.lanes }, () => []);
  let crowded = 0;
  for (const note of timed) {
    const centre = x(note.minute);
    const lane = lanes.find((one) => (one[one.length - 1]?.centre ?? -Infinity) + SIZE + 1 <= centre);
    if (lane) lane.push({ note, centre });
    else crowded += 1;
  }
  const marks = lanes.flatMap((lane, row) =>
    lane.flatMap(({ note, centre }, index) => {
      const until = (lane[index + 1]?.centre ?? room.right + SIZE) - SIZE;
      return sign(note, centre, top + row * LANE + SIZE / 2, until, context);
    }),
  );
  if (crowded > 0) {
    const text = context.speaker.say('charts.dayStrip.crowded', { count: { q: 'count', value: crowded } });
    const y = round(top + signsHeight(room.lanes) - 2);
    marks.push({ kind: 'text', role: 'axis', x: room.left - 4, y, text, size: LABEL, anchor: 'end' });
  }
  return marks;
}

function sign(note: Note, centre: number, y: number, until: number, context: ChartContext): Mark[] {
  const letter = context.speaker.say(`notes.${note.kind}.letter`);
  const mark: Mark = {
    kind: 'sign',
    shape: SHAPES[note.kind],
    role: 'ink',
    x: round(centre),
    y: round(y),
    size: SIZE,
    letter,
  };
  const narrow = note.kind === 'meal' || note.kind === 'medication';
  const start = centre + SIZE / 2 + (narrow ? SPACE.narrow : SPACE.wide);
  const text = labels(note, context).find((one) => start + roughWidth(one, LABEL) <= until);
  if (text === undefined) return [mark];
  return [
    mark,
    { kind: 'text', role: 'axis', x: round(start), y: round(y + LABEL * 0.36), text, size: LABEL, anchor: 'start' },
  ];
}

/** Only what was written, the fuller wording first: `30 g bean salad`, `30 g`; nothing where nothing was noted. */
function labels(note: Note, { speaker }: Pick<ChartContext, 'speaker'>): string[] {
  const short = amount(note, { speaker });
  const name = (note.label ?? note.text ?? '').trim();
  const named =
    name === '' || note.kind === 'insulin' || note.kind === 'insulin-rate' ? [] : [beginning(name, LONGEST_LABEL)];
  if (short === null) return named.length === 0 ? [] : [...named, beginning(name, SHORT_LABEL)];
  return [...named.map((one) => `${short} ${isolated(one)}`), short];
}

/** A long note by its first words: that something was written matters as much as the rest of it. */
function beginning(name: string, most: number): string {
  if (name.length <= most) return name;
  const cut = name.slice(0, most);
  return `${cut.replace(/[\s,;:.]+\S*$/u, '')}…`;
}

/** What was written as an amount, in words; null where nothing was. */
export function amount(note: Note, { speaker }: Pick<ChartContext, 'speaker'>): string | null {
  if (note.kind === 'exercise' && note.minutes !== undefined)
    return speaker.value({ q: 'minutes', value: note.minutes }, 'short');
  if (note.amount === undefined) return null;
  const number = speaker.number(note.amount, decimals(note.amount));
  if (note.kind === 'fingerstick' || note.kind === 'calibration') return number;
  const known = note.unit === 'IU' ? 'insulin' : note.unit === 'IU/h' ? 'insulinRate' : undefined;
  const unit = known ? speaker.say(`units.${known}`) : (note.unit ?? '');
  return speaker.say('charts.dayStrip.amount', {
    amount: { q: 'word', value: number },
    unit: { q: 'word', value: unit },
  });
}

/** As many decimals as were written, two at most. */
const decimals = (value: number): number => [0, 1].find((places) => Number(value.toFixed(places)) === value) ?? 2;
