import type { Drawing, Mark } from '../model/drawing.ts';
import type { NoteLog } from '../model/occasions.ts';
import { clockScale, type Plot } from './axis.ts';
import type { ChartContext } from './context.ts';
import { CONTENT_WIDTH } from './frame.ts';
import { CURVE_LABELS } from './modalDay.ts';
import { round } from './pen.ts';

const LANE = 12;
const KINDS = ['meal', 'insulin', 'exercise'];

/** When food, insulin and exercise were noted over the clock, a bar an hour, under the usual day's own clock. */
export function noteDensityChart(log: NoteLog, context: ChartContext): Drawing {
  const { speaker, text } = context;
  const left = text * 3.6;
  const width = CONTENT_WIDTH - left - CURVE_LABELS;
  const kinds = log.byHour.filter(({ kind }) => KINDS.includes(kind));
  const most = Math.max(1, ...kinds.flatMap(({ hours }) => hours));
  const marks: Mark[] = kinds.flatMap(({ kind, hours }, lane): Mark[] => {
    const plot: Plot = { left, top: lane * LANE, width, height: LANE - 3 };
    const x = clockScale(plot);
    const foot = plot.top + plot.height;
    const bars = hours.flatMap((notes, hour): Mark[] => {
      if (notes === 0) return [];
      const h = round(Math.max(1, (notes / most) * (plot.height - 1)));
      const w = round(x(60) - x(0) - 3);
      return [{ kind: 'rect', role: 'axis', x: round(x(hour * 60) + 1.5), y: round(foot - h), w, h }];
    });
    const name = speaker.say(`notes.${kind}.name`);
    const notes = log.byKind.find((one) => one.kind === kind)?.notes ?? 0;
    const label = speaker.say('charts.noteDensity.kind', {
      name: { q: 'word', value: name },
      count: { q: 'count', value: notes },
    });
    return [
      { kind: 'line', role: 'grid', lines: [[left, foot, left + width, foot]], width: 0.5 },
      ...bars,
      {
        kind: 'text',
        role: 'ink',
        x: round(left + width + 5),
        y: round(foot),
        text: label,
        size: text,
        anchor: 'start',
      },
    ];
  });
  return {
    width: CONTENT_WIDTH,
    height: kinds.length * LANE,
    how: 'noteDensity',
    summary: speaker.say('charts.noteDensity.summary', {
      kinds: {
        q: 'word',
        value: kinds
          .map(({ kind, hours }) => {
            const hour = hours.indexOf(Math.max(...hours));
            return speaker.say('charts.noteDensity.most', {
              name: { q: 'word', value: speaker.say(`notes.${kind}.name`) },
              from: { q: 'clock', value: hour * 60 },
              to: { q: 'clock', value: (hour + 1) * 60 },
            });
          })
          .join('; '),
      },
    }),
    get table() {
      return {
        columns: [speaker.say('charts.words.clock'), ...kinds.map(({ kind }) => speaker.say(`notes.${kind}.name`))],
        rows: Array.from({ length: 24 }, (_, hour) => [
          speaker.value({ q: 'clock', value: hour * 60 }, 'short'),
          ...kinds.map(({ hours }) => speaker.number(hours[hour]!, 0)),
        ]),
      };
    },
    marks,
  };
}
