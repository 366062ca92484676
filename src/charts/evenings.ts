import type { Drawing, Mark } from '../model/drawing.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Episode } from '../model/measures.ts';
import type { Note, Timeline } from '../model/timeline.ts';
import { addDays, DAY_MINUTES, MINUTE_MS } from '../time/calendar.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { type Evening, eveningsOf, gravest, NOON } from './eveningsOf.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { type LongActing, type SignKind, shapeOf, signKind } from './noteLanes.ts';
import { otherLows } from './otherLows.ts';
import { round } from './pen.ts';

/** 5.1 mm: signs of notes above, the bars of the lows below. */
const ROW = 14.4;
const BAR = { top: 7.3, height: 6.3 };
const LEFT = 62;
const SIGN = 6;

/** Noted so long before a low began and after it ended stands beside it; exercise longer before (ours). */
const MINUTES_ROUND_LOW = { before: 360, exercise: 720, after: 120 };
/** What may go with a low; the first named has the first claim to room. */
const SHOWN = ['alarm', 'exercise', 'food', 'rapid'] as const satisfies readonly SignKind[];
export type SignBeside = (typeof SHOWN)[number];
/** What a wrist writes every few minutes is one sign where it began (ours). */
const ONE_SESSION = 60;

/** A row for each evening with a low, with what was noted around it; every low that has none as a dated mark on one line. */
export function eveningsChart(
  timeline: Timeline,
  lows: readonly Episode[],
  most: number,
  given: ChartContext,
  isLong: LongActing,
): Drawing {
  const context = { ...given, text: 8 };
  const { speaker, text } = context;
  const all = eveningsOf(lows);
  const shown = gravest(all, most);
  const others = all.filter((one) => !shown.includes(one)).flatMap((one) => one.lows);
  const foot = shown.length * ROW;
  const below = foot + text + 5;
  const height = others.length > 0 ? below + 2 * text + 8 : below;
  const count = (value: number) => ({ q: 'count' as const, value });
  return {
    width: CONTENT_WIDTH,
    height: round(height),
    summary: speaker.say('charts.evenings.summary', {
      evenings: count(all.length),
      rows: count(shown.length),
      lows: count(lows.length),
      others: count(others.length),
    }),
    get table() {
      return {
        columns: (['day', 'start', 'length', 'lowest'] as const).map((name) => speaker.say(`charts.words.${name}`)),
        rows: lows.map((low) => [
          speaker.value({ q: 'date', value: low.date }, 'short'),
          speaker.value({ q: 'clock', value: low.startMinute }, 'short'),
          speaker.value({ q: 'minutes', value: low.minutes }),
          speaker.value({ q: 'glucose', value: low.extreme, limit: low.extremeLimit }),
        ]),
      };
    },
    get marks(): Mark[] {
      return [
        grid(foot),
        ...shown.flatMap((one, row) => rowMarks(timeline, one, row * ROW, context, isLong)),
        ...clockLabels(foot, context),
        ...(others.length > 0 ? otherLows(timeline, others, below, LEFT, context) : []),
      ];
    },
  };
}

const place = (minute: number): number =>
  LEFT + (((minute - NOON + DAY_MINUTES) % DAY_MINUTES) / DAY_MINUTES) * (CONTENT_WIDTH - LEFT);

function grid(foot: number): Mark {
  const lines: number[][] = [];
  for (let hour = 0; hour <= 24; hour += 3) {
    const x = round(LEFT + (hour / 24) * (CONTENT_WIDTH - LEFT));
    lines.push([x, 0, x, foot]);
  }
  return { kind: 'line', role: 'grid', lines, width: 0.5 };
}

function clockLabels(foot: number, { speaker, text }: ChartContext): Mark[] {
  return [0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour): Mark => {
    const x = round(LEFT + (hour / 24) * (CONTENT_WIDTH - LEFT));
    const anchor = hour === 0 ? 'start' : hour === 24 ? 'end' : 'middle';
    const minute = (NOON + hour * 60) % DAY_MINUTES;
    const name = speaker.value({ q: 'clock', value: minute }, 'short');
    return { kind: 'text', role: 'axis', x, y: round(foot + text + 1), text: name, size: text, anchor };
  });
}

