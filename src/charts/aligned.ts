import { scaleLinear } from 'd3-scale';
import type { Mark } from '../model/drawing.ts';
import type { Band } from '../model/targets.ts';
import type { Timeline } from '../model/timeline.ts';
import { firstFrom } from '../stats/sorted.ts';
import { AXIS_HIGH, AXIS_LOW, glucoseScale, type Plot } from './axis.ts';
import { type ChartContext, limitHeights, roughWidth } from './context.ts';
import { round } from './pen.ts';

const MINUTE = 60_000;

/** Minutes from a note, and how they lie on the page. */
export interface Span {
  from: number;
  to: number;
}

export const spanScale = (plot: Plot, { from, to }: Span): ((minute: number) => number) =>
  scaleLinear()
    .domain([from, to])
    .range([plot.left, plot.left + plot.width]);

/** The curve around a note, broken at gaps. One entry a piece. */
export function pieces(timeline: Timeline, anchor: number, span: Span, plot: Plot): number[][] {
  const { at } = timeline.readings;
  const x = spanScale(plot, span);
  const y = glucoseScale(plot);
  const lines: number[][] = [];
  let current: number[] = [];
  const [first, end] = within(timeline, anchor, span);
  for (let i = first; i < end; i++) {
    if (i === first || at[i]! - at[i - 1]! > timeline.gapMinutes * MINUTE) {
      current = [];
      lines.push(current);
    }
    current.push(round(x((at[i]! - anchor) / MINUTE)), round(y(heightOf(timeline, i))));
  }
  for (const line of lines) if (line.length === 2) line.push(round(line[0]! + 0.8), line[1]!);
  return lines;
}

/** What lies beyond the target range, filled from each limit to the curve, the outer level in its own colour. */
export function beyondRange(timeline: Timeline, anchor: number, span: Span, plot: Plot, context: ChartContext): Mark[] {
  const limits = limitHeights(context);
  const levels: { band: Band; from: number; to: number; low: boolean }[] = [
    { band: 'low', from: limits.low, to: limits.veryLow, low: true },
    { band: 'very-low', from: limits.veryLow, to: 1, low: true },
    { band: 'high', from: limits.high, to: limits.veryHigh ?? AXIS_HIGH, low: false },
  ];
  if (limits.veryHigh !== null) levels.push({ band: 'very-high', from: limits.veryHigh, to: AXIS_HIGH, low: false });
  return levels.flatMap(({ band, from, to, low }): Mark[] => {
    const rings = ringsBeyond(timeline, anchor, span, plot, { from, to, low });
    return rings.length === 0 ? [] : [{ kind: 'shape', role: band, rings }];
  });
}

function ringsBeyond(
  timeline: Timeline,
  anchor: number,
  span: Span,
  plot: Plot,
  level: { from: number; to: number; low: boolean },
): number[][] {
  const { at } = timeline.readings;
  const x = spanScale(plot, span);
  const y = glucoseScale(plot);
  const base = round(y(level.from));
  const stop = round(y(level.to));
  const rings: number[][] = [];
  let ring: number[] = [];
  const close = () => {
    if (ring.length === 4) ring.push(round(ring[2]! + 1), ring[3]!);
    if (ring.length > 4) rings.push([...ring, ring[ring.length - 2]!, base]);
    ring = [];
  };
  const [first, end] = within(timeline, anchor, span);
  for (let i = first; i < end; i++) {
    const value = heightOf(timeline, i);
    const out = level.low ? value < level.from : value > level.from;
    if (!out || (i > first && at[i]! - at[i - 1]! > timeline.gapMinutes * MINUTE)) close();
    if (!out) continue;
    const px = round(x((at[i]! - anchor) / MINUTE));
    const py = round(y(value));
    if (ring.length === 0) ring.push(px, base);
    ring.push(px, level.low ? Math.min(py, stop) : Math.max(py, stop));
  }
  close();
  return rings;
}

function within({ readings }: Timeline, anchor: number, { from, to }: Span): [first: number, end: number] {
  const low = firstFrom(readings.at, readings.count, anchor + from * MINUTE);
  let end = low;
  while (end < readings.count && readings.at[end]! <= anchor + to * MINUTE) end++;
  return [low, end];
}

/** A reading beyond a limit that the file does not name is drawn on the end of the axis. */
function heightOf({ readings }: Timeline, index: number): number {
  const value = readings.mgdl[index]!;
  if (!Number.isNaN(value)) return value;
  return readings.limit[index]! < 0 ? AXIS_LOW : AXIS_HIGH;
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
    const text = context.say.say('charts.sessions.axis', { hours: { q: 'count', value: minute / 60 } });
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
