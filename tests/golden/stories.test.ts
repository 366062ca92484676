import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { gather } from '../../src/cli/gather.ts';
import { settle } from '../../src/cli/settings.ts';
import { compose } from '../../src/compose.ts';
import { analysisJson } from '../../src/writers/json.ts';
import { pageText } from '../support/pageText.ts';

/**
 * What every story gives: its numbers, and the text of both papers page by page. Accept a change with `npm run golden` and
 * read the diff before committing it.
 */
const home = fileURLToPath(new URL('../..', import.meta.url));
const stories = readdirSync(join(home, 'sample-data')).filter((name) =>
  existsSync(join(home, 'sample-data', name, 'settings.json')),
);
const words: unknown = JSON.parse(readFileSync(join(home, 'templates/words/en.json'), 'utf8'));

describe.each(stories)('%s', (story) => {
  const kept = (name: string): string => join(home, 'tests/golden', story, name);

  async function analysed(): Promise<Analysis> {
    const { inputs, settingsPath } = gather([join(home, 'sample-data', story)]);
    const wanted = await settle({}, settingsPath, '2026-01-01');
    if ('issues' in wanted) throw new Error(JSON.stringify(wanted.issues));
    const analysis = analyse(inputs, wanted.settings, 'golden');
    if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
    return analysis;
  }

  test('the numbers', async () => {
    await expect(analysisJson(await analysed(), { readings: false })).toMatchFileSnapshot(kept('analysis.json'));
  });

  test.each(['clinic', 'patient'] as const)('the words of the %s paper', async (voice) => {
    const report = compose(await analysed(), words, { voice, paper: 'a4' });
    await expect(pageText(report)).toMatchFileSnapshot(kept(`${voice}.txt`));
  });
});
