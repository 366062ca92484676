import type { Drawing, Mark } from '../model/drawing.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Episode } from '../model/measures.ts';
import { addDays } from '../time/calendar.ts';
import { clockAxis, clockGrid, clockScale, type Plot } from './axis.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { round } from './pen.ts';

const LANE = 11;
const MOST_LANES = 4;

interface Bar {
  from: number;
  to: number;
  label: string;
  level: 1 | 2;
}

/** Every low of the period on one clock, each as long as it lasted, so that a clock time where they gather shows. */
export function lowsClockChart(lows: Episode[], context: ChartContext): Drawing {
  const { speaker, text } = context;
  const { lanes: shown, hidden } = choose(lows, context);
  const plot: Plot = { left: 0, top: text + 5, width: CONTENT_WIDTH, height: Math.max(1, shown.length) * LANE + 4 };
  const x = clockScale(plot);
  const night = round(x(360));
  const marks: Mark[] = [
    clockGrid(plot, 3),
    { kind: 'line', role: 'night', lines: [[0, text + 2, night, text + 2]], width: 2 },
    {
      kind: 'text',
      role: 'axis',
      x: night + 4,
      y: text + 2,
      text: speaker.say('charts.words.night'),
      size: text,
      anchor: 'start',
    },
    ...clockAxis(plot, context),
  ];
  if (hidden > 0) {
    const more = speaker.say('charts.lowsClock.more', { count: { q: 'count', value: hidden } });
    marks.push({ kind: 'text', role: 'axis', x: CONTENT_WIDTH, y: text + 2, text: more, size: text, anchor: 'end' });
  }
  for (const [lane, bars] of shown.entries()) {
    const y = plot.top + 2 + lane * LANE;
    for (const bar of bars) {
      const left = round(x(bar.from));
      const w = round(Math.max(3, x(bar.to) - x(bar.from)));
      const role = bar.level === 2 ? 'very-low' : 'low';
      marks.push({ kind: 'rect', role, x: left, y: round(y + 1), w, h: LANE - 3, outline: 'ink', outlineWidth: 0.75 });
      const width = roughWidth(bar.label, text);
      const right = left + w + 3 + width <= CONTENT_WIDTH;
      const at = right ? left + w + 3 : left - 3;
      const anchor = right ? 'start' : 'end';
      marks.push({
        kind: 'text',
        role: 'ink',
        x: round(at),
        y: round(y + LANE - 3.5),
        text: bar.label,
        size: text,
        anchor,
      });
    }
  }
  return {
    width: CONTENT_WIDTH,
    height: round(plot.top + plot.height + text + 7),
    summary: speaker.say('charts.lowsClock.summary', {
      count: { q: 'count', value: lows.length },
      night: { q: 'count', value: lows.filter((low) => low.night).length },
      veryLow: { q: 'count', value: lows.filter((low) => low.level === 2).length },
    }),
    table: {
      columns: [
        speaker.say('charts.words.day'),
        speaker.say('charts.words.start'),
        speaker.say('charts.words.length'),
        speaker.say('charts.words.lowest'),
      ],
      rows: lows.map((low) => [
        speaker.value({ q: 'date', value: low.date }, 'short'),
        speaker.value({ q: 'clock', value: low.startMinute }, 'short'),
        speaker.value({ q: 'minutes', value: low.minutes }),
        speaker.value({ q: 'glucose', value: low.extreme, limit: low.extremeLimit }),
      ]),
    },
    marks,
  };
}

/** All lows where there is room; else those that fit of them, very low ones first and then the longest. */
function choose(lows: Episode[], context: ChartContext): { lanes: Bar[][]; hidden: number } {
  const all = layOut(lows, context);
  if (all.length <= MOST_LANES) return { lanes: all, hidden: 0 };
  const gravest = [...lows].sort((a, b) => b.level - a.level || b.minutes - a.minutes);
  let kept: Episode[] = [];
  for (const low of gravest) {
    const more = kept.concat(low);
    if (layOut(more, context).length <= MOST_LANES) kept = more;
  }
  return { lanes: layOut(kept, context), hidden: lows.length - kept.length };
}

/** A low over midnight is two bars on a clock, each under its own date. */
function pieces(low: Episode, { speaker }: ChartContext): Bar[] {
  const dated = (date: LocalDate) => speaker.value({ q: 'date', value: date }, 'compact');
  const label = dated(low.date);
  const to = low.startMinute + low.minutes;
  if (to <= 1440) return [{ from: low.startMinute, to, label, level: low.level }];
  return [
    { from: low.startMinute, to: 1440, label, level: low.level },
    { from: 0, to: Math.min(1440, to - 1440), label: dated(addDays(low.date, 1)), level: low.level },
  ];
}

/** Each bar goes into the first lane where it and its label stand free. */
function layOut(lows: Episode[], context: ChartContext): Bar[][] {
  const bars = lows.flatMap((low) => pieces(low, context));
  const perMinute = CONTENT_WIDTH / 1440;
  const lanes: { free: number; bars: Bar[] }[] = [];
  for (const bar of bars.sort((a, b) => a.from - b.from || b.to - a.to)) {
    const width = roughWidth(bar.label, context.text) + 8;
    const bends = bar.to * perMinute + width > CONTENT_WIDTH;
    const start = bar.from * perMinute - (bends ? width : 0);
    const end = Math.max(bar.to * perMinute, bar.from * perMinute + 3) + (bends ? 2 : width);
    const lane = lanes.find((one) => one.free <= start);
    if (lane) {
      lane.bars.push(bar);
      lane.free = end;
    } else lanes.push({ free: end, bars: [bar] });
  }
  return lanes.map((lane) => lane.bars);
}
