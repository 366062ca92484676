import type { Drawing, Mark } from '../model/drawing.ts';
import type { Band } from '../model/targets.ts';
import { BANDS } from '../targets/bands.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { frame, round } from './pen.ts';

const GAP = 2;
const HEIGHT = 30;

/**
 * An average day as 24 blocks of one hour, lowest first. `minutes` are the rounded minutes of each band and sum to
 * 1440, so that the picture and the words beside it always agree.
 */
export function hourBlocksChart(minutes: Record<Band, number>, context: ChartContext): Drawing {
  const { speaker, text } = context;
  const width = (CONTENT_WIDTH - GAP * 23) / 24;
  const marks: Mark[] = [];
  const ends: number[][] = [];
  let done = 0;
  for (const band of BANDS) {
    let left = minutes[band];
    while (left > 1e-9) {
      const hour = Math.floor(done / 60 + 1e-9);
      const within = done - hour * 60;
      const part = Math.min(left, 60 - within);
      const x = hour * (width + GAP) + (within / 60) * width;
      marks.push({ kind: 'rect', role: band, x: round(x), y: 0.5, w: round((part / 60) * width), h: HEIGHT });
      done += part;
      left -= part;
      // Where a band ends inside a block a line closes it: hatches that meet are one gray to a copier.
      const end = round(x + (part / 60) * width);
      if (left <= 1e-9 && within + part < 60 - 1e-9) ends.push([end, 0.5, end, 0.5 + HEIGHT]);
    }
  }
  const frames = Array.from({ length: 24 }, (_, hour) => frame(hour * (width + GAP), 0.5, width, HEIGHT));
  marks.push({ kind: 'line', role: 'ink', lines: [...frames, ...ends], width: 0.75 });
  marks.push(...names(minutes, context, width));
  return {
    width: CONTENT_WIDTH,
    height: round(HEIGHT + text + 8),
    how: 'hourBlocks',
    summary: speaker.say('charts.hourBlocks.summary', {
      veryLow: { q: 'minutes', value: minutes['very-low'] },
      low: { q: 'minutes', value: minutes.low },
      inRange: { q: 'minutes', value: minutes['in-range'] },
      high: { q: 'minutes', value: minutes.high },
      veryHigh: { q: 'minutes', value: minutes['very-high'] },
    }),
    marks,
  };
}

/** Names under the runs that are long enough; the list beside the chart names them all. */
function names(minutes: Record<Band, number>, { speaker, text }: ChartContext, width: number): Mark[] {
  const marks: Mark[] = [];
  let start = 0;
  for (const band of BANDS) {
    const run = minutes[band];
    const label = speaker.say(`bands.${band}.patient`);
    const from = (start / 60) * (width + GAP);
    const room = (run / 60) * (width + GAP) - GAP;
    if (run > 0 && roughWidth(label, text) <= room)
      marks.push({
        kind: 'text',
        role: 'ink',
        x: round(from + room / 2),
        y: round(HEIGHT + text + 3),
        text: label,
        size: text,
        anchor: 'middle',
      });
    start += run;
  }
  return marks;
}
