import type { Drawing, Mark } from '../model/drawing.ts';
import type { DailySummary } from '../model/measures.ts';
import type { Timeline } from '../model/timeline.ts';
import { weekdayOf } from '../time/calendar.ts';
import { clockAxis, clockGrid, clockScale, type Plot } from './axis.ts';
import { bandAt } from './bandAt.ts';
import type { ChartContext } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { frame, round } from './pen.ts';

const LEFT = 62;
const RIGHT = 46;
const ROW = 11;
/** Above each Monday, so that the eye finds the weeks. */
const WEEK = 3;

/** Many days on one sheet: a row a day, coloured where glucose lay, empty where nothing was read. */
export function dayRowsChart(timeline: Timeline, days: DailySummary[], first: number, context: ChartContext): Drawing {
  const { speaker, text } = context;
  const tops: number[] = [];
  let foot = 2;
  for (const [index, day] of days.entries()) {
    if (index > 0 && weekdayOf(day.date) === 1) foot += WEEK;
    tops.push(foot);
    foot += ROW;
  }
  const plot: Plot = { left: LEFT, top: 2, width: CONTENT_WIDTH - LEFT - RIGHT, height: foot - 2 };
  const marks: Mark[] = [];
  const frames: number[][] = [];
  for (const [index, day] of days.entries()) {
    const top = tops[index]!;
    const base = round(top + ROW - 2.5);
    const weekday = speaker.value({ q: 'date', value: day.date }, 'weekday');
    const date = `${weekday} ${speaker.value({ q: 'date', value: day.date }, 'compact')}`;
    marks.push({ kind: 'text', role: 'ink', x: 0, y: base, text: date, size: text, anchor: 'start', date: day.date });
    marks.push(...runs(timeline, first + index, plot, round(top + 0.5), context));
    frames.push(frame(plot.left, top + 0.5, plot.width, ROW - 2));
    const share = day.inRange === null ? '–' : speaker.value({ q: 'share', value: day.inRange });
    marks.push({ kind: 'text', role: 'ink', x: CONTENT_WIDTH, y: base, text: share, size: text, anchor: 'end' });
  }
  return {
    width: CONTENT_WIDTH,
    height: round(plot.top + plot.height + text + 8),
    how: 'dayRows',
    summary: speaker.say('charts.dayRows.summary', {
      days: { q: 'count', value: days.length },
      from: { q: 'date', value: days[0]!.date },
      to: { q: 'date', value: days[days.length - 1]!.date },
      low: { q: 'count', value: days.filter((day) => lowMinutes(day) > 0).length },
      veryLow: { q: 'count', value: days.filter(({ minutes }) => minutes['very-low'] > 0).length },
    }),
    get table() {
      return {
        columns: (['day', 'inRange', 'low'] as const).map((name) =>
          speaker.say(`charts.dayRows.${name}`, { limit: { q: 'limit', of: 'low' } }),
        ),
        rows: days.map((day) => [
          speaker.value({ q: 'date', value: day.date }),
          day.inRange === null ? '–' : speaker.value({ q: 'share', value: day.inRange }),
          day.inRange === null ? '–' : speaker.value({ q: 'minutes', value: lowMinutes(day) }),
        ]),
      };
    },
    marks: [
      ...marks,
      { kind: 'line', role: 'axis', lines: frames, width: 0.5 },
      clockGrid(plot),
      ...clockAxis(plot, context),
    ],
  };
}

const lowMinutes = ({ minutes }: DailySummary): number => minutes.low + minutes['very-low'];

/** Neighbouring readings of one band become one box; a gap leaves paper. */
function runs(timeline: Timeline, index: number, plot: Plot, y: number, context: ChartContext): Mark[] {
  const { at, minute, weight } = timeline.readings;
  const day = timeline.days[index]!;
  const x = clockScale(plot);
  const longest = timeline.gapMinutes * 60000;
  const marks: Mark[] = [];
  let start = day.from;
  while (start < day.to) {
    const band = bandAt(timeline, start, context);
    let end = start + 1;
    while (
      end < day.to &&
      at[end]! - at[end - 1]! <= longest &&
      minute[end]! >= minute[end - 1]! &&
      bandAt(timeline, end, context) === band
    )
      end += 1;
    const last =
      end < day.to && at[end]! - at[end - 1]! <= longest && minute[end]! >= minute[end - 1]!
        ? minute[end]!
        : Math.min(1440, minute[end - 1]! + weight[end - 1]!);
    const left = round(x(minute[start]!));
    marks.push({ kind: 'rect', role: band, x: left, y, w: round(Math.max(0.3, x(last) - left)), h: ROW - 2 });
    start = end;
  }
  return marks;
}
