import { expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import { pageAsText } from '../../src/writers/text.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

function page(analysis: Analysis): string {
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
  return pageAsText(report, 'overview').replaceAll('\n', ' ');
}

// Days asked for: review of 2023, doi 10.1089/dia.2023.0476 (21 to 35 for lows, 28 to 35 for CV).
test.each([
  [14, '14 days are short for lows (21 to 35 days) and for CV (28 to 35 days;'],
  [21, '21 days are short for CV (28 to 35 days;'],
  [28, null],
])('what %d days are short for', async (days, told) => {
  const text = page(await analysisOf('evening-exercise', { days }));
  if (told === null) expect(text).not.toContain('short for');
  else expect(text).toContain(told);
});

test('a changed clock is told beside hours that are not 24 times the days', async () => {
  const text = page(await analysisOf('autumn-clock-change'));
  expect(text).toContain('The clocks changed on October 26, so that day does not have 24 hours.');
  expect(page(await analysisOf('steady-fortnight'))).not.toContain('clocks changed');
});
