import type { Mark, SignShape } from '../model/drawing.ts';
import type { Note } from '../model/timeline.ts';
import { amountWidth, type ChartContext } from './context.ts';
import { amount } from './noteSigns.ts';
import { round } from './pen.ts';

/** Signs beside a curve of half a page's width. */
const SIGN = 6;
const LANE = 8;
/** Between what stands side by side, and between a sign and its words; points. */
const GAP = 3;
const TO_WORDS = 1.2;
/** How far from its own time a sign may stand where another is in the way; one without words goes further before it is left out. */
const SHIFT = { left: 4, right: 9 };
const FAR = { left: 60, right: 60 };
/** Notes further apart are never told together. */
const NEAR = 60;

/** What a sign stands for on the pages of a visit: rapid and long-acting insulin, a dose and a rate, an alarm and a change of sensor differ. */
export type SignKind =
  | 'food'
  | 'rapid'
  | 'long'
  | 'rate'
  | 'exercise'
  | 'medicine'
  | 'alarm'
  | 'sensor'
  | 'remark'
  | 'stick';

const SHAPE: Record<SignKind, SignShape> = {
  food: 'circle',
  rapid: 'triangle',
  long: 'wedge',
  rate: 'steps',
  exercise: 'diamond',
  medicine: 'square',
  alarm: 'bell',
  sensor: 'ring',
  remark: 'dash',
  stick: 'plus',
};

export const shapeOf = (kind: SignKind): SignShape => SHAPE[kind];

/** Whether a name is that of a long-acting insulin, by the clinic's own list. */
export type LongActing = (label: string) => boolean;

export function signKind({ kind, label, unit }: Note, isLong: LongActing): SignKind {
  switch (kind) {
    case 'meal':
      return 'food';
    case 'insulin':
      if (/\/\s*h/i.test(unit ?? '')) return 'rate';
      return label !== undefined && isLong(label) ? 'long' : 'rapid';
    case 'exercise':
      return 'exercise';
    case 'insulin-rate':
      return 'rate';
    case 'medication':
      return 'medicine';
    case 'alarm':
      return 'alarm';
    case 'sensor':
      return 'sensor';
    case 'text':
      return 'remark';
    default:
      return 'stick';
  }
}

/** Food above, rapid insulin below it, then all else; what comes first in a lane has the first claim to room. */
const LANES: readonly (readonly SignKind[])[] = [
  ['food'],
  ['rapid'],
  ['long', 'rate', 'exercise', 'alarm', 'medicine', 'sensor', 'remark'],
];

export const lanesHeight = LANES.length * LANE;

interface Placed {
  x: number;
  kind: SignKind;
  text: string;
  until: number;
}

/** Signs of a day's notes under its curve, with what was written as an amount; notes too close for signs of their own are one. */
export function noteLanes(
  notes: readonly Note[],
  x: (minute: number) => number,
  top: number,
  right: number,
  context: ChartContext,
  isLong: LongActing,
): Mark[] {
  const timed = notes.filter((note) => note.timed).sort((a, b) => a.minute - b.minute);
  return LANES.flatMap((kinds, lane) => {
    const placed: Placed[] = [];
    for (const kind of kinds) {
      const some = timed.filter((note) => signKind(note, isLong) === kind);
      placed.push(...ofKind(some, { kind, placed, x, right, context }));
    }
    const y = top + lane * LANE + SIGN / 2;
    return placed.flatMap((one) => marksOf(one, y, context));
  });
}

interface Lane {
  kind: SignKind;
  /** Signs of other kinds that stand already. */
  placed: readonly Placed[];
  x: (minute: number) => number;
  right: number;
  context: ChartContext;
}

/** The notes of a kind, each at its time; those that would stand on one another are told together. A rate is told once a day, by its least and most. */
function ofKind(notes: Note[], lane: Lane): Placed[] {
  let groups = lane.kind === 'rate' ? [notes].filter((some) => some.length > 0) : notes.map((note) => [note]);
  for (;;) {
    const { own, stuck } = setOut(groups, lane, false);
    const joined = stuck < 0 ? null : joinedAt(groups, stuck, lane);
    if (stuck < 0) return own;
    if (joined === null) return setOut(groups, lane, true).own;
    groups = joined;
  }
}

