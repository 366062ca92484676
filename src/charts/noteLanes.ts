import type { Mark, SignShape } from '../model/drawing.ts';
import type { Note } from '../model/timeline.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { amount } from './noteSigns.ts';
import { round } from './pen.ts';

/** Signs beside a curve of half a page's width. */
const SIGN = 6;
const LANE = 8;
const GAP = 1.5;
/** How far right of its own time a sign may stand where another is in the way, in points. */
const SHIFT = 9;

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
    case 'insulin-rate':
      return 'rate';
    case 'exercise':
      return 'exercise';
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
      for (const group of grouped(some, kind, x, context)) place(group, placed, x, right, kind, context);
    }
    const y = top + lane * LANE + SIGN / 2;
    return placed.flatMap((one) => marksOf(one, y, context));
  });
}

/** Neighbours that would stand on one another are told together; a rate is told once a day, by its least and most. */
function grouped(notes: Note[], kind: SignKind, x: (minute: number) => number, context: ChartContext): Note[][] {
  if (kind === 'rate') return notes.length === 0 ? [] : [notes];
  const groups: Note[][] = [];
  for (const note of notes) {
    const last = groups.at(-1);
    const until = last && x(last[0]!.minute) + widthOf(amountText(last, kind, context), context);
    if (last && until !== undefined && x(note.minute) < until + GAP) last.push(note);
    else groups.push([note]);
  }
  return groups;
}

function place(
  group: Note[],
  placed: Placed[],
  x: (minute: number) => number,
  right: number,
  kind: SignKind,
  context: ChartContext,
): void {
  const text = amountText(group, kind, context);
  for (const label of text === '' ? [''] : [text, '']) {
    const width = widthOf(label, context);
    const wished = Math.min(x(group[0]!.minute), right - width + SIGN / 2);
    for (let at = wished; at <= wished + SHIFT; at += 1) {
      const [from, until] = [at - SIGN / 2, at - SIGN / 2 + width];
      if (until > right + 1 || placed.some((one) => from < one.until + GAP && one.x - SIGN / 2 < until + GAP)) continue;
      placed.push({ x: at, kind, text: label, until });
      return;
    }
  }
}

const widthOf = (text: string, { text: size }: ChartContext): number =>
  SIGN + (text === '' ? 0 : 1 + roughWidth(text, size) * 0.98);

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
  const at = { x: round(x + SIGN / 2 + 1), y: round(y + context.text * 0.36) };
  return [sign, { kind: 'text', role: 'ink', ...at, text, size: context.text, anchor: 'start' }];
}
