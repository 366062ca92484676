import { expect, test } from 'vitest';
import { CONTENT_HEIGHT } from '../../src/charts/frame.ts';
import { compose } from '../../src/compose.ts';
import { analyseStory, held } from '../samples/stories.ts';
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

// Too little data for two sheets: what is not drawn is not passed over.
test.each(['en', 'es'])('on one sheet the days that are missing are counted, in %s', async (language) => {
  for (const [analysis, all] of [
    [analyseStory('thin-data'), 5],
    [analyseStory('evening-exercise', { period: { days: 3 } }), 3],
  ] as const) {
    const report = compose(held(analysis), wordsOf(language), { voice: 'clinic', paper: 'a4' });
    const { sheets } = await openSheets(await write(report));
    const text = sheets.flatMap(({ pieces }) => pieces.map((piece) => piece.text)).join(' ');
    const said = language === 'en' ? `Drawn are 2 of ${all} days` : `Se dibujan 2 de ${all} días`;
    expect(text.replace(/\s+/g, ' ')).toContain(said);
  }
});
