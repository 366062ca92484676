import type { Drawing, Mark } from '../model/drawing.ts';
import type { TimeInBands } from '../model/measures.ts';
import { BANDS } from '../targets/bands.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { round } from './pen.ts';

const BAR = 21;
/** White between neighbours, so that bands of like darkness stay apart in grey. */
const GAP = 1.5;
const LEAST = 2;

/** The whole of the time with readings as one bar, lowest at the left. Thin parts are named on a line of their own. */
export function hoursBarChart(time: TimeInBands, context: ChartContext): Drawing {
  const { say, text } = context;
  const bands = BANDS.filter(
    (band) => band !== 'very-high' || context.targets.limits[context.native].veryHigh !== null,
  );
  const shares = bands.map((band) => ({ band, share: time.exclusive[band].value })).filter((one) => one.share > 0);
  const room = CONTENT_WIDTH - GAP * (shares.length - 1);
  const wide = shares.map(({ share }) => Math.max(LEAST, share * room));
  const scale = room / wide.reduce((sum, width) => sum + width, 0);
  const top = text + 6;
  const marks: Mark[] = [];
  let x = 0;
  let free = 0;
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
    const label = `${say.say(`bands.${band}.name`)} ${say.value({ q: 'share', value: share })}`;
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
    } else {
      // A part too thin for its name: the name stands above it, joined by a leader.
      const start = Math.max(free, Math.min(x + w / 2 - 4, CONTENT_WIDTH - width));
      free = start + width + 8;
      const foot = round(Math.min(Math.max(x + w / 2, 0.4), CONTENT_WIDTH - 0.4));
      marks.push({
        kind: 'text',
        role: 'ink',
        x: round(start),
        y: round(text),
        text: label,
        size: text,
        anchor: 'start',
      });
      marks.push({
        kind: 'line',
        role: 'axis',
        lines: [[round(Math.max(start + 2, Math.min(foot, start + width))), text + 2, foot, top]],
        width: 0.5,
      });
    }
    x += w + GAP;
  }
  return {
    width: CONTENT_WIDTH,
    height: top + BAR + 2,
    summary: say.say('charts.hoursBar.summary', {
      veryLow: { q: 'share', value: time.exclusive['very-low'].value },
      low: { q: 'share', value: time.exclusive.low.value },
      inRange: { q: 'share', value: time.exclusive['in-range'].value },
      high: { q: 'share', value: time.exclusive.high.value },
      veryHigh: { q: 'share', value: time.exclusive['very-high'].value },
    }),
    marks,
  };
}
