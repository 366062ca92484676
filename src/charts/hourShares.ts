import type { Drawing, Mark } from '../model/drawing.ts';
import type { HourShares } from '../model/measures.ts';
import { BANDS } from '../targets/bands.ts';
import { clockAxis, type Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { frame, round } from './pen.ts';

/** What share of each clock hour lay in each band: a column an hour, lowest at the foot, the shares beyond range in figures. */
export function hourSharesChart(
  hours: HourShares[],
  context: ChartContext,
  options: { height: number; right: number },
): Drawing {
  const { speaker, text } = context;
  const left = text * 3.6;
  const line = text + 3;
  const plot: Plot = { left, top: line + 2, width: CONTENT_WIDTH - left - options.right, height: options.height };
  const step = plot.width / 24;
  const marks: Mark[] = [];
  for (const { hour, shares } of hours) {
    const x = round(left + hour * step + 0.75);
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
    const above = speaker.say('charts.hourShares.figure', {
      share: { q: 'count', value: Math.round(100 * (shares.high + shares['very-high'])) },
    });
    const below = speaker.say('charts.hourShares.figure', {
      share: { q: 'count', value: Math.round(100 * (shares.low + shares['very-low'])) },
    });
    marks.push({ kind: 'text', role: 'ink', x: centre, y: text, text: above, size: text - 0.5, anchor: 'middle' });
    marks.push({
      kind: 'text',
      role: 'ink',
      x: centre,
      y: round(plot.top + plot.height + line - 1),
      text: below,
      size: text - 0.5,
      anchor: 'middle',
    });
  }
  const axisPlot = { ...plot, height: plot.height + line + 1 };
  const foot = round(plot.top + plot.height + line - 1);
  return {
    width: CONTENT_WIDTH,
    height: round(axisPlot.top + axisPlot.height + text + 8),
    how: 'hourShares',
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
    marks: [
      ...marks,
      {
        kind: 'text',
        role: 'ink',
        x: round(left - 4),
        y: text,
        text: speaker.say('charts.hourShares.high'),
        size: text,
        anchor: 'end',
      },
      {
        kind: 'text',
        role: 'ink',
        x: round(left - 4),
        y: foot,
        text: speaker.say('charts.hourShares.low'),
        size: text,
        anchor: 'end',
      },
      ...clockAxis(axisPlot, context),
    ],
  };
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
