import type { Drawing, Mark } from '../model/drawing.ts';
import type { Night } from '../model/measures.ts';
import type { ChartContext } from './context.ts';
import { CONTENT_WIDTH, NARROW_WIDTH } from './frame.ts';
import { nightsSummary, nightsTable } from './nights.ts';
import { round } from './pen.ts';

/** A bar as high as this stands for at least an hour. */
const LEAST_SCALE = 60;
/** Where no night has a bar, points. */
const NO_BARS = 4;
/** On a narrow screen two weeks are a row. */
const NARROW_ROW = 14;

/** A bar a night, of so many points at most, as high as the minutes that were low in it; a night that cannot be told is a dotted box with a question mark. */
export function nightBarsChart(nights: readonly Night[], most: number, given: ChartContext): Drawing {
  const context = { ...given, text: 8 };
  const { speaker, text, width: whole = CONTENT_WIDTH } = context;
  const narrow = whole < CONTENT_WIDTH;
  const perRow = narrow ? NARROW_ROW : nights.length;
  const step = Math.min(whole / perRow, 42);
  const width = round(Math.min(step - 3, 22));
  // A row without a bar needs no height, and says of each night that was seen that it was none.
  const calm = nights.every(({ lowMinutes, state }) => state === 'unknown' || lowMinutes <= 0);
  const height = calm ? NO_BARS : most;
  const scale = height / Math.max(LEAST_SCALE, ...nights.map(({ lowMinutes }) => lowMinutes));
  const rowHeight = 2 * text + height + 6;
  const rows = Math.ceil(nights.length / perRow);
  const baseOf = (row: number): number => row * rowHeight + text + 2 + height;
  const bars = (night: Night, i: number): Mark[] => {
    const base = baseOf(Math.floor(i / perRow));
    const centre = round(((i % perRow) + 0.5) * step);
    const x = round(centre - width / 2);
    const label = (y: number, content: string, role: 'ink' | 'axis', strong = false): Mark => ({
      kind: 'text',
      role,
      x: centre,
      y: round(y),
      text: content,
      size: text,
      anchor: 'middle',
      strong,
    });
    const date = label(base + text + 2, speaker.value({ q: 'date', value: night.date }, 'day'), 'axis');
    if (night.state === 'unknown') {
      const box: Mark = {
        kind: 'rect',
        role: 'paper',
        x,
        y: round(base - 14),
        w: width,
        h: 14,
        outline: 'axis',
        outlineWidth: 0.75,
        dotted: true,
      };
      return [date, box, label(base - 4, '?', 'ink', true)];
    }
    if (night.lowMinutes <= 0) return calm ? [date, label(base - 2, speaker.number(0, 0), 'axis')] : [date];
    const bar = (role: 'low' | 'very-low', from: number, minutes: number): Mark[] =>
      minutes <= 0
        ? []
        : [
            {
              kind: 'rect',
              role,
              x,
              y: round(base - (from + minutes) * scale),
              w: width,
              h: round(minutes * scale),
              outline: 'ink',
              outlineWidth: 0.75,
            },
          ];
    const above = Math.max(1, Math.round(night.lowMinutes));
    return [
      date,
      ...bar('very-low', 0, night.veryLowMinutes),
      ...bar('low', night.veryLowMinutes, night.lowMinutes - night.veryLowMinutes),
      label(base - night.lowMinutes * scale - 2, speaker.number(above, 0), 'ink', true),
    ];
  };
  return {
    how: 'nightBars',
    width: whole,
    height: round(rows * rowHeight),
    get narrow() {
      return narrow ? undefined : nightBarsChart(nights, most, { ...given, width: NARROW_WIDTH });
    },
    summary: nightsSummary(nights, context),
    get table() {
      return nightsTable(nights, context);
    },
    get marks(): Mark[] {
      const feet = Array.from({ length: rows }, (_, row) => {
        const inRow = Math.min(perRow, nights.length - row * perRow);
        return [0, round(baseOf(row)), round(step * inRow), round(baseOf(row))];
      });
      return [{ kind: 'line', role: 'axis', lines: feet, width: 0.75 }, ...nights.flatMap(bars)];
    },
  };
}
