import { expect, test } from 'vitest';
import { dayNames, speakerOf } from '../../src/language/index.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import { targetSets } from '../../src/targets/index.ts';
import { wordsOf } from '../support/story.ts';

const namesIn = (language: string, dates: string[]): Map<string, LocalDate> =>
  dayNames(
    speakerOf(wordsOf(language), { unit: 'mg/dL', voice: 'clinic', targets: targetSets.adult }),
    dates as LocalDate[],
  );

test.each([
  ['en', ['Jun 4', 'June 4', 'Thu Jun 4', 'June 4, 2026', 'Thursday, June 4, 2026']],
  ['es', ['4 jun', '4 de junio', 'jueves, 4 de junio de 2026']],
])('a day is known by every way of naming it, in %s', (language, expected) => {
  const names = namesIn(language, ['2026-06-04']);
  expect([...names.keys()].map((name) => name.replaceAll('\u00a0', ' '))).toEqual(expect.arrayContaining(expected));
  expect([...new Set(names.values())]).toEqual(['2026-06-04']);
});

test('words that could be two days are neither: only with its year is a day of a long period known', () => {
  const names = namesIn('en', ['2025-06-04', '2026-06-04']);
  expect(names.get('Jun 4')).toBeUndefined();
  expect(names.get('June 4, 2025')).toBe('2025-06-04');
  expect(names.get('June 4, 2026')).toBe('2026-06-04');
});
