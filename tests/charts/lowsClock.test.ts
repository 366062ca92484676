import { expect, test } from 'vitest';
import { lowsClockChart } from '../../src/charts/lowsClock.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { Drawing } from '../../src/model/drawing.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import type { Episode } from '../../src/model/measures.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

const { targets, measures } = await analysisOf('evening-exercise');
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
});

const texts = ({ marks }: Drawing): string[] => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

test('where not all lows fit, the very low and the longest are drawn, and the rest are counted as lows', () => {
  const many = [1, 2, 3, 4, 5, 6].map((day) => low(day, 20 + day));
  const said = texts(lowsClockChart([...many, low(8, 16, 2), low(9, 200)], context));
  expect(said.filter((text) => text.startsWith('May'))).toEqual(expect.arrayContaining(['May 8', 'May 9', 'May 6']));
  expect(said).not.toContain('May 1');
  expect(said).toContain('and 4 more, listed in the table');
});

test('a low over midnight is two bars under their own dates, and one low', () => {
  const drawing = lowsClockChart([low(4, 114, 2, 1395)], context);
  expect(texts(drawing)).toEqual(expect.arrayContaining(['May 4', 'May 5']));
  expect(texts(drawing).join(' ')).not.toContain('more, listed');
});
