import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { type ChartContext, roughWidth } from '../../src/charts/context.ts';
import { coverageChart } from '../../src/charts/coverage.ts';
import { dayPanelChart, smallDayChart } from '../../src/charts/dayPanel.ts';
import { dayRowsChart } from '../../src/charts/dayRows.ts';
import { dayStripChart } from '../../src/charts/dayStrip.ts';
import { eveningsChart } from '../../src/charts/evenings.ts';
import { hourBlocksChart } from '../../src/charts/hourBlocks.ts';
import { hourSharesChart } from '../../src/charts/hourShares.ts';
import { hoursBarChart } from '../../src/charts/hoursBar.ts';
import { modalDayChart } from '../../src/charts/modalDay.ts';
import { nightBarsChart } from '../../src/charts/nightBars.ts';
import { nightsChart } from '../../src/charts/nights.ts';
import { dayOf24, speakerOf } from '../../src/language/index.ts';
import type { Drawing, Mark } from '../../src/model/drawing.ts';
import type { Measured } from '../../src/model/measured.ts';
import { drawingSvg } from '../../src/writers/svg.ts';
import { analysisOf, home, stories, wordsOf } from '../support/story.ts';

function value<T>(measured: Measured<T>): T {
  if (!measured.ok) throw new Error(measured.why);
  return measured.value;
}

/** Every chart the papers may show of a story, by name; charts that its data do not carry are left out. */
function charts(analysis: Analysis, text = 8.5): Record<string, Drawing> {
  const { measures, targets, timeline } = analysis;
  const voice = text > 10 ? 'patient' : 'clinic';
  const speaker = speakerOf(wordsOf(), { unit: timeline.unit, voice, targets });
  const context: ChartContext = { speaker, targets, native: timeline.unit, text };
  const lows = value(measures.lows).list;
  const isLong = (label: string): boolean => /long/.test(label);
  const drawn: Record<string, Drawing> = {
    coverage: coverageChart(value(measures.coverage), context),
    evenings: eveningsChart(timeline, lows, 4, context, isLong),
    nightBars: nightBarsChart(value(measures.nights), 24, context),
    dayPanel: dayPanelChart(timeline, value(measures.daily)[4]!, 4, context, { height: 52, clock: true, isLong, lows }),
    smallDay: smallDayChart(timeline, value(measures.daily)[4]!, 4, context, 32, lows),
    nights: nightsChart(value(measures.nights), context),
    hoursBar: hoursBarChart(value(measures.timeInBands), context),
    hourBlocks: hourBlocksChart(dayOf24(value(measures.timeInBands).minutes), context),
    hourShares: hourSharesChart(value(measures.hourly), context, { height: 84, right: 66 }),
    dayRows: dayRowsChart(timeline, value(measures.daily), 0, context),
  };
  if (measures.modalDay.ok)
    drawn.modalDay = modalDayChart(measures.modalDay.value, context, { height: 210, outer: true });
  value(measures.daily).forEach((day, index) => {
    drawn[`dayStrip-${index}`] = dayStripChart(timeline, day, index, context, {
      height: 42,
      clock: true,
      lanes: 2,
      lows,
    });
  });
  return drawn;
}

const coordinates = (mark: Mark): number[] => {
  if (mark.kind === 'line') return mark.lines.flat();
  if (mark.kind === 'shape') return mark.rings.flat();
  if (mark.kind === 'rect') return [mark.x, mark.y, mark.x + mark.w, mark.y + mark.h];
  return [mark.x, mark.y];
};

type Box = { text: string; left: number; right: number; top: number; bottom: number };

function boxes(drawing: Drawing): Box[] {
  return drawing.marks.flatMap((mark): Box[] => {
    if (mark.kind !== 'text') return [];
    const width = roughWidth(mark.text, mark.size);
    const left = mark.x - (mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? width / 2 : width);
    return [{ text: mark.text, left, right: left + width, top: mark.y - mark.size * 0.7, bottom: mark.y }];
  });
}

/** Pairs of texts that print into each other by more than a point. */
function overlaps(drawing: Drawing): string[] {
  const all = boxes(drawing);
  return all.flatMap((one, i) =>
    all
      .slice(i + 1)
      .filter(
        (other) =>
          Math.min(one.right, other.right) - Math.max(one.left, other.left) > 1 &&
          Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 1,
      )
      .map((other) => `${one.text} × ${other.text}`),
  );
}

describe.each(stories)('charts of %s', (story) => {
  test('stay inside their box, in numbers, with words for those who cannot see them', async () => {
    for (const [name, drawing] of Object.entries(charts(await analysisOf(story)))) {
      const all = drawing.marks.flatMap(coordinates);
      expect(all.every(Number.isFinite), name).toBe(true);
      expect(Math.min(...all), name).toBeGreaterThanOrEqual(-1);
      expect(
        Math.max(...drawing.marks.flatMap((mark) => coordinates(mark).filter((_, i) => i % 2 === 0))),
        name,
      ).toBeLessThanOrEqual(drawing.width + 1);
      expect(drawing.summary.length, name).toBeGreaterThan(20);
      for (const box of boxes(drawing))
        expect(box.right, `${name}: ${box.text}`).toBeLessThanOrEqual(drawing.width + 6);
    }
  });

  test.each([8.5, 12, 17])('no text prints into another at %d points', async (size) => {
    const found = Object.entries(charts(await analysisOf(story), size))
      .filter(([name]) => size < 10 || ['nights', 'hourBlocks', 'modalDay'].includes(name))
      .flatMap(([name, drawing]) => overlaps(drawing).map((pair) => `${name}: ${pair}`));
    expect(found).toEqual([]);
  });
});

test.each([
  'coverage',
  'evenings',
  'nightBars',
  'dayPanel',
  'smallDay',
  'nights',
  'hoursBar',
  'hourBlocks',
  'hourShares',
  'modalDay',
  'dayRows',
  'dayStrip-4',
])('the drawing of %s is the one that was looked at', async (name) => {
  const drawing = charts(await analysisOf('evening-exercise', { days: 14 }))[name]!;
  await expect(`${drawingSvg(drawing)}\n`).toMatchFileSnapshot(join(home, 'tests/golden/charts', `${name}.svg`));
});
