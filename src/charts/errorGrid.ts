import { scaleLinear } from 'd3-scale';
import { LOWER, UPPER } from '../measures/consensusGrid.ts';
import type { Drawing, Mark } from '../model/drawing.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Fingersticks } from '../model/trust.ts';
import type { ChartContext } from './context.ts';
import { frame, round } from './pen.ts';

const SIDE = 150;
const LEFT = 34;
const MOST = 400;
/** Where each zone's letter stands, mg/dL: finger, sensor. */
const LETTERS: readonly [string, number, number][] = [
  ['A', 345, 345],
  ['B', 225, 330],
  ['B', 345, 225],
  ['C', 120, 345],
  ['C', 345, 115],
  ['D', 78, 345],
  ['D', 345, 40],
  ['E', 14, 345],
];

/** Fingersticks against the sensor on the consensus error grid: zones by lines and letters, never by colour. */
export function errorGridChart({ pairs, zones }: Fingersticks, context: ChartContext): Drawing {
  const { speaker, text } = context;
  const top = 6;
  const sx = scaleLinear()
    .domain([0, MOST])
    .range([LEFT, LEFT + SIDE])
    .clamp(true);
  const sy = scaleLinear()
    .domain([0, MOST])
    .range([top + SIDE, top])
    .clamp(true);
  const x = (mgdl: number): number => round(sx(mgdl));
  const y = (mgdl: number): number => round(sy(mgdl));
  const marks: Mark[] = [
    { kind: 'line', role: 'axis', lines: [frame(LEFT, top, SIDE, SIDE)], width: 0.75 },
    { kind: 'line', role: 'grid', lines: [[x(0), y(0), x(MOST), y(MOST)]], width: 0.75, dash: [3, 3] },
    {
      kind: 'line',
      role: 'limit',
      lines: [...UPPER, ...LOWER].map(([, line]) =>
        inFrame(line).flatMap(([finger, sensor]) => [x(finger), y(sensor)]),
      ),
      width: 0.75,
    },
  ];
  for (const [letter, finger, sensor] of LETTERS) {
    marks.push({
      kind: 'text',
      role: 'axis',
      x: x(finger),
      y: round(y(sensor) + text * 0.36),
      text: letter,
      size: text,
      anchor: 'middle',
      strong: true,
    });
  }
  for (const at of [0, 100, 200, 300, 400]) {
    const label = speaker.value({ q: 'glucose', value: at as MgPerDl }, 'short');
    const common = { kind: 'text' as const, role: 'axis' as const, text: label, size: text };
    marks.push(
      { ...common, x: x(at), y: round(top + SIDE + text + 3), anchor: 'middle' },
      { ...common, x: LEFT - 4, y: round(y(at) + text * 0.36), anchor: 'end' },
    );
  }
  marks.push({
    kind: 'text',
    role: 'ink',
    x: LEFT + SIDE / 2,
    y: round(top + SIDE + 2 * text + 7),
    text: speaker.say('charts.errorGrid.axes', { unit: { q: 'word', value: speaker.unit } }),
    size: text,
    anchor: 'middle',
  });
  for (const { finger, sensor } of pairs)
    marks.push({ kind: 'sign', shape: 'plus', role: 'ink', x: x(finger), y: y(sensor), size: 7 });
  return {
    width: LEFT + SIDE + 12,
    height: round(top + SIDE + 2 * text + 12),
    how: 'errorGrid',
    summary: speaker.say('charts.errorGrid.summary', {
      pairs: { q: 'count', value: pairs.length },
      a: { q: 'count', value: zones.A },
      b: { q: 'count', value: zones.B },
      far: { q: 'count', value: zones.C + zones.D + zones.E },
    }),
    get table() {
      return pairsTable(pairs, context);
    },
    marks,
  };
}

/** Each pair with its zone. */
export function pairsTable(pairs: Fingersticks['pairs'], { speaker }: Pick<ChartContext, 'speaker'>) {
  return {
    columns: (['when', 'finger', 'sensor', 'zone'] as const).map((name) =>
      speaker.say(`pages.fingersticks.pairs.${name}`),
    ),
    rows: pairs.map(({ date, minute, finger, sensor, zone }): string[] => [
      speaker.say('pages.everyLow.when', { date: { q: 'date', value: date }, clock: { q: 'clock', value: minute } }),
      speaker.value({ q: 'glucose', value: finger }, 'short'),
      speaker.value({ q: 'glucose', value: sensor }, 'short'),
      zone,
    ]),
  };
}

/** A border cut where it leaves the square. */
function inFrame(line: readonly (readonly [number, number])[]): [number, number][] {
  const cut: [number, number][] = [];
  for (const [i, [x1, y1]] of line.entries()) {
    if (x1 <= MOST && y1 <= MOST) {
      cut.push([x1, y1]);
      continue;
    }
    const [x0, y0] = line[i - 1]!;
    const share = Math.min(x1 > x0 ? (MOST - x0) / (x1 - x0) : 1, y1 > y0 ? (MOST - y0) / (y1 - y0) : 1);
    cut.push([x0 + share * (x1 - x0), y0 + share * (y1 - y0)]);
    break;
  }
  return cut;
}
