import type { Mark } from '../model/drawing.ts';
import type { ChartContext } from './context.ts';
import { round } from './pen.ts';

/** Least white between two names, in points. */
const GAP = 2;

/** Width of a name in points: these are short, and an m is nearly three times an i. */
const widthOf = (name: string, size: number): number =>
  [...name].reduce((sum, sign) => sum + (/[\s.,:'ijlt]/.test(sign) ? 0.3 : /[mwMW]/.test(sign) ? 0.85 : 0.57), 0) *
  size;

type Side = 'start' | 'middle' | 'end';

/**
 * Names of hours along a clock, midnight to midnight. The two midnights and noon come first; another hour is named
 * where it does not touch those: languages differ in how long their words for midnight are.
 */
export function hourLabels(
  hours: readonly number[],
  at: (hour: number) => number,
  y: number,
  context: ChartContext,
): Mark[] {
  const rank = (hour: number): number => (hour % 24 === 0 ? 0 : hour === 12 ? 1 : 2);
  const taken: { hour: number; from: number; to: number; mark: Mark }[] = [];
  for (const hour of [...hours].sort((a, b) => rank(a) - rank(b) || a - b)) {
    const text = context.speaker.value({ q: 'clock', value: hour * 60 }, 'short');
    const anchor: Side = hour === 24 ? 'end' : hour === 0 ? 'start' : 'middle';
    const width = widthOf(text, context.text);
    const x = at(hour);
    const from = x - (anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2);
    if (taken.some((other) => from < other.to + GAP && other.from < from + width + GAP)) continue;
    const mark: Mark = { kind: 'text', role: 'axis', x: round(x), y: round(y), text, size: context.text, anchor };
    taken.push({ hour, from, to: from + width, mark });
  }
  return taken.sort((a, b) => a.hour - b.hour).map(({ mark }) => mark);
}
