import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';

/** All that stands in running text or in cells, in every form of every block; what is drawn stands on one line. */
function texts(some: unknown): string[] {
  if (typeof some === 'string') return [some];
  if (typeof some === 'function') return texts(some());
  if (typeof some !== 'object' || some === null) return [];
  return Object.entries(some).flatMap(([name, value]) =>
    name === 'drawing' || name === 'picture' ? [] : texts(value),
  );
}

const PAPERS = [
  { voice: 'clinic' },
  { voice: 'clinic', part: 'further' },
  { voice: 'clinic', part: 'draft' },
  { voice: 'patient' },
] as const;

test.each(stories.flatMap((story) => ['en', 'es'].map((language) => [story, language] as const)))(
  'no line begins with a dot between the parts of a list: %s, %s',
  async (story, language) => {
    const analysis = await analysisOf(story);
    const all = PAPERS.flatMap((which) =>
      texts(compose(analysis, wordsOf(language), { ...which, paper: 'a4' }).pages.map(({ blocks }) => blocks)),
    );
    const dotted = all.filter((text) => text.includes('·'));
    expect(dotted.length).toBeGreaterThan(0);
    expect(dotted.filter((text) => /(?:^|[ \n])·/.test(text))).toEqual([]);
  },
);
