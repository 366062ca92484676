import type { Drawing, Mark } from '../model/drawing.ts';
import type { TimeInBands } from '../model/measures.ts';
import { BANDS } from '../targets/bands.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH, NARROW_WIDTH } from './frame.ts';
import { round } from './pen.ts';

const BAR = 21;
/** White between neighbours, so that bands of like darkness stay apart in grey. */
const GAP = 1.5;
const LEAST = 2;

/** The whole of the time with readings as one bar, lowest at the left. Thin parts are named on a line of their own. */
export function hoursBarChart(time: TimeInBands, context: ChartContext, names: 'all' | 'bare' = 'all'): Drawing {
  const { speaker, text, width: whole = CONTENT_WIDTH } = context;
  const bands = BANDS.filter(
    (band) => band !== 'very-high' || context.targets.limits[context.native].veryHigh !== null,
  );
  const shares = bands.map((band) => ({ band, share: time.exclusive[band].value })).filter((one) => one.share > 0);
  const room = whole - GAP * (shares.length - 1);
  const wide = shares.map(({ share }) => Math.max(LEAST, share * room));
  const scale = room / wide.reduce((sum, width) => sum + width, 0);
  // Beside a table that names every band, thin parts need no name of their own.
  const top = names === 'bare' ? 2 : text + 6;
  const marks: Mark[] = [];
  const above: Label[] = [];
  let x = 0;
  for (const [index, { band, share }] of shares.entries()) {
    const w = wide[index]! * scale;
    marks.push({
      kind: 'rect',
      role: band,
      x: round(x),
      y: top,
      w: round(w),
      h: BAR,
      outline: 'ink',
      outlineWidth: 0.75,
    });
    const label = `${speaker.say(`bands.${band}.name`)} ${speaker.value({ q: 'share', value: share })}`;
    const width = roughWidth(label, text);
    if (width + 8 <= w) {
      const y = round(top + BAR / 2 + text * 0.36);
      marks.push({
        kind: 'text',
        role: 'ink',
        x: round(x + w / 2),
        y,
        text: label,
        size: text,
        anchor: 'middle',
        strong: true,
        on: band,
      });
    } else if (names === 'all') {
      above.push({ label, share, width, centre: x + w / 2, start: x + w / 2 - 4 });
    }
    x += w + GAP;
  }
  marks.push(...named(fitting(above, whole), top, text, whole));
  return {
    width: whole,
    get narrow() {
      return whole < CONTENT_WIDTH ? undefined : hoursBarChart(time, { ...context, width: NARROW_WIDTH }, 'all');
    },
    height: top + BAR + 2,
    how: 'hoursBar',
    summary: speaker.say('charts.hoursBar.summary', {
      veryLow: { q: 'share', value: time.exclusive['very-low'].value },
      low: { q: 'share', value: time.exclusive.low.value },
      inRange: { q: 'share', value: time.exclusive['in-range'].value },
      high: { q: 'share', value: time.exclusive.high.value },
      veryHigh: { q: 'share', value: time.exclusive['very-high'].value },
    }),
    marks,
  };
}

/** Where not all names stand beside one another those of the thinnest parts give way: the table beside the bar has them. */
function fitting(labels: Label[], whole: number): Label[] {
  const wide = labels.reduce((sum, { width }) => sum + width + 8, -8);
  if (wide <= whole) return labels;
  const thinnest = labels.reduce((least, one) => (one.share < least.share ? one : least));
  return fitting(
    labels.filter((one) => one !== thinnest),
    whole,
  );
}

interface Label {
  label: string;
  share: number;
  width: number;
  /** Middle of the part it names. */
  centre: number;
  start: number;
}

/** A part too thin for its name: the name stands above it, joined by a leader, beside its neighbours and within the bar. */
function named(labels: Label[], top: number, text: number, whole: number): Mark[] {
  let free = 0;
  for (const one of labels) {
    one.start = Math.max(free, Math.min(one.start, whole - one.width));
    free = one.start + one.width + 8;
  }
  // Names that were pushed over the end push back.
  let end = whole;
  for (const one of [...labels].reverse()) {
    one.start = Math.max(0, Math.min(one.start, end - one.width));
    end = one.start - 8;
  }
  return labels.flatMap(({ label, width, centre, start }): Mark[] => {
    const foot = round(Math.min(Math.max(centre, 0.4), whole - 0.4));
    const from = round(Math.max(start + 2, Math.min(foot, start + width)));
    return [
      { kind: 'text', role: 'ink', x: round(start), y: round(text), text: label, size: text, anchor: 'start' },
      { kind: 'line', role: 'axis', lines: [[from, text + 2, foot, top]], width: 0.5 },
    ];
  });
}
