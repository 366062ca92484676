import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';
import { openSheets, write } from '../writers/paper.ts';

type Words = { findings: Record<string, { name: string }>; charts: { evenings: Record<string, string> } };

/** Said on page 1 by its lines, rows, tables and the topic, or by its own words on the sheets rather than by name (ours). */
const BY_PAGE_ONE =
  /^(very-low|lows-seen|long-lows|lows-at-night|no-lows-seen|brief-lows|not-enough-data|nights-without-data|readings-at-limits|time-in-range|time-low-over-goal|cv-over-limit|before-.*)$/;

const flat = (text: string): string => text.replace(/\s+/g, ' ');

describe.each(stories)('%s', (story) => {
  test.each([
    ['en', 'a4'],
    ['es', 'letter'],
  ] as const)(
    'every other finding that holds is named on page 1 as printed, and the rows of lows have their key, in %s',
    async (language, paper) => {
      const analysis = await analysisOf(story);
      const words = wordsOf(language) as Words;
      const file = await openSheets(await write(compose(analysis, words, { voice: 'clinic', paper })));
      const first = flat(file.sheets[0]!.text);
      const topics = analysis.topics.map(({ id }) => id as string);
      const others = analysis.found.filter(
        ({ id, look }) => look.case === 'holds' && !BY_PAGE_ONE.test(id) && !topics.includes(id),
      );
      const missing = others
        .map(({ id }) => words.findings[id]!.name)
        .filter((name) => !name.includes('{') && !first.includes(name));
      expect(missing).toEqual([]);
      const { lows } = analysis.measures;
      if (lows.ok && lows.value.list.length > 0) expect(first).toContain(words.charts.evenings.bar);
    },
  );
});
