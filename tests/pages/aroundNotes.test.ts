import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { pageText } from '../support/pageText.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

test.each([
  ['en', 'may still have happened'],
  ['es', 'también pudo pasar'],
])('on how many days notes stand is said once (%s)', async (language, phrase) => {
  const report = compose(await analysisOf('long-highs'), wordsOf(language), {
    voice: 'clinic',
    paper: 'a4',
    part: 'further',
  });
  const page = report.pages.find(({ id }) => id === 'around-notes')!;
  expect(pageText({ ...report, pages: [page] }).split(phrase)).toHaveLength(2);
});
