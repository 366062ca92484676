import type { Mark } from '../model/drawing.ts';
import type { Band } from '../model/targets.ts';
import type { Timeline } from '../model/timeline.ts';
import { AXIS_HIGH, AXIS_LOW, glucoseHeights, type Plot } from './axis.ts';
import { type ChartContext, limitHeights } from './context.ts';
import { round } from './pen.ts';

/** Readings as a chart draws them, from left to right; columns of one length. */
export interface Curve {
  /** Points on the page. */
  x: number[];
  mgdl: number[];
  /** Whether the line begins anew at the reading: at the first, and after a gap. */
  anew: boolean[];
}

/** A reading beyond a limit that the file does not name is drawn on the end of the axis. */
export function heightOf({ readings }: Timeline, index: number): number {
  const value = readings.mgdl[index]!;
  if (!Number.isNaN(value)) return value;
  return readings.limit[index]! < 0 ? AXIS_LOW : AXIS_HIGH;
}

/** The curve in pieces, one entry a piece; a lone reading is a short dash. */
export function piecesOf({ x, mgdl, anew }: Curve, plot: Plot): number[][] {
  const y = glucoseHeights(plot);
  const lines: number[][] = [];
  for (let from = 0, to = 1; from < x.length; from = to++) {
    while (to < x.length && !anew[to]) to++;
    // Of its length from the start: to grow costs as much again.
    const line = new Array<number>(2 * (to - from));
    for (let i = from; i < to; i++) {
      line[2 * (i - from)] = x[i]!;
      line[2 * (i - from) + 1] = y(mgdl[i]!);
    }
    lines.push(line);
  }
  for (const line of lines) if (line.length === 2) line.push(round(line[0]! + 0.8), line[1]!);
  return lines;
}

/** A level beyond the target range, from the limit where it begins to the one where it ends. */
interface Level {
  band: Band;
  from: number;
  to: number;
  low: boolean;
}

/** What lies beyond the target range, filled from each limit to the curve, the outer level in its own colour. */
export function filledBeyond(curve: Curve, plot: Plot, context: ChartContext): Mark[] {
  const limits = limitHeights(context);
  const levels: Level[] = [
    { band: 'low', from: limits.low, to: limits.veryLow, low: true },
    { band: 'very-low', from: limits.veryLow, to: AXIS_LOW, low: true },
    { band: 'high', from: limits.high, to: limits.veryHigh ?? AXIS_HIGH, low: false },
  ];
  if (limits.veryHigh !== null) levels.push({ band: 'very-high', from: limits.veryHigh, to: AXIS_HIGH, low: false });
  return levels.flatMap((level): Mark[] => {
    const rings = ringsBeyond(curve, plot, level);
    return rings.length === 0 ? [] : [{ kind: 'shape', role: level.band, rings }];
  });
}

/** Closed shapes between where a level begins and the curve, no further than where it ends. */
function ringsBeyond({ x, mgdl, anew }: Curve, plot: Plot, { from, to, low }: Level): number[][] {
  const y = glucoseHeights(plot);
  const base = y(from);
  const stop = y(to);
  const rings: number[][] = [];
  let ring: number[] = [];
  const close = () => {
    if (ring.length === 4) ring.push(round(ring[2]! + 1), ring[3]!);
    if (ring.length > 4) {
      ring.push(ring[ring.length - 2]!, base);
      rings.push(ring);
    }
    if (ring.length > 0) ring = [];
  };
  for (let i = 0; i < x.length; i++) {
    const out = low ? mgdl[i]! < from : mgdl[i]! > from;
    if (!out || anew[i]) close();
    if (!out) continue;
    if (ring.length === 0) ring.push(x[i]!, base);
    const height = y(mgdl[i]!);
    ring.push(x[i]!, low ? Math.min(height, stop) : Math.max(height, stop));
  }
  close();
  return rings;
}
