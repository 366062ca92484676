import { expect, test } from 'vitest';
import { eveningsChart } from '../../src/charts/evenings.ts';
import { eveningsOf, gravest } from '../../src/charts/eveningsOf.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import type { Episode } from '../../src/model/measures.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

const { targets, measures, timeline } = await analysisOf('evening-exercise');
const context = {
  speaker: speakerOf(wordsOf(), { unit: 'mg/dL', voice: 'clinic', targets }),
  targets,
  native: 'mg/dL' as const,
  text: 8.5,
};
const [first] = measures.lows.ok ? measures.lows.value.list : [];

/** A low of some minutes from 8 PM on a day of May, or from another minute. */
const low = (day: number, minutes: number, level: 1 | 2 = 1, startMinute = 1200): Episode => ({
  ...first!,
  date: `2026-05-${String(day).padStart(2, '0')}` as LocalDate,
  startMinute,
  minutes,
  level,
  night: startMinute < 360,
});
const texts = ({ marks }: Drawing): string[] => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
const chart = (lows: Episode[], most: number) => eveningsChart(timeline, lows, most, context, () => false);

test('an evening and its night are one row', () => {
  expect(eveningsOf([low(4, 30), low(5, 30, 1, 120), low(5, 30, 1, 800)])).toMatchObject([
    { date: '2026-05-04', lows: [{ startMinute: 1200 }, { startMinute: 120 }] },
    { date: '2026-05-05', lows: [{ startMinute: 800 }] },
  ]);
});

test('where not all fit, a very low keeps its row first, then a night, then the longest', () => {
  const evenings = eveningsOf([low(1, 200), low(2, 20, 2), low(4, 16, 1, 100), low(6, 90), low(8, 30)]);
  const kept = (most: number) => gravest(evenings, most).map(({ date }) => date.slice(-2));
  expect([1, 2, 3, 4].map(kept)).toEqual([['02'], ['02', '03'], ['01', '02', '03'], ['01', '02', '03', '06']]);
});

test('every low is drawn once: in a row, or as a mark on the line that counts the others', () => {
  const lows = [1, 2, 3, 4, 5, 6].map((day) => low(day, 20 + day));
  for (const most of [6, 4, 2]) {
    const drawing = chart(lows, most);
    const bars = drawing.marks.filter(
      (mark) => mark.kind === 'rect' && (mark.role === 'low' || mark.role === 'very-low'),
    );
    expect(bars).toHaveLength(6);
    expect(texts(drawing).filter((text) => text.includes('more low'))).toEqual(
      most === 6 ? [] : [`${6 - most} more lows`],
    );
  }
});

test('lows of one day that have no row stand beside one another', () => {
  const drawing = chart([low(2, 90), low(5, 20), low(5, 20, 1, 900), low(5, 20, 1, 1000)], 1);
  const marks = drawing.marks.flatMap((mark) => (mark.kind === 'rect' && mark.y > 20 ? [mark.x] : []));
  expect(new Set(marks).size).toBe(3);
});

const bold = ({ marks }: Drawing): string[] =>
  marks.flatMap((mark) => (mark.kind === 'text' && mark.strong && mark.y < 20 ? [mark.text] : []));

test('a low of the next morning is not taken for the day of its row: its own day stands at the right, and is the strong one', () => {
  // May 4, 2026 is a Monday (ISO 8601).
  const morning = chart([low(5, 20, 1, 702)], 1);
  expect(texts(morning)).toEqual(expect.arrayContaining(['Mon May 4', 'Tue 5']));
  expect(bold(morning)).toEqual(['Tue 5']);
  expect(bold(chart([low(4, 20), low(5, 20, 1, 120)], 1))).toEqual(['Mon May 4', 'Tue 5']);
  // One that goes on past midnight began on the day of its row.
  expect(bold(chart([low(4, 90, 1, 1410)], 1))).toEqual(['Mon May 4']);
  expect(texts(chart([low(4, 20)], 1))).not.toContain('Tue 5');
});
