import type { Mark } from '../model/drawing.ts';
import type { Episode } from '../model/measures.ts';
import type { Timeline } from '../model/timeline.ts';
import type { ChartContext } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { round } from './pen.ts';

/** Lows without a row of their own, as marks on one line of the calendar: a date is where its mark stands. */
export function otherLows(
  timeline: Timeline,
  lows: readonly Episode[],
  top: number,
  left: number,
  { speaker, text, width: whole = CONTENT_WIDTH }: ChartContext,
): Mark[] {
  const { days } = timeline;
  const step = (whole - left) / days.length;
  const index = new Map(days.map(({ date }, i) => [date, i]));
  const base = round(top + text + 1);
  const middle = (i: number): number => left + (i + 0.5) * step;
  const label = speaker.say('charts.evenings.others', { count: { q: 'count', value: lows.length } });
  const every = Math.ceil(34 / step);
  return [
    { kind: 'text', role: 'ink', x: 0, y: round(base - 1), text: label, size: text, anchor: 'start', strong: true },
    { kind: 'line', role: 'axis', lines: [[left, base, whole, base]], width: 0.75 },
    ...lows.map((low): Mark => {
      const width = Math.min(4, Math.max(1.2, step * 0.6));
      // Several of one day stand side by side within it.
      const same = lows.filter(({ date }) => date === low.date);
      const by = (same.indexOf(low) - (same.length - 1) / 2) * Math.min(width + 0.6, step / (same.length + 1));
      const x = middle(index.get(low.date) ?? 0) + by - width / 2;
      return {
        kind: 'rect',
        role: low.level === 2 ? 'very-low' : 'low',
        x: round(x),
        y: round(top),
        w: round(width),
        h: round(text),
        outline: 'ink',
        outlineWidth: 0.5,
      };
    }),
    ...days.flatMap(({ date }, i): Mark[] => {
      if (i % every !== 0 || (i > 0 && middle(i) + 17 > whole)) return [];
      const name = speaker.value({ q: 'date', value: date }, 'compact');
      return [
        {
          kind: 'text',
          role: 'axis',
          x: round(middle(i)),
          y: round(base + text + 1),
          text: name,
          size: text,
          anchor: 'middle',
        },
      ];
    }),
  ];
}
