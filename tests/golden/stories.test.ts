import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compose, composeMethod } from '../../src/compose.ts';
import { analysisJson } from '../../src/writers/json.ts';
import { pageText } from '../support/pageText.ts';
import { analysisOf, home, stories, wordsOf } from '../support/story.ts';

/**
 * What every story gives: its numbers, and the text of the papers page by page. Accept a change with `npm run golden` and
 * read the diff before committing it.
 */
describe.each(stories)('%s', (story) => {
  const kept = (name: string): string => join(home, 'tests/golden', story, name);

  test('the numbers', async () => {
    await expect(analysisJson(await analysisOf(story), { readings: false }).join('')).toMatchFileSnapshot(
      kept('analysis.json'),
    );
  });

  test.each([
    ['clinic', { voice: 'clinic' }],
    ['further', { voice: 'clinic', part: 'further' }],
    ['patient', { voice: 'patient' }],
  ] as const)('the words of the %s paper', async (name, which) => {
    const report = compose(await analysisOf(story), wordsOf(), { ...which, paper: 'a4' });
    await expect(pageText(report)).toMatchFileSnapshot(kept(`${name}.txt`));
  });
});

test('how each number is made, the same for everyone', async () => {
  const report = composeMethod(wordsOf(), { paper: 'a4', printed: '2026-01-01', version: 'golden' });
  await expect(pageText(report)).toMatchFileSnapshot(join(home, 'tests/golden/method.txt'));
});
