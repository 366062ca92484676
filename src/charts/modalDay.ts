import type { Drawing, Mark } from '../model/drawing.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { ModalBin, ModalDay } from '../model/measures.ts';
import type { Timeline } from '../model/timeline.ts';
import { usualAlong } from './along.ts';
import { clockAxis, clockGrid, clockScale, glucoseAxis, glucoseScale, type Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { NARROW_WIDTH, narrowOr } from './frame.ts';
import { linesThrough, ringsAround, round } from './pen.ts';

/** Room for the names of the curves; what stands under the chart on the same clock leaves it free. */
export const CURVE_LABELS = 66;

/** On a narrow screen the names stand closer to the curves, and the curves are no higher than they are wide. */
const NARROWER = 16;
const NARROW_HEIGHT = 150;

/** Heights that a reader of a usual day looks for, beside the limits; mg/dL. */
const TICKS = [100, 140, 300];

type Percentile = 'p5' | 'p25' | 'p50' | 'p75' | 'p95';

/** Ribbons over the modal day: where half of the days lie, where nine of ten lie, and the middle. */
export function modalDayChart(
  modal: ModalDay,
  context: ChartContext,
  options: { height: number; outer: boolean; beyond?: -1 | 1 | undefined },
): Drawing {
  const { speaker, text } = context;
  const { narrow, whole } = narrowOr(context.width);
  const right = options.outer ? CURVE_LABELS - (narrow ? NARROWER : 0) : 4;
  const plot: Plot = { left: text * 3.6, top: 4, width: whole - text * 3.6 - right, height: options.height };
  const known = modal.bins.filter((bin) => bin.p50 !== null);
  const peak = known.reduce<ModalBin | null>((most, bin) => (most === null || bin.p50! > most.p50! ? bin : most), null);
  const least = known.reduce<ModalBin | null>((low, bin) => (low === null || bin.p50! < low.p50! ? bin : low), null);
  return {
    width: whole,
    get narrow() {
      const height = Math.min(NARROW_HEIGHT, options.height);
      return narrow ? undefined : modalDayChart(modal, { ...context, width: NARROW_WIDTH }, { ...options, height });
    },
    height: round(plot.top + plot.height + text + 8),
    how: 'modalDay',
    summary:
      peak === null || least === null
        ? speaker.say('charts.modalDay.empty')
        : middle(least, peak, options.beyond, context),
    get table() {
      return hourly(modal, context);
    },
    get along() {
      return usualAlong(modal, options.outer, plot, speaker.say('charts.along.usualDay'), context);
    },
    get marks(): Mark[] {
      const bins = closed(modal);
      const outer: Mark[] = options.outer
        ? [
            { kind: 'shape', role: 'outer-ribbon', rings: ribbon(bins, plot, 'p5', 'p95') },
            edge(bins, plot, 'p5', 'outer-edge', 0.75, [3, 2]),
            edge(bins, plot, 'p95', 'outer-edge', 0.75, [3, 2]),
          ]
        : [];
      return [
        clockGrid(plot, 3),
        ...outer,
        { kind: 'shape', role: 'inner-ribbon', rings: ribbon(bins, plot, 'p25', 'p75') },
        edge(bins, plot, 'p25', 'inner-edge', 0.9),
        edge(bins, plot, 'p75', 'inner-edge', 0.9),
        ...glucoseAxis(plot, context, options.outer ? TICKS : []),
        edge(bins, plot, 'p50', 'median', 2),
        ...clockAxis(plot, context),
        ...(options.outer ? endLabels(bins, plot, context) : []),
      ];
    },
  };
}

/** The end of the sensor that all readings lie beyond, if there is one. */
export function beyondIn({ readings: { limit, count } }: Timeline): -1 | 1 | undefined {
  const [first] = limit;
  if (first !== -1 && first !== 1) return undefined;
  for (let i = 1; i < count; i++) if (limit[i] !== first) return undefined;
  return first;
}

/** In a sentence: where the middle is lowest and highest. Of readings that all lie beyond one end of the sensor no height is told. */
function middle(least: ModalBin, peak: ModalBin, beyond: -1 | 1 | undefined, { speaker }: ChartContext): string {
  if (beyond !== undefined)
    return speaker.say('charts.modalDay.beyond', { side: { q: 'word', value: beyond < 0 ? 'below' : 'above' } });
  if (peak.p50 === least.p50)
    return speaker.say('charts.modalDay.flat', { value: { q: 'glucose', value: peak.p50 as MgPerDl } });
  return speaker.say('charts.modalDay.summary', {
    peak: { q: 'glucose', value: peak.p50 as MgPerDl },
    peakAt: { q: 'clock', value: peak.minute },
    least: { q: 'glucose', value: least.p50 as MgPerDl },
    leastAt: { q: 'clock', value: least.minute },
  });
}

/** The day closes at 24:00 with the bin it opened with, or the ribbon would stop short. Points sit at bin centres. */
function closed(modal: ModalDay): ModalBin[] {
  const half = modal.binMinutes / 2;
  const bins = modal.bins.map((bin) => ({ ...bin, minute: bin.minute + half }));
  const first = bins[0];
  const last = bins[bins.length - 1];
  if (!first || !last) return bins;
  const edgeOf = (minute: number): ModalBin => {
    const mid = (a: number | null, b: number | null) => (a === null || b === null ? null : (a + b) / 2);
    return {
      ...first,
      minute,
      p5: mid(first.p5, last.p5),
      p25: mid(first.p25, last.p25),
      p50: mid(first.p50, last.p50),
      p75: mid(first.p75, last.p75),
      p95: mid(first.p95, last.p95),
    };
  };
  return [edgeOf(0), ...bins, edgeOf(1440)];
}

function ribbon(bins: ModalBin[], plot: Plot, low: Percentile, high: Percentile): number[][] {
  const x = clockScale(plot);
  const y = glucoseScale(plot);
  return ringsAround(
    bins.map((bin) => (bin[low] === null || bin[high] === null ? null : [x(bin.minute), y(bin[low]), y(bin[high])])),
  );
}

function edge(
  bins: ModalBin[],
  plot: Plot,
  of: Percentile,
  role: 'median' | 'inner-edge' | 'outer-edge',
  width: number,
  dash?: [number, number],
): Mark {
  const x = clockScale(plot);
  const y = glucoseScale(plot);
  const lines = linesThrough(bins.map((bin) => (bin[of] === null ? null : [x(bin.minute), y(bin[of])])));
  return { kind: 'line', role, lines, width, ...(dash ? { dash } : {}) };
}

/** Names of the curves where they end, kept apart; no legend to look up. */
function endLabels(bins: ModalBin[], plot: Plot, context: ChartContext): Mark[] {
  const end = bins[bins.length - 1];
  if (!end) return [];
  const y = glucoseScale(plot);
  const wanted = (['p95', 'p75', 'p50', 'p25', 'p5'] as const).flatMap((of) =>
    end[of] === null ? [] : [{ of, y: y(end[of]) }],
  );
  let last = -Infinity;
  return wanted.map(({ of, y: at }): Mark => {
    last = Math.max(at + context.text * 0.36, last + context.text * 1.1);
    return {
      kind: 'text',
      role: of === 'p50' ? 'ink' : 'axis',
      x: round(plot.left + plot.width + 5),
      y: round(last),
      text: context.speaker.say(`charts.modalDay.curves.${of}`),
      size: context.text,
      anchor: 'start',
      strong: of === 'p50',
    };
  });
}

function hourly(modal: ModalDay, { speaker }: ChartContext) {
  const cell = (value: number | null) =>
    value === null ? '–' : speaker.value({ q: 'glucose', value: value as MgPerDl });
  return {
    columns: [
      speaker.say('charts.words.clock'),
      ...(['p5', 'p25', 'p50', 'p75', 'p95'] as const).map((of) => speaker.say(`charts.modalDay.curves.${of}`)),
    ],
    rows: modal.bins
      .filter((bin) => bin.minute % 60 === 0)
      .map((bin) => [
        speaker.value({ q: 'clock', value: bin.minute }, 'short'),
        cell(bin.p5),
        cell(bin.p25),
        cell(bin.p50),
        cell(bin.p75),
        cell(bin.p95),
      ]),
  };
}
