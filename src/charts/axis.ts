import type { Mark } from '../model/drawing.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Quantity } from '../model/quantity.ts';
import { type ChartContext, limitHeights } from './context.ts';
import { hourLabels } from './hourLabels.ts';
import { round } from './pen.ts';
import { bentLog, type Scale, straight } from './scales.ts';

/** Where the curves of a chart go, in points. */
export interface Plot {
  left: number;
  top: number;
  width: number;
  height: number;
}

/**
 * The glucose axis is the same on every chart of every report: 40 to 400 mg/dL, logarithmic, so that the lows get
 * the room that a linear axis takes from them (Rodbard 2020, doi 10.1089/dia.2020.0524); above 180 mg/dL at half
 * that pace (ours), so that a small picture still shows a low of 62. Values beyond are drawn on its ends.
 */
export const AXIS_LOW = 40;
export const AXIS_HIGH = 400;
const AXIS_BEND = 180;
/** ln(180/40) of ln(180/40) + ln(400/180) / 2: the part of the axis below the bend. */
const BELOW_BEND = 0.7902;

export function glucoseScale({ top, height }: Plot): Scale {
  const foot = top + height;
  return bentLog([AXIS_LOW, AXIS_BEND, AXIS_HIGH], [foot, foot - height * BELOW_BEND, top]);
}

let last: { top: number; height: number; drawn: Scale } | null = null;

/**
 * `glucoseScale` rounded as it is drawn, for the readings of a curve: most are whole and come again many times. The last is
 * kept, because the days of a report share it.
 */
export function glucoseHeights(plot: Plot): Scale {
  const { top, height } = plot;
  if (last?.top === top && last.height === height) return last.drawn;
  const y = glucoseScale(plot);
  const whole = new Float64Array(AXIS_HIGH + 1).fill(Number.NaN);
  const drawn = (mgdl: number): number => {
    if (!Number.isInteger(mgdl) || mgdl < 0 || mgdl > AXIS_HIGH) return round(y(mgdl));
    if (Number.isNaN(whole[mgdl]!)) whole[mgdl] = round(y(mgdl));
    return whole[mgdl]!;
  };
  last = { top, height, drawn };
  return drawn;
}

/** Minute of the local day to x. */
export const clockScale = ({ left, width }: Plot): Scale => straight([0, 1440], [left, left + width]);

/** Two names at the axis stand so far apart, in heights of their print: free, at the closest, and as far as one may be moved for that. */
const FREE = 0.98;
const CLOSEST = 0.8;
const MOVED = 0.15;

/**
 * Where a name at `wanted` finds room among those that stand (baselines, moved where they make room), or null: it moves up and the
 * one below it down, neither further than an eye sees.
 */
function squeezed(wanted: number, standing: { y: number; moved: number }[], text: number): number | null {
  const least = CLOSEST * text;
  const below = standing.filter(({ y }) => y >= wanted).sort((a, b) => a.y - b.y);
  const above = Math.max(-Infinity, ...standing.filter(({ y }) => y < wanted).map(({ y }) => y));
  const [next, after] = below;
  const need = next === undefined ? 0 : Math.max(0, least - (next.y - wanted));
  const up = Math.min(need, MOVED * text);
  const down = need - up;
  if (wanted - up - above < least || (next && next.moved + down > MOVED * text)) return null;
  if (next && after && after.y - next.y - down < least) return null;
  if (next) {
    next.y = round(next.y + down);
    next.moved += down;
  }
  return round(wanted - up);
}

/** Labelled limit lines, the two ends of the axis, and `more` ticks between them where there is room, at the left of the plot. */
export function glucoseAxis(plot: Plot, context: ChartContext, more: readonly number[] = []): Mark[] {
  const y = glucoseScale(plot);
  const limits = limitHeights(context);
  const right = plot.left + plot.width;
  const lines: [number, Quantity][] = [
    [limits.veryLow, { q: 'limit', of: 'very-low' }],
    [limits.low, { q: 'limit', of: 'low' }],
    [limits.high, { q: 'limit', of: 'high' }],
  ];
  if (limits.veryHigh !== null) lines.push([limits.veryHigh, { q: 'limit', of: 'very-high' }]);
  const height = (of: number): Quantity => ({ q: 'glucose', value: of as MgPerDl });
  const marks: Mark[] = [];
  const standing: { y: number; moved: number; named: (y: number) => Mark }[] = [];
  const label = (at: number, quantity: Quantity, role: 'ink' | 'axis', strong: boolean, squeeze = false) => {
    const wanted = round(y(at) + context.text * 0.36);
    const free = standing.every((other) => Math.abs(other.y - wanted) >= context.text * FREE);
    const base = free ? wanted : squeeze ? squeezed(wanted, standing, context.text) : null;
    if (base === null) return;
    const x = round(plot.left - 4);
    const text = context.speaker.value(quantity, 'short');
    const named = (y: number): Mark => ({
      kind: 'text',
      role,
      x,
      y,
      text,
      size: context.text,
      anchor: 'end',
      strong,
    });
    standing.push({ y: base, moved: Math.abs(base - wanted), named });
  };
  for (const [at] of lines) {
    const main = at === limits.low || at === limits.high;
    const line = round(y(at));
    marks.push({
      kind: 'line',
      role: 'limit',
      lines: [[plot.left, line, right, line]],
      width: main ? 0.9 : 0.75,
      ...(main ? {} : { dash: [2.5, 2.5] as [number, number] }),
    });
  }
  // The two limits of the target range are labelled first: where room is short, the others give way.
  for (const main of [true, false])
    for (const [at, quantity] of lines) {
      if ((at === limits.low || at === limits.high) === main) label(at, quantity, 'ink', main);
    }
  for (const end of [AXIS_LOW, AXIS_HIGH]) label(end, height(end), 'axis', false);
  for (const tick of more) label(tick, height(tick), 'axis', false, true);
  return [...marks, ...standing.map(({ y: base, named }) => named(base))];
}

/** Hours named under the plot, midnight to midnight, with a tick an hour. */
export function clockAxis(plot: Plot, context: ChartContext): Mark[] {
  // Large text, and a narrow screen, has room for every sixth hour only.
  const step = context.text > 10 || plot.width < 200 ? 6 : 3;
  const x = clockScale(plot);
  const base = plot.top + plot.height;
  const named: number[] = [];
  const ticks: number[][] = [];
  for (let hour = 0; hour <= 24; hour += 1) {
    const at = round(x(hour * 60));
    if (hour % step === 0) named.push(hour);
    ticks.push([at, base, at, base + (hour % step === 0 ? 4 : 2)]);
  }
  return [
    { kind: 'line', role: 'axis', lines: [[plot.left, base, plot.left + plot.width, base]], width: 0.75 },
    { kind: 'line', role: 'axis', lines: ticks, width: 0.75 },
    ...hourLabels(named, (hour) => x(hour * 60), base + 5 + context.text, context),
  ];
}

/** Light upright lines every `step` hours: decoration that guides the eye, never data. */
export function clockGrid(plot: Plot, step = 6): Mark {
  const x = clockScale(plot);
  const lines: number[][] = [];
  for (let hour = 0; hour <= 24; hour += step) {
    const at = round(x(hour * 60));
    lines.push([at, plot.top, at, round(plot.top + plot.height)]);
  }
  return { kind: 'line', role: 'grid', lines, width: 0.5 };
}
