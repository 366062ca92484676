import type { Drawing, Mark } from '../model/drawing.ts';
import type { Night } from '../model/measures.ts';
import type { Band } from '../model/targets.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { round } from './pen.ts';

const FILL: Record<Night['state'], Band | 'paper'> = {
  'very-low': 'very-low',
  low: 'low',
  'none-seen': 'paper',
  unknown: 'paper',
};

/** A fortnight in one row with room to spare; up to four weeks in one row of narrow boxes. */
const MOST_A_ROW = 28;

/** One box a night. A night without enough readings is a dotted box with a question mark, never an empty calm one. */
export function nightsChart(nights: Night[], context: ChartContext): Drawing {
  const { say, text } = context;
  const perRow = Math.min(MOST_A_ROW, Math.max(14, nights.length));
  const rows = Math.ceil(nights.length / perRow);
  const gap = perRow > 14 ? 1.5 : 3;
  const width = (CONTENT_WIDTH - gap * (perRow - 1)) / perRow;
  const box = Math.max(text * 2.7, 24);
  const rowHeight = text + 4 + box + 8;
  const marks: Mark[] = nights.flatMap((night, index) => {
    const x = round((index % perRow) * (width + gap));
    const y = round(Math.floor(index / perRow) * rowHeight);
    return oneNight(night, { x, y, w: round(width), h: box }, context);
  });
  const count = (state: Night['state']) => ({
    q: 'count' as const,
    value: nights.filter((night) => night.state === state).length,
  });
  return {
    width: CONTENT_WIDTH,
    height: round(rows * rowHeight - 6),
    summary: say.say('charts.nights.summary', {
      nights: { q: 'count', value: nights.length },
      veryLow: count('very-low'),
      low: count('low'),
      none: count('none-seen'),
      unknown: count('unknown'),
    }),
    table: {
      columns: [
        say.say('charts.words.night'),
        say.say('charts.nights.state'),
        say.say('charts.words.lowest'),
        say.say('charts.words.covered'),
      ],
      rows: nights.map((night) => [
        say.value({ q: 'date', value: night.date }, 'short'),
        say.say(`charts.nights.states.${night.state}`),
        night.lowest === null ? '–' : say.value({ q: 'glucose', value: night.lowest }),
        say.value({ q: 'share', value: night.share }),
      ]),
    },
    marks,
  };
}

function oneNight(night: Night, at: { x: number; y: number; w: number; h: number }, context: ChartContext): Mark[] {
  const { say, text } = context;
  const fill = FILL[night.state];
  const top = at.y + text + 4;
  const centre = round(at.x + at.w / 2);
  const on = fill === 'paper' ? {} : { on: fill };
  const day = say.value({ q: 'date', value: night.date }, 'day');
  const wide = `${say.value({ q: 'date', value: night.date }, 'weekday')} ${day}`;
  const label = roughWidth(wide, text) * 1.1 <= at.w ? wide : day;
  const first =
    night.state === 'unknown'
      ? '?'
      : night.lowest === null
        ? '–'
        : say.value({ q: 'glucose', value: night.lowest }, 'short');
  const second =
    night.state === 'unknown' || night.state === 'none-seen'
      ? say.say(`charts.nights.short.${night.state}`)
      : say.say('charts.nights.minutes', { minutes: { q: 'count', value: night.lowMinutes } });
  const marks: Mark[] = [
    { kind: 'text', role: 'axis', x: centre, y: round(at.y + text), text: label, size: text, anchor: 'middle' },
    {
      kind: 'rect',
      role: fill,
      x: at.x,
      y: round(top),
      w: at.w,
      h: at.h,
      outline: night.state === 'unknown' ? 'axis' : 'ink',
      outlineWidth: 0.75,
      dotted: night.state === 'unknown',
      radius: 2,
    },
    {
      kind: 'text',
      role: 'ink',
      x: centre,
      y: round(top + at.h * 0.45),
      text: first,
      size: at.w < 24 ? text : text + 1,
      anchor: 'middle',
      strong: true,
      ...on,
    },
  ];
  if (roughWidth(second, text - 1) <= at.w + 1)
    marks.push({
      kind: 'text',
      role: 'ink',
      x: centre,
      y: round(top + at.h * 0.84),
      text: second,
      size: text - 1,
      anchor: 'middle',
      ...on,
    });
  return marks;
}
