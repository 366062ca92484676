import type { Drawing, Mark } from '../model/drawing.ts';
import type { HourShares } from '../model/measures.ts';
import { BANDS } from '../targets/bands.ts';
import { clockAxis, type Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { NARROW_WIDTH, narrowOr } from './frame.ts';
import { frame, round } from './pen.ts';

/** On a narrow screen half a day is a row. */
const NARROW_ROW = 12;

/** What share of each clock hour lay in each band: a column an hour, lowest at the foot, the shares beyond range in figures. */
export function hourSharesChart(
  hours: HourShares[],
  context: ChartContext,
  options: { height: number; right: number },
): Drawing {
  const { speaker, text } = context;
  const { narrow, whole } = narrowOr(context.width);
  const left = text * 3.6;
  const line = text + 3;
  const perRow = narrow ? NARROW_ROW : 24;
  const rowHeight = options.height + 2 * line + text + 11;
  const rows = Array.from({ length: 24 / perRow }, (_, row) => ({
    from: row * perRow,
    plot: { left, top: row * rowHeight + line + 2, width: whole - left - options.right, height: options.height },
  }));
  return {
    width: whole,
    height: round(rows.length * rowHeight),
    how: 'hourShares',
    get narrow() {
      return narrow ? undefined : hourSharesChart(hours, { ...context, width: NARROW_WIDTH }, { ...options, right: 2 });
    },
    summary: speaker.say('charts.hourShares.summary', extremes(hours)),
    get table() {
      return {
        columns: [speaker.say('charts.words.clock'), ...BANDS.map((band) => speaker.say(`bands.${band}.name`))],
        rows: hours.map(({ hour, shares }) => [
          speaker.value({ q: 'clock', value: hour * 60 }, 'short'),
          ...BANDS.map((band) => (shares === null ? '–' : speaker.value({ q: 'share', value: shares[band] }))),
        ]),
      };
    },
    get marks() {
      return rows.flatMap(({ from, plot }) => {
        const shown = hours.filter(({ hour }) => hour >= from && hour < from + perRow);
        return rowMarks(shown, { from, to: from + perRow }, plot, context);
      });
    },
  };
}

/** Hours of the clock that stand in one row. */
interface Hours {
  from: number;
  to: number;
}

function rowMarks(hours: HourShares[], { from, to }: Hours, plot: Plot, context: ChartContext): Mark[] {
  const { speaker, text } = context;
  const line = text + 3;
  const step = plot.width / (to - from);
  const top = round(plot.top - 2 - line);
  const foot = round(plot.top + plot.height + line - 1);
  const marks: Mark[] = [];
  const figure = (x: number, y: number, share: number): Mark => ({
    kind: 'text',
    role: 'ink',
    x,
    y,
    text: speaker.say('charts.hourShares.figure', { share: { q: 'count', value: Math.round(100 * share) } }),
    size: text - 0.5,
    anchor: 'middle',
  });
  for (const { hour, shares } of hours) {
    const x = round(plot.left + (hour - from) * step + 0.75);
    const w = round(step - 1.5);
    if (shares === null) {
      marks.push({
        kind: 'rect',
        role: 'paper',
        x,
        y: plot.top,
        w,
        h: plot.height,
        outline: 'axis',
        outlineWidth: 0.5,
        dotted: true,
      });
      continue;
    }
    marks.push(...column(shares, x, w, plot));
    const centre = round(x + w / 2);
    marks.push(figure(centre, round(top + text), shares.high + shares['very-high']));
    marks.push(figure(centre, foot, shares.low + shares['very-low']));
  }
  const name = (of: 'high' | 'low', y: number): Mark => ({
    kind: 'text',
    role: 'ink',
    x: round(plot.left - 4),
    y,
    text: speaker.say(`charts.hourShares.${of}`),
    size: text,
    anchor: 'end',
  });
  const axis = { ...plot, height: plot.height + line + 1 };
  return [
    ...marks,
    name('high', round(top + text)),
    name('low', foot),
    ...(to - from === 24 ? clockAxis(axis, context) : partOfClock({ from, to }, axis, context)),
  ];
}

/** The clock under a row of some hours, every sixth of them named. */
function partOfClock({ from, to }: Hours, plot: Plot, context: ChartContext): Mark[] {
  const base = plot.top + plot.height;
  const at = (hour: number): number => round(plot.left + ((hour - from) / (to - from)) * plot.width);
  const named = Array.from({ length: (to - from) / 6 + 1 }, (_, i) => from + 6 * i);
  return [
    { kind: 'line', role: 'axis', lines: [[plot.left, base, plot.left + plot.width, base]], width: 0.75 },
    { kind: 'line', role: 'axis', lines: named.map((hour) => [at(hour), base, at(hour), base + 4]), width: 0.75 },
    ...named.map((hour): Mark => {
      const anchor = hour === from ? 'start' : hour === to ? 'end' : 'middle';
      const label = context.speaker.value({ q: 'clock', value: (hour % 24) * 60 }, 'short');
      const y = round(base + 5 + context.text);
      return { kind: 'text', role: 'axis', x: at(hour), y, text: label, size: context.text, anchor };
    }),
  ];
}

function column(shares: NonNullable<HourShares['shares']>, x: number, w: number, plot: Plot): Mark[] {
  const marks: Mark[] = [];
  let y = plot.top + plot.height;
  for (const band of BANDS) {
    const h = shares[band] * plot.height;
    if (h <= 0) continue;
    y -= h;
    marks.push({ kind: 'rect', role: band, x, y: round(y), w, h: round(h), outline: 'paper', outlineWidth: 0.75 });
  }
  marks.push({ kind: 'line', role: 'ink', lines: [frame(x, plot.top, w, plot.height)], width: 0.5 });
  return marks;
}

function extremes(hours: HourShares[]) {
  const of = (pick: (shares: NonNullable<HourShares['shares']>) => number) =>
    hours.reduce<{ hour: number; share: number }>(
      (most, one) =>
        one.shares !== null && pick(one.shares) > most.share ? { hour: one.hour, share: pick(one.shares) } : most,
      { hour: 0, share: 0 },
    );
  const low = of((shares) => shares.low + shares['very-low']);
  const high = of((shares) => shares.high + shares['very-high']);
  return {
    low: { q: 'share' as const, value: low.share },
    lowAt: { q: 'clock' as const, value: low.hour * 60 },
    high: { q: 'share' as const, value: high.share },
    highAt: { q: 'clock' as const, value: high.hour * 60 },
  };
}