/** Each group in its place, or the first that finds none; `bare`: a sign without its words rather than none, where others crowd it out. */
function setOut(groups: Note[][], lane: Lane, bare: boolean): { own: Placed[]; stuck: number } {
  const own: Placed[] = [];
  for (const [i, group] of groups.entries()) {
    const taken = [...lane.placed, ...own];
    const one =
      spot(group, amountText(group, lane.kind, lane.context), SHIFT, taken, lane) ??
      (bare ? spot(group, '', FAR, taken, lane) : null);
    if (one) own.push(one);
    else if (!bare) return { own, stuck: i };
  }
  return { own, stuck: -1 };
}

/** The groups with the one that finds no room joined to its nearer neighbour; null where none is near. */
function joinedAt(groups: Note[][], stuck: number, { x }: Lane): Note[][] | null {
  const distance = (i: number): number => {
    const [before, after] = [groups[i]?.at(-1), groups[i + 1]?.[0]];
    return before && after ? x(after.minute) - x(before.minute) : Number.POSITIVE_INFINITY;
  };
  const at = distance(stuck - 1) <= distance(stuck) ? stuck - 1 : stuck;
  if (distance(at) > NEAR) return null;
  return [...groups.slice(0, at), [...groups[at]!, ...groups[at + 1]!], ...groups.slice(at + 2)];
}

/** Where a group stands with its words: at its own time or a little beside it; null where all of that is taken. */
function spot(
  group: Note[],
  text: string,
  shift: { left: number; right: number },
  taken: readonly Placed[],
  { kind, x, right, context }: Lane,
): Placed | null {
  const width = widthOf(text, context);
  const wished = Math.min(x(group[0]!.minute), right + SIGN / 2 - width);
  const steps = Array.from({ length: shift.right + shift.left + 1 }, (_, i) => i - shift.left);
  for (const step of steps.sort((a, b) => Math.abs(a) - Math.abs(b) || b - a)) {
    const at = wished + step;
    const [from, until] = [at - SIGN / 2, at - SIGN / 2 + width];
    if (until > right + 1 || from < x(0) - SIGN / 2) continue;
    if (taken.every((one) => from >= one.until + GAP || one.x - SIGN / 2 >= until + GAP))
      return { x: at, kind, text, until };
  }
  return null;
}

const widthOf = (text: string, { text: size }: ChartContext): number =>
  SIGN + (text === '' ? 0 : TO_WORDS + amountWidth(text, size));

/** Bare amounts, since the key names their unit; of several together how many, and their sum. */
function amountText(notes: Note[], kind: SignKind, context: ChartContext): string {
  const { speaker } = context;
  const number = (value: number): string =>
    speaker.number(value, [0, 1].find((n) => Number(value.toFixed(n)) === value) ?? 2);
  const values = notes.flatMap(({ amount: value }) => (value === undefined ? [] : [value]));
  if (kind === 'rate') {
    const [least, most] = [Math.min(...values), Math.max(...values)];
    return values.length === 0 ? '' : least === most ? number(least) : `${number(least)}–${number(most)}`;
  }
  const sum = number(Math.round(values.reduce((total, value) => total + value, 0) * 100) / 100);
  if (kind === 'food' || kind === 'rapid' || kind === 'long') {
    if (notes.length === 1) return values.length === 0 ? '' : number(values[0]!);
    return values.length === 0 ? `${notes.length}×` : `${notes.length}× ${sum}`;
  }
  if (notes.length > 1) return `${notes.length}×`;
  return kind === 'exercise' ? (amount(notes[0]!, context) ?? '') : '';
}

function marksOf({ x, kind, text }: Placed, y: number, context: ChartContext): Mark[] {
  const sign: Mark = { kind: 'sign', shape: SHAPE[kind], role: 'ink', x: round(x), y: round(y), size: SIGN };
  if (text === '') return [sign];
  const at = { x: round(x + SIGN / 2 + TO_WORDS), y: round(y + context.text * 0.36) };
  return [sign, { kind: 'text', role: 'ink', ...at, text, size: context.text, anchor: 'start' }];
}