function rowMarks(
  timeline: Timeline,
  { date, lows }: Evening,
  top: number,
  context: ChartContext,
  isLong: LongActing,
): Mark[] {
  const { speaker, text } = context;
  const base = round(top + BAR.top + BAR.height);
  const name = `${speaker.value({ q: 'date', value: date }, 'weekday')} ${speaker.value({ q: 'date', value: date }, 'compact')}`;
  const bars = lows.map((low) => {
    const from = place(low.startMinute);
    return {
      low,
      from,
      to: Math.min(CONTENT_WIDTH, from + Math.max(2.5, (low.minutes / DAY_MINUTES) * (CONTENT_WIDTH - LEFT))),
    };
  });
  return [
    { kind: 'text', role: 'ink', x: 0, y: round(base - 1), text: name, size: text, anchor: 'start', strong: true },
    { kind: 'line', role: 'grid', lines: [[LEFT, base, CONTENT_WIDTH, base]], width: 0.5 },
    ...bars.map(
      ({ low, from, to }): Mark => ({
        kind: 'rect',
        role: low.level === 2 ? 'very-low' : 'low',
        x: round(from),
        y: round(top + BAR.top),
        w: round(to - from),
        h: BAR.height,
        outline: 'ink',
        outlineWidth: 0.75,
      }),
    ),
    ...labels(bars, base, context),
    ...signs(timeline, date, lows, top, isLong),
  ];
}

/** Lowest reading and length beside a bar, the gravest first; where there is no room, the bar alone. */
function labels(
  bars: { low: Episode; from: number; to: number }[],
  base: number,
  { speaker, text }: ChartContext,
): Mark[] {
  const taken: [number, number][] = bars.map(({ from, to }) => [from, to]);
  return [...bars]
    .sort((a, b) => b.low.level - a.low.level || b.low.minutes - a.low.minutes)
    .flatMap(({ low, from, to }): Mark[] => {
      const lowest = speaker.value({ q: 'glucose', value: low.extreme }, 'short');
      const label = speaker.say('charts.evenings.low', {
        lowest: { q: 'word', value: low.extremeLimit === 0 ? lowest : `≤${lowest}` },
        length: { q: 'word', value: speaker.value({ q: 'minutes', value: low.minutes }, 'short') },
      });
      const width = roughWidth(label, text);
      for (const [x, anchor] of [
        [to + 3, 'start'],
        [from - 3, 'end'],
      ] as const) {
        const span: [number, number] = anchor === 'start' ? [x, x + width] : [x - width, x];
        if (span[0] < LEFT || span[1] > CONTENT_WIDTH) continue;
        if (taken.some(([a, b]) => span[0] < b + 1 && a < span[1] + 1 && !(a === from && b === to))) continue;
        taken.push(span);
        return [{ kind: 'text', role: 'ink', x: round(x), y: round(base - 0.5), text: label, size: text, anchor }];
      }
      return [];
    });
}

const isNearLow = (note: Note, kind: SignKind, lows: readonly Episode[]): boolean =>
  note.timed &&
  lows.some(({ start, end }) => {
    const before = kind === 'exercise' ? MINUTES_ROUND_LOW.exercise : MINUTES_ROUND_LOW.before;
    return note.at >= start - before * MINUTE_MS && note.at <= end + MINUTES_ROUND_LOW.after * MINUTE_MS;
  });

/** The signs that stand beside lows, for their key. */
export const signsBeside = ({ notes }: Timeline, lows: readonly Episode[], isLong: LongActing): SignBeside[] =>
  SHOWN.filter((kind) => notes.some((note) => signKind(note, isLong) === kind && isNearLow(note, kind, lows)));

/** Notes of one kind within the width of a sign are one; another kind stands a little beside its time rather than on a sign. */
function signs(timeline: Timeline, date: LocalDate, lows: Episode[], top: number, isLong: LongActing): Mark[] {
  const inRow = ({ day, minute }: Note): boolean => {
    const own = timeline.days[day]!.date;
    return minute < NOON ? own === addDays(date, 1) : own === date;
  };
  const taken: { x: number; kind: SignKind }[] = [];
  for (const kind of SHOWN) {
    let last = Number.NEGATIVE_INFINITY;
    for (const note of timeline.notes) {
      if (signKind(note, isLong) !== kind || !inRow(note) || !isNearLow(note, kind, lows)) continue;
      const goesOn = kind === 'exercise' && note.at - last <= ONE_SESSION * MINUTE_MS;
      last = note.at;
      if (goesOn) continue;
      const wished = place(note.minute);
      if (taken.some((one) => one.kind === kind && Math.abs(one.x - wished) < SIGN)) continue;
      const x = [0, SIGN + 0.5, -SIGN - 0.5]
        .map((by) => wished + by)
        .find((at) => taken.every((one) => Math.abs(one.x - at) >= SIGN));
      if (x !== undefined && x <= CONTENT_WIDTH - SIGN / 2) taken.push({ x, kind });
    }
  }
  return taken.map(
    ({ x, kind }): Mark => ({
      kind: 'sign',
      shape: shapeOf(kind),
      role: 'ink',
      x: round(x),
      y: round(top + 3.6),
      size: SIGN,
    }),
  );
}
