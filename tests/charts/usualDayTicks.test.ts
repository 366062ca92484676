import { expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { modalDayChart } from '../../src/charts/modalDay.ts';
import { compose } from '../../src/compose.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { CROWD } from '../support/crowd.ts';
import { drawingsIn } from '../support/geometry.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';

/** In mg/dL, and as the consensus writes the four limits in mmol/L (Battelino 2019, Diabetes Care 42:1593-1603); the others by 18.016 (molar mass of glucose 180.16 g/mol). */
const MGDL = [54, 70, 100, 140, 180, 250, 300];
const MMOL = ['3.0', '3.9', '5.6', '7.8', '10.0', '13.9', '16.7'];

interface Tick {
  text: string;
  y: number;
}

/** What stands at the left of the plot, with its baseline. */
const ticksOf = ({ marks }: Drawing): Tick[] =>
  marks.flatMap((mark) => (mark.kind === 'text' && mark.anchor === 'end' ? [{ text: mark.text, y: mark.y }] : []));

/** The usual day as its report is printed, with the height of its plot. */
function usualDay(analysis: Analysis): { drawing: Drawing; plot: number } {
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
  const clock = asPrinted(report, fonts(), { version: 'test' });
  const drawing = drawingsIn(clock).find((one) => one.page === 'clock' && one.drawing.how === 'modalDay')!.drawing;
  const grid = drawing.marks.find(({ kind, role }) => kind === 'line' && role === 'grid');
  if (grid?.kind !== 'line') throw new Error('no clock');
  return { drawing, plot: grid.lines[0]![3]! - grid.lines[0]![1]! };
}

/** Logarithmic, above 180 at half that pace: the axis of all charts, written out here once more; a share of the plot. */
const up = (mgdl: number): number =>
  (Math.log(Math.min(mgdl, 180) / 40) + Math.log(Math.max(mgdl, 180) / 180) / 2) /
  (Math.log(180 / 40) + Math.log(400 / 180) / 2);
/** Where a picture is low a name stands this far from its height at most, points (ours). */
const MOVED = 1.5;

const usual = stories.filter((name) => name !== 'thin-data' && name !== 'pregnancy');
const people: [string, () => Analysis | Promise<Analysis>][] = [
  ...usual.map((name): [string, () => Promise<Analysis>] => [name, () => analysisOf(name)]),
  ...CROWD.filter(({ thin, make }) => !thin && make().measures.modalDay.ok).map(
    ({ name, make }): [string, () => Analysis] => [name, make],
  ),
];

test.each(people)(
  '54, 70, 100, 140, 180, 250 and 300 are named at the usual day, at their heights: %s',
  async (_, make) => {
    const analysis = await make();
    const { drawing, plot } = usualDay(analysis);
    const { unit } = analysis.timeline;
    const ticks = ticksOf(drawing);
    const named = MGDL.map((mgdl, i) => ({
      mgdl,
      tick: ticks.find(({ text }) => text === (unit === 'mg/dL' ? String(mgdl) : MMOL[i])),
    }));
    const found = named.filter(({ tick }) => tick !== undefined);
    expect(found.map(({ mgdl }) => mgdl)).toEqual(MGDL);
    for (const { mgdl, tick } of found) {
      const off = Math.abs(found[0]!.tick!.y - tick!.y - plot * (up(mgdl) - up(54)));
      expect(off, `${mgdl}`).toBeLessThan([250, 300].includes(mgdl) ? MOVED : 0.5);
    }
    const ys = ticks.map(({ y }) => y).sort((a, b) => a - b);
    // Figures of the face are 0.698 em high.
    expect(Math.min(...ys.slice(1).map((y, i) => y - ys[i]!))).toBeGreaterThan(0.75 * 8.5);
  },
);

test('in pregnancy its own limits stand there, 63 and 140, and no 70 or 180', async () => {
  const names = ticksOf(usualDay(await analysisOf('pregnancy')).drawing).map(({ text }) => text);
  expect(names).toEqual(expect.arrayContaining(['54', '63', '100', '140', '300']));
  expect(names).not.toContain('70');
  expect(names).not.toContain('180');
});

test('where a picture is low the ticks give way, never the limits of the target range, and none touches another', async () => {
  const { measures, targets } = await analysisOf('evening-exercise');
  const speaker = speakerOf(wordsOf(), { unit: 'mg/dL', voice: 'clinic', targets });
  if (!measures.modalDay.ok) throw new Error(measures.modalDay.why);
  const modal = measures.modalDay.value;
  for (const height of [230, 196, 170, 146, 124, 108, 80, 60]) {
    const context = { speaker, targets, native: 'mg/dL', text: 8.5 } as const;
    const ticks = ticksOf(modalDayChart(modal, context, { height, outer: true }));
    expect(ticks.map(({ text }) => text)).toEqual(expect.arrayContaining(['70', '180']));
    const ys = ticks.map(({ y }) => y).sort((a, b) => a - b);
    const steps = ys.slice(1).map((y, i) => y - ys[i]!);
    // Figures of the face are 0.698 em high.
    expect(Math.min(...steps)).toBeGreaterThan(0.7 * 8.5);
  }
});
