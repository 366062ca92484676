import type { Drawing, Mark } from '../model/drawing.ts';
import type { Session } from '../model/occasions.ts';
import type { Timeline } from '../model/timeline.ts';
import { profileOf } from '../occasions/profile.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { beyondRange, pieces, rangeLines, spanAxis, spanScale } from './aligned.ts';
import { profileAlong } from './along.ts';
import { glucoseAxis, type Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { NARROW_WIDTH, narrowOr } from './frame.ts';
import { round } from './pen.ts';
import { GROUPS, SPAN, STEP } from './sessions.ts';
import { sessionsTable } from './sessionsTable.ts';
import { wrapped } from './wrapped.ts';

/** What reads a curve along is wider than the plot by the half of what one grips. */
const GRIP = 6;
const GAP = 16;
/** Of a plot, points, where nothing is said. */
const HEIGHT = 96;
/** More curves than these over one another are a black field: the last of each group are drawn. */
const MOST_DRAWN = 14;

/** All sessions laid over one another at their start: with extra food first, with a meal first, with none noted. */
export function sessionPairsChart(
  timeline: Timeline,
  sessions: Session[],
  context: ChartContext,
  height = HEIGHT,
): Drawing {
  const { speaker, text } = context;
  const groups = GROUPS.map((group) => {
    const some = sessions.filter((one) => one.carbsFirst === group);
    return { group, some, drawn: some.slice(-MOST_DRAWN) };
  }).filter(({ some }) => some.length > 0);
  const { narrow, whole } = narrowOr(context.width);
  const left = text * 3.2;
  // On a narrow screen one group stands under another.
  const width = narrow ? whole - left - GRIP : (whole - left - GAP * (groups.length - 1)) / groups.length;
  const heads = groups.map(({ group, some }) => ({
    name: wrapped(speaker.say(`charts.sessions.${group}`), width, text),
    low: wrapped(lowUntilSix(some, context), width, text),
  }));
  const above = Math.max(...heads.map(({ name, low }) => name.length + low.length));
  const head = above * (text + 3);
  const rowHeight = head + height + text + 7;
  const plotOf = (index: number): Plot => ({
    left: round(narrow ? left : left + index * (width + GAP)),
    top: round((narrow ? index * rowHeight : 0) + head),
    width: round(width),
    height,
  });
  const marks = groups.flatMap(({ drawn }, index): Mark[] => {
    const { name, low } = heads[index]!;
    const down = narrow ? index * rowHeight : 0;
    const plot = plotOf(index);
    const start = round(spanScale(plot, SPAN)(0));
    const line = (row: number, content: string, strong: boolean): Mark => ({
      kind: 'text',
      role: strong ? 'ink' : 'axis',
      x: plot.left,
      y: round(down + text + row * (text + 2)),
      text: content,
      size: text,
      anchor: 'start',
      strong,
    });
    return [
      ...name.map((part, row) => line(row, part, true)),
      ...low.map((part, row) => line(name.length + row, part, false)),
      ...drawn.flatMap(({ at }) => beyondRange(timeline, at, SPAN, plot, context)),
      ...(narrow || index === 0 ? glucoseAxis(plot, context) : [rangeLines(plot, context)]),
      { kind: 'line', role: 'grid', lines: [[start, plot.top, start, round(plot.top + height)]], width: 0.9 },
      { kind: 'line', role: 'trace', lines: drawn.flatMap(({ at }) => pieces(timeline, at, SPAN, plot)), width: 0.9 },
      ...spanAxis(plot, SPAN, 120, context),
    ];
  });
  return {
    width: whole,
    get narrow() {
      return narrow ? undefined : sessionPairsChart(timeline, sessions, { ...context, width: NARROW_WIDTH }, height);
    },
    height: round(rowHeight * (narrow ? groups.length : 1)),
    how: 'sessionPairs',
    summary: groups
      .map(({ group, some }) => `${speaker.say(`charts.sessions.${group}`)}: ${lowUntilSix(some, context)}.`)
      .join(' '),
    get table() {
      return sessionsTable(sessions, context);
    },
    get along() {
      return groups.flatMap(({ group, drawn }, index) => {
        const anchors = drawn.map(({ at }) => at);
        const profile = profileOf(timeline, anchors, SPAN.from, SPAN.to, STEP);
        return profileAlong(profile, plotOf(index), speaker.say(`charts.sessions.${group}`), context);
      });
    },
    marks,
  };
}

/** How many sessions, after how many a low was among them by 6 in the morning, and how many leave that open. */
function lowUntilSix(some: readonly Session[], { speaker }: ChartContext): string {
  const known = some.flatMap(({ untilMorning }) => untilMorning.low ?? []);
  return speaker.say('charts.sessions.lowUntilSix', {
    sessions: { q: 'count', value: some.length },
    drawn: { q: 'count', value: Math.min(MOST_DRAWN, some.length) },
    all: { q: 'word', value: some.length > MOST_DRAWN ? 'no' : 'yes' },
    low: { q: 'count', value: known.filter((low) => low).length },
    known: { q: 'count', value: known.length },
    open: { q: 'count', value: some.length - known.length },
    six: { q: 'clock', value: NIGHT_END },
  });
}
