import { scaleLinear } from 'd3-scale';
import type { Drawing, Mark } from '../model/drawing.ts';
import type { Change } from '../model/thenAndNow.ts';
import type { ChartContext } from './context.ts';
import { NARROW_WIDTH, narrowOr } from './frame.ts';
import { round } from './pen.ts';

const ROW = 19;
const LABELS = 150;
const TICKS = 6;

/** Changes in points of time: a dot, a whisker for its interval, and two ticks between which a change is not called one. */
export function changesChart(
  changes: readonly Change[],
  nameOf: (change: Change) => string,
  context: ChartContext,
): Drawing {
  const { speaker, text } = context;
  const { narrow, whole } = narrowOr(context.width);
  // On a narrow screen a name stands above its row.
  const above = narrow ? text + 3 : 0;
  const step = ROW + above;
  const shown = changes.filter(({ low, high }) => low !== null && high !== null);
  const shared = shown.flatMap(({ low, high, smallest }) => [100 * low!, 100 * high!, -100 * smallest, 100 * smallest]);
  const left = narrow ? 8 : LABELS;
  const right = whole - 10;
  const top = text + 8;
  const bottom = top + shown.length * step;
  // From the furthest end on each side: what was seen then sets how far a share can fall.
  const scale = scaleLinear()
    .domain([Math.min(0, ...shared), Math.max(0, ...shared)])
    .nice(TICKS)
    .range([left, right]);
  const x = (share: number): number => round(scale(share * 100));
  const marks: Mark[] = [
    { kind: 'line', role: 'ink', lines: [[x(0), top - 3, x(0), bottom]], width: 1 },
    { kind: 'line', role: 'axis', lines: [[left, bottom, right, bottom]], width: 0.75 },
  ];
  const word = (key: 'less' | 'more', at: number, anchor: 'start' | 'middle' | 'end'): Mark => ({
    kind: 'text',
    role: 'axis',
    x: round(at),
    y: round(text),
    text: speaker.say(`charts.changes.${key}`),
    size: text,
    anchor,
  });
  marks.push(word('less', x(0) - 6, 'end'), word('more', x(0) + 6, 'start'));
  for (const points of scale.ticks(TICKS).filter((tick) => tick !== 0)) {
    marks.push({
      kind: 'text',
      role: 'axis',
      x: x(points / 100),
      y: round(bottom + text + 3),
      text: `${points < 0 ? '\u2212' : '+'}${speaker.number(Math.abs(points), points % 1 === 0 ? 0 : 1)}`,
      size: text,
      anchor: 'middle',
    });
  }
  shown.forEach((change, row) => {
    const y = round(top + row * step + above + ROW / 2);
    marks.push(
      {
        kind: 'text',
        role: 'ink',
        x: 0,
        y: round(narrow ? y - ROW / 2 - 1 : y + text * 0.36),
        text: nameOf(change),
        size: text,
        anchor: 'start',
      },
      {
        kind: 'line',
        role: 'grid',
        lines: [-1, 1].map((side) => [x(side * change.smallest), y - 5, x(side * change.smallest), y + 5]),
        width: 0.75,
      },
      { kind: 'line', role: 'interval', lines: [[x(change.low!), y, x(change.high!), y]], width: 1.5 },
      {
        kind: 'line',
        role: 'interval',
        lines: [change.low!, change.high!].map((end) => [x(end), y - 3, x(end), y + 3]),
        width: 1.5,
      },
      { kind: 'rect', role: 'ink', x: x(change.change) - 2.5, y: y - 2.5, w: 5, h: 5, radius: 2.5 },
    );
  });
  const changed = shown.filter(({ verdict }) => verdict === 'more-than-noise');
  return {
    width: whole,
    get narrow() {
      return narrow ? undefined : changesChart(changes, nameOf, { ...context, width: NARROW_WIDTH });
    },
    height: round(bottom + text + 8),
    how: 'changes',
    summary: speaker.say('charts.changes.summary', {
      count: { q: 'count', value: shown.length },
      changed: { q: 'count', value: changed.length },
      names: { q: 'word', value: changed.map(nameOf).join(', ') },
    }),
    marks,
  };
}
