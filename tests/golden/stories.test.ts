import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { gather } from '../../src/cli/gather.ts';
import { settle } from '../../src/cli/settings.ts';
import { compose, composeMethod } from '../../src/compose.ts';
import { resultName } from '../../src/papers/resultNames.ts';
import { visitOf } from '../../src/papers/visitOf.ts';
import { visitText } from '../../src/schemas/visitText.ts';
import { analysisJson } from '../../src/writers/json.ts';
import { pageText } from '../support/pageText.ts';
import { analysisOf, home, stories, wordsOf } from '../support/story.ts';

/**
 * The visit files of the story of four visits are what the program writes of each visit's exports and of what was agreed. Before the
 * stories, since that one is told beside them.
 */
test.each([
  ['first', '2026-02-03'],
  ['second', '2026-03-31'],
  ['third', '2026-06-02'],
])('the visit file of the %s of four visits', async (visit, date) => {
  const folder = join(home, 'sample-data/four-visits');
  const earlier = (name: string): string => join(folder, 'earlier', `${visit}-${name}`);
  const { compare: _, ...own } = JSON.parse(readFileSync(join(folder, 'settings.json'), 'utf8'));
  const asked = { ...own, date, agreed: earlier('agreed.txt') };
  const wanted = await settle(asked, undefined, date);
  if ('issues' in wanted) throw new Error(JSON.stringify(wanted.issues));
  const { inputs } = gather([earlier('readings.csv'), earlier('logbook.csv')]);
  const { version } = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'));
  const analysis = analyse(inputs, wanted.settings, version);
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  const name = resultName(own.code, 'visit', analysis.timeline.to);
  await expect(visitText(visitOf(analysis, name, wanted.agreed))).toMatchFileSnapshot(join(folder, 'earlier', name));
});

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
