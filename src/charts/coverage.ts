import type { Drawing, Mark } from '../model/drawing.ts';
import type { Coverage } from '../model/measures.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { NARROW_WIDTH, narrowOr } from './frame.ts';
import { hourLabels } from './hourLabels.ts';
import { round } from './pen.ts';

const BAR_HEIGHT = 16;
const BETWEEN = 22;

/** How full each day and each clock hour is: what the rest of the report can and cannot speak about. */
export function coverageChart(coverage: Coverage, context: ChartContext): Drawing {
  const { speaker, text } = context;
  const { narrow, whole } = narrowOr(context.width);
  const half = narrow ? whole : (whole - BETWEEN) / 2;
  const top = text + 6;
  const base = top + BAR_HEIGHT;
  const rowHeight = base + text + 6;
  // Hours stand right of days, on a narrow screen below.
  const right = narrow ? 0 : half + BETWEEN;
  const down = narrow ? rowHeight + 4 : 0;
  const days = bars(
    coverage.byDay.map((day) => day.share),
    0,
    half,
    top,
  );
  const hours = bars(coverage.byHour, right, half, down + top);
  const marks: Mark[] = [
    title(speaker.say('charts.coverage.byDay'), 0, 0, context),
    title(speaker.say('charts.coverage.byHour'), right, down, context),
    ...days,
    ...hours,
    ...dayLabels(coverage, half, base, context),
    ...hourLabels([0, 6, 12, 18, 24], (hour) => right + (hour / 24) * half, down + base + text + 3, context),
  ];
  const low = coverage.byHour.reduce((least, share, hour) => (share < coverage.byHour[least]! ? hour : least), 0);
  return {
    width: whole,
    get narrow() {
      return narrow ? undefined : coverageChart(coverage, { ...context, width: NARROW_WIDTH });
    },
    height: round(down + rowHeight),
    how: 'coverage',
    summary: speaker.say('charts.coverage.summary', {
      share: { q: 'share', value: coverage.share },
      night: { q: 'share', value: coverage.night.share },
      hour: { q: 'clock', value: low * 60 },
      least: { q: 'share', value: coverage.byHour[low]! },
    }),
    get table() {
      return {
        columns: [speaker.say('charts.words.day'), speaker.say('charts.words.covered')],
        rows: coverage.byDay.map((day) => [
          speaker.value({ q: 'date', value: day.date }, 'short'),
          speaker.value({ q: 'share', value: day.share }),
        ]),
      };
    },
    marks,
  };
}

/** Frames filled from the foot by the share that holds readings. */
function bars(shares: number[], left: number, width: number, top: number): Mark[] {
  const step = width / shares.length;
  const gap = step > 6 ? 1.5 : step > 3 ? 0.75 : 0;
  return shares.flatMap((share, index): Mark[] => {
    const x = round(left + index * step);
    const w = round(step - gap);
    const h = round(Math.min(1, share) * BAR_HEIGHT);
    const frame: Mark = {
      kind: 'rect',
      role: 'paper',
      x,
      y: round(top),
      w,
      h: BAR_HEIGHT,
      outline: 'grid',
      outlineWidth: 0.5,
    };
    if (h === 0) return [{ ...frame, dotted: true }];
    return [frame, { kind: 'rect', role: 'muted', x, y: round(top + BAR_HEIGHT - h), w, h }];
  });
}

function dayLabels(coverage: Coverage, width: number, base: number, context: ChartContext): Mark[] {
  const { speaker, text } = context;
  const step = width / coverage.byDay.length;
  const labels = coverage.byDay.map((day) => speaker.value({ q: 'date', value: day.date }, 'day'));
  // Every day, or evenly one of some: labels that come and go by their width look like missing days.
  const widest = Math.max(...labels.map((label) => roughWidth(label, text)));
  const every = Math.ceil((widest + 3) / step);
  return labels.flatMap((label, index) =>
    index % every === 0 ? [small(label, (index + 0.5) * step, base + text + 3, 'middle', context)] : [],
  );
}

const title = (text: string, x: number, down: number, context: ChartContext): Mark => ({
  kind: 'text',
  role: 'axis',
  x: round(x),
  y: round(down + context.text),
  text,
  size: context.text,
  anchor: 'start',
});

const small = (
  text: string,
  x: number,
  y: number,
  anchor: 'start' | 'middle' | 'end',
  context: ChartContext,
): Mark => ({
  kind: 'text',
  role: 'axis',
  x: round(x),
  y: round(y),
  text,
  size: context.text,
  anchor,
});
