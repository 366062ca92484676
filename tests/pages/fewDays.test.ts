import { expect, test } from 'vitest';
import { CONTENT_HEIGHT } from '../../src/charts/frame.ts';
import { compose } from '../../src/compose.ts';
import { wordsOf } from '../support/story.ts';
import { stressAnalysis } from '../support/stressPeople.ts';
import { openSheets, write } from '../writers/paper.ts';

// A side that is half empty is not worth its paper (ours).
test.each([3, 4, 5, 6, 7, 8])('of %i days, single days fill seven tenths of their side', async (days) => {
  const report = compose(stressAnalysis({ days, lowEvenings: true }), wordsOf('es'), {
    voice: 'clinic',
    paper: 'letter',
  });
  const pages = report.pages.filter(({ id }) => id === 'days');
  const { sheets } = await openSheets(await write({ ...report, pages }));
  expect(sheets.length).toBe(1);
  const ys = sheets[0]!.pieces.map(({ y }) => y).sort((a, b) => a - b);
  // From the head of the side to the last line over its foot.
  const middle = ys.filter((y) => y > ys[0]! + 30 && y < ys.at(-1)! - 30);
  expect(middle.at(-1)! - middle[0]!).toBeGreaterThan(0.7 * CONTENT_HEIGHT);
});
