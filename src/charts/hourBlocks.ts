import type { Drawing, Mark } from '../model/drawing.ts';
import type { Band } from '../model/targets.ts';
import { BANDS } from '../targets/bands.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH, NARROW_WIDTH } from './frame.ts';
import { frame, round } from './pen.ts';

const GAP = 2;
const HEIGHT = 30;

/** Blocks a row, and the room of one and of a row with the names under it; points. */
interface Grid {
  perRow: number;
  width: number;
  rowHeight: number;
}

/**
 * An average day as 24 blocks of one hour, lowest first. `minutes` are the rounded minutes of each band and sum to
 * 1440, so that the picture and the words beside it always agree.
 */
export function hourBlocksChart(minutes: Record<Band, number>, context: ChartContext): Drawing {
  const { speaker, text, width: whole = CONTENT_WIDTH } = context;
  const narrow = whole < CONTENT_WIDTH;
  const perRow = narrow ? 12 : 24;
  const width = (whole - GAP * (perRow - 1)) / perRow;
  const rowHeight = round(HEIGHT + text + 8);
  const placeOf = (hour: number) => ({
    left: (hour % perRow) * (width + GAP),
    top: round(0.5 + Math.floor(hour / perRow) * rowHeight),
  });
  const marks: Mark[] = [];
  const ends: number[][] = [];
  let done = 0;
  for (const band of BANDS) {
    let left = minutes[band];
    while (left > 1e-9) {
      const hour = Math.floor(done / 60 + 1e-9);
      const within = done - hour * 60;
      const part = Math.min(left, 60 - within);
      const { left: edge, top } = placeOf(hour);
      const x = edge + (within / 60) * width;
      marks.push({ kind: 'rect', role: band, x: round(x), y: top, w: round((part / 60) * width), h: HEIGHT });
      done += part;
      left -= part;
      // Where a band ends inside a block a line closes it: hatches that meet are one gray to a copier.
      const end = round(x + (part / 60) * width);
      if (left <= 1e-9 && within + part < 60 - 1e-9) ends.push([end, top, end, top + HEIGHT]);
    }
  }
  const frames = Array.from({ length: 24 }, (_, hour) => {
    const { left, top } = placeOf(hour);
    return frame(left, top, width, HEIGHT);
  });
  marks.push({ kind: 'line', role: 'ink', lines: [...frames, ...ends], width: 0.75 });
  marks.push(...names(minutes, context, { perRow, width, rowHeight }));
  return {
    how: 'hourBlocks',
    width: whole,
    height: round((24 / perRow) * rowHeight),
    get narrow() {
      return narrow ? undefined : hourBlocksChart(minutes, { ...context, width: NARROW_WIDTH });
    },
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

/** Names under the runs that are long enough, in the row that holds most of each; the list beside the chart names them all. */
function names(minutes: Record<Band, number>, { speaker, text }: ChartContext, grid: Grid): Mark[] {
  const marks: Mark[] = [];
  const { perRow, width, rowHeight } = grid;
  const inRow = perRow * 60;
  let start = 0;
  for (const band of BANDS) {
    const end = start + minutes[band];
    const label = speaker.say(`bands.${band}.patient`);
    const parts = Array.from({ length: 24 / perRow }, (_, row) => {
      const from = Math.max(start, row * inRow);
      return { row, from: from - row * inRow, run: Math.min(end, (row + 1) * inRow) - from };
    });
    const { row, from, run } = parts.reduce((most, one) => (one.run > most.run ? one : most));
    const room = (run / 60) * (width + GAP) - GAP;
    if (run > 0 && roughWidth(label, text) <= room)
      marks.push({
        kind: 'text',
        role: 'ink',
        x: round((from / 60) * (width + GAP) + room / 2),
        y: round(row * rowHeight + HEIGHT + text + 3),
        text: label,
        size: text,
        anchor: 'middle',
      });
    start = end;
  }
  return marks;
}
