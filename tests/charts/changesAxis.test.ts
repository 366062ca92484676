import { expect, test } from 'vitest';
import { changesChart } from '../../src/charts/changes.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import type { Change } from '../../src/model/thenAndNow.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

const { targets, measures } = await analysisOf('four-visits');
const speaker = speakerOf(wordsOf(), { unit: 'mg/dL', voice: 'clinic', targets });
const context = { speaker, targets, native: 'mg/dL' as const, text: 8.5 };
const known = measures.thenAndNow.ok ? measures.thenAndNow.value.changes.filter(({ low }) => low !== null) : [];

const change = (low: number, middle: number, high: number, smallest = 0.005): Change => ({
  ...known[0]!,
  change: middle,
  low,
  high,
  smallest,
});
const chart = (changes: readonly Change[], width?: number): Drawing =>
  changesChart(changes, ({ of }) => of, width === undefined ? context : { ...context, width });

/** From the left end of the axis to its right one, and from the left to the right of all intervals; points. */
function extents({ marks }: Drawing): { axis: [number, number]; data: [number, number] } {
  const xs = (role: string): number[] =>
    marks.flatMap((mark) =>
      mark.kind === 'line' && mark.role === role ? mark.lines.flatMap((line) => [line[0]!, line[2]!]) : [],
    );
  const ends = (all: number[]): [number, number] => [Math.min(...all), Math.max(...all)];
  return { axis: ends(xs('axis')), data: ends(xs('interval')) };
}

/** Points named under the axis, with the place of each. */
const ticks = ({ marks }: Drawing): { value: number; x: number }[] =>
  marks.flatMap((mark) =>
    mark.kind === 'text' && /^[−+]\d/.test(mark.text)
      ? [{ value: Number(mark.text.replace('−', '-')), x: mark.x }]
      : [],
  );

const WORLDS: Record<string, Change[]> = {
  'half a point': [change(-0.004, 0.001, 0.005), change(-0.002, 0, 0.003, 0.001)],
  'five points': [change(-0.05, 0.01, 0.04), change(-0.02, 0.01, 0.03)],
  'forty points': [change(-0.4, 0.1, 0.35), change(-0.3, -0.2, 0.2)],
  'only less': [change(-0.3, -0.2, -0.1)],
  'only more': [change(0.1, 0.2, 0.3)],
};

test.each(Object.entries(WORLDS))('the axis of a comparison follows the data: %s', (_, changes) => {
  for (const width of [undefined, 240]) {
    const drawing = chart(changes, width);
    const { axis, data } = extents(drawing);
    expect(data[0]).toBeGreaterThanOrEqual(axis[0] - 0.01);
    expect(data[1]).toBeLessThanOrEqual(axis[1] + 0.01);
    // From 0 to the furthest end: at least half of the axis is data.
    const zero = drawing.marks.flatMap((mark) =>
      mark.kind === 'line' && mark.role === 'ink' ? [mark.lines[0]![0]!] : [],
    )[0]!;
    const used = Math.max(zero, data[1]) - Math.min(zero, data[0]);
    expect(used / (axis[1] - axis[0])).toBeGreaterThan(0.5);
  }
});

test('what is named under the axis grows with the changes, and stands where its number belongs', () => {
  const most = Object.values(WORLDS).map((changes) =>
    Math.max(...ticks(chart(changes)).map(({ value }) => Math.abs(value))),
  );
  expect(most[0]).toBeLessThanOrEqual(1);
  expect(most[1]).toBeGreaterThanOrEqual(4);
  expect(most[1]).toBeLessThanOrEqual(10);
  expect(most[2]).toBeGreaterThanOrEqual(30);
  for (const changes of Object.values(WORLDS)) {
    const drawing = chart(changes);
    const named = ticks(drawing);
    expect(named.length).toBeGreaterThanOrEqual(2);
    const dots = drawing.marks.flatMap((mark) => (mark.kind === 'rect' ? [mark.x + mark.w / 2] : []));
    const [a, b] = [named[0]!, named.at(-1)!];
    const at = (points: number): number => a.x + ((points - a.value) / (b.value - a.value)) * (b.x - a.x);
    dots.forEach((x, i) => {
      expect(Math.abs(x - at(100 * changes[i]!.change))).toBeLessThan(0.1);
    });
  }
});

test('so does the comparison of the story of four visits', () => {
  expect(known.length).toBeGreaterThan(3);
  const shares = known.filter(({ of }) => /range|low|high/.test(of) && !of.endsWith('s'));
  const { axis, data } = extents(chart(shares));
  expect((data[1] - data[0]) / (axis[1] - axis[0])).toBeGreaterThan(0.5);
});
