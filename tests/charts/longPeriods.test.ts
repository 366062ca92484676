import { describe, expect, test } from 'vitest';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import type { Block } from '../../src/model/report.ts';
import { addDays, weekdayOf } from '../../src/time/calendar.ts';
import { wordsOf } from '../support/story.ts';
import { openSheets, write } from '../writers/paper.ts';

/** A reading a quarter of an hour that swings through every band once a day; the tenth day of each month is missing. */
function readings(days: number): Uint8Array {
  const lines = ['Time,Glucose (mg/dL)'];
  for (let day = 0; day < days; day++) {
    const date = addDays('2031-03-05', day);
    if (date.endsWith('-10')) continue;
    for (let minute = 0; minute < 1440; minute += 15) {
      const clock = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
      lines.push(`${date} ${clock},${Math.round(150 + 115 * Math.sin((minute / 1440) * 2 * Math.PI + day))}`);
    }
  }
  return Buffer.from(lines.join('\n'));
}

function dayCharts(days: number) {
  const settings = { targets: 'adult' as const, today: '2032-03-31', period: { days }, person: {} };
  const analysis = analyse([{ name: 'a.csv', bytes: readings(days) }], settings, 'test') as Analysis;
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'letter', part: 'further' });
  const page = report.pages.find(({ id }) => id === 'day-strips')!;
  const drawings = page.blocks.flatMap((block: Block): Drawing[] => (block.kind === 'chart' ? [block.drawing] : []));
  return { report: { ...report, pages: [page] }, drawings };
}

/** Of days told one by one, the one that is missing is a line and no chart. */
describe.each<[days: number, charts: number, sheets: number]>([
  [14, 13, 2],
  [21, 20, 3],
  [22, 21, 3],
  [30, 29, 3],
  [36, 1, 1],
  [90, 2, 2],
  [92, 2, 2],
  [93, 2, 1],
  [365, 5, 2],
])('%i days', (days, charts, sheets) => {
  const { report, drawings } = dayCharts(days);

  test(`${charts} charts on at most ${sheets} sheets, none smaller than it was drawn`, async () => {
    expect(drawings).toHaveLength(charts);
    const file = await openSheets(await write(report));
    expect(file.sheets.length).toBeLessThanOrEqual(sheets);
    const drawn = file.sheets.flatMap(({ pieces }) => pieces.filter(({ text }) => /in range$/.test(text)));
    for (const { size } of drawn) expect(size).toBeGreaterThanOrEqual(8.49);
  });

  test('each says what it shows and stays inside itself', () => {
    for (const { summary, marks, width, height } of drawings) {
      expect(summary).toMatch(/\d/);
      for (const mark of marks) {
        if (mark.kind !== 'rect') continue;
        expect(mark.x).toBeGreaterThanOrEqual(0);
        expect(mark.x + mark.w).toBeLessThanOrEqual(width + 0.01);
        expect(mark.y + mark.h).toBeLessThanOrEqual(height + 0.01);
      }
    }
  });
});

test('a year has a box for every day that was read, in the column of its weekday, and a dotted one for each other', () => {
  const { drawings } = dayCharts(365);
  const boxes = drawings.flatMap(({ marks }) => marks.filter((mark) => mark.kind === 'rect'));
  const dotted = boxes.filter((mark) => mark.kind === 'rect' && mark.dotted);
  expect(dotted).toHaveLength(12);
  // 353 days read, every band on each: five boxes a day.
  expect(boxes.length - dotted.length).toBe(353 * 5);
  const columns = new Set(dotted.map((mark) => (mark.kind === 'rect' ? mark.x : 0)));
  const weekdays = new Set(
    Array.from({ length: 12 }, (_, i) =>
      weekdayOf(`${i < 10 ? 2031 : 2032}-${String(((i + 2) % 12) + 1).padStart(2, '0')}-10`),
    ),
  );
  expect(columns.size).toBeGreaterThanOrEqual(weekdays.size);
});
