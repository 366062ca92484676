import { expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { CROWD } from '../support/crowd.ts';
import { drawingsIn } from '../support/geometry.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';

/** An inch has 25.4 mm and 72 points. */
const FIVE_MM = (5 * 72) / 25.4;
/** What rounding to a hundredth of a point may take. */
const HAIR = 0.011;

/** Level and upright lines of a drawing that guide the eye: [x, y, x, y] each. */
const gridOf = ({ marks }: Drawing): number[][] =>
  marks.flatMap((mark) => (mark.kind === 'line' && mark.role === 'grid' ? mark.lines : []));

/** Heights of the rows of evenings as they are drawn: between the lines the lows stand on, and of all of them together. */
function rowHeights(drawing: Drawing): number[] {
  const grid = gridOf(drawing);
  const bases = grid.flatMap(([, from, , to]) => (from === to ? [to!] : [])).sort((a, b) => a - b);
  const foot = Math.max(...grid.flatMap(([left, , right, to]) => (left === right ? [to!] : [])));
  if (bases.length === 0) throw new Error('no row');
  return [foot / bases.length, ...bases.slice(1).map((base, i) => base - bases[i]!)];
}

const everyone: [name: string, make: () => Promise<Analysis>][] = [
  ...stories.map((name): [string, () => Promise<Analysis>] => [name, () => analysisOf(name)]),
  ...CROWD.map(({ name, make }): [string, () => Promise<Analysis>] => [name, async () => make()]),
];
const drawn = new Set<string>();

test.each(everyone)(
  'a row of an evening is at least 5 mm high, and every low stands on page 1: %s',
  async (name, make) => {
    const analysis = await make();
    const { lows } = analysis.measures;
    const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
    const front = asPrinted({ ...report, pages: report.pages.slice(0, 1) }, fonts(), { version: 'test' });
    const charts = drawingsIn(front).filter(({ drawing }) => drawing.how === 'evenings');
    expect(charts).toHaveLength(lows.ok && lows.value.list.length > 0 ? 1 : 0);
    for (const { drawing } of charts) {
      drawn.add(name);
      for (const form of [drawing, drawing.narrow ?? drawing])
        expect(Math.min(...rowHeights(form))).toBeGreaterThanOrEqual(FIVE_MM - HAIR);
      const bars = drawing.marks.filter(({ kind, role }) => kind === 'rect' && /^(very-)?low$/.test(role));
      expect(bars).toHaveLength(lows.ok ? lows.value.list.length : 0);
      const clock = drawing.marks.flatMap((mark) =>
        mark.kind === 'text' && /^(noon|midnight)$/.test(mark.text) ? mark.text : [],
      );
      expect(clock).toEqual(['noon', 'midnight', 'noon']);
    }
  },
);

test('the rows of most of them were looked at, the fullest too', () => {
  expect(drawn.size).toBeGreaterThan(20);
  expect([...drawn]).toEqual(
    expect.arrayContaining(['evening-exercise', 'a low every evening of 28 days', '365 days']),
  );
});

test('a row that is too low is found', () => {
  const line = (lines: number[][]) => ({ kind: 'line' as const, role: 'grid' as const, lines, width: 0.5 });
  const low = { marks: [line([[0, 0, 0, 24]]), line([[0, 12, 90, 12]]), line([[0, 24, 90, 24]])] };
  expect(rowHeights(low as unknown as Drawing)).toEqual([12, 12]);
});
