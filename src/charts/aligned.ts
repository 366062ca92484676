import type { Mark } from '../model/drawing.ts';
import type { Timeline } from '../model/timeline.ts';
import { firstFrom } from '../stats/sorted.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { glucoseScale, type Plot } from './axis.ts';
import { type ChartContext, limitHeights, roughWidth } from './context.ts';
import { type Curve, filledBeyond, heightOf, piecesOf } from './curve.ts';
import { round } from './pen.ts';
import { type Scale, straight } from './scales.ts';

/** Minutes from a note, and how they lie on the page. */
export interface Span {
  from: number;
  to: number;
}

export const spanScale = ({ left, width }: Plot, { from, to }: Span): Scale =>
  straight([from, to], [left, left + width]);

/** The curve around a note, broken at gaps. One entry a piece. */
export const pieces = (timeline: Timeline, anchor: number, span: Span, plot: Plot): number[][] =>
  piecesOf(curveAround(timeline, anchor, span, plot), plot);

/** What of it lies beyond the target range, filled. */
export const beyondRange = (
  timeline: Timeline,
  anchor: number,
  span: Span,
  plot: Plot,
  context: ChartContext,
): Mark[] => filledBeyond(curveAround(timeline, anchor, span, plot), plot, context);

function curveAround(timeline: Timeline, anchor: number, span: Span, plot: Plot): Curve {
  const { at } = timeline.readings;
  const x = spanScale(plot, span);
  const curve: Curve = { x: [], mgdl: [], anew: [] };
  const [first, end] = within(timeline, anchor, span);
  for (let i = first; i < end; i++) {
    curve.x.push(round(x((at[i]! - anchor) / MINUTE_MS)));
    curve.mgdl.push(heightOf(timeline, i));
    curve.anew.push(i === first || at[i]! - at[i - 1]! > timeline.gapMinutes * MINUTE_MS);
  }
  return curve;
}

function within({ readings }: Timeline, anchor: number, { from, to }: Span): [first: number, end: number] {
  const low = firstFrom(readings.at, readings.count, anchor + from * MINUTE_MS);
  let end = low;
  while (end < readings.count && readings.at[end]! <= anchor + to * MINUTE_MS) end++;
  return [low, end];
}

/** Lines of the target range, without labels, for panels beside one that has them. */
export function rangeLines(plot: Plot, context: ChartContext): Mark {
  const { low, high } = limitHeights(context);
  const y = glucoseScale(plot);
  const right = plot.left + plot.width;
  const lines = [low, high].map((limit) => [plot.left, round(y(limit)), right, round(y(limit))]);
  return { kind: 'line', role: 'limit', lines, width: 0.75 };
}

/** Hours from the note under the plot: `start`, `+2 h` … */
export function spanAxis(plot: Plot, span: Span, step: number, context: ChartContext): Mark[] {
  const x = spanScale(plot, span);
  const base = round(plot.top + plot.height);
  const marks: Mark[] = [];
  const ticks: number[][] = [];
  let taken = Number.NEGATIVE_INFINITY;
  for (let minute = Math.ceil(span.from / step) * step; minute <= span.to; minute += step) {
    const at = round(x(minute));
    ticks.push([at, base, at, round(base + 3)]);
    if (minute < 0) continue;
    const text = context.speaker.say('charts.sessions.axis', { hours: { q: 'count', value: minute / 60 } });
    const anchor = minute === span.to ? 'end' : 'middle';
    const width = roughWidth(text, context.text);
    const left = at - (anchor === 'end' ? width : width / 2);
    // Where labels would touch, the later one is left out.
    if (left < taken) continue;
    taken = left + width + 4;
    marks.push({
      kind: 'text',
      role: 'axis',
      x: at,
      y: round(base + 4 + context.text),
      text,
      size: context.text,
      anchor,
    });
  }
  return [
    {
      kind: 'line',
      role: 'axis',
      lines: [[plot.left, base, round(plot.left + plot.width), base], ...ticks],
      width: 0.75,
    },
    ...marks,
  ];
}
