import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { analysisJson } from '../../src/writers/json.ts';
import { pageText } from '../support/pageText.ts';
import { analysisOf, home, stories, wordsOf } from '../support/story.ts';

/**
 * What every story gives: its numbers, and the text of both papers page by page. Accept a change with `npm run golden` and
 * read the diff before committing it.
 */
describe.each(stories)('%s', (story) => {
  const kept = (name: string): string => join(home, 'tests/golden', story, name);

  test('the numbers', async () => {
    await expect(analysisJson(await analysisOf(story), { readings: false }).join('')).toMatchFileSnapshot(
      kept('analysis.json'),
    );
  });

  test.each(['clinic', 'patient'] as const)('the words of the %s paper', async (voice) => {
    const report = compose(await analysisOf(story), wordsOf(), { voice, paper: 'a4' });
    await expect(pageText(report)).toMatchFileSnapshot(kept(`${voice}.txt`));
  });
});
