import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import { writePdf } from '../../src/writers/pdf/index.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';

/** Number of sheets, and the sheet on which each bookmark points, counted from 0. */
async function sheets(
  analysis: Analysis,
  language: string,
  voice: 'clinic' | 'patient',
  paper: 'a4' | 'letter',
  large = false,
) {
  const report = compose(analysis, wordsOf(language), { voice, paper, large });
  const bytes = await writePdf(report, fonts(), { version: 'test' });
  const pdf = await getDocument({ data: bytes, verbosity: 0 }).promise;
  const outline = (await pdf.getOutline()) ?? [];
  const starts = await Promise.all(
    outline.map(async ({ dest }) => pdf.getPageIndex((dest as unknown[])[0] as Parameters<typeof pdf.getPageIndex>[0])),
  );
  return { count: pdf.numPages, starts };
}

describe.each(stories)('%s', (story) => {
  describe.each(['en', 'es'])('in %s', (language) => {
    test.each(['a4', 'letter'] as const)(
      'the clinic report is two sheets, or one of thin data, on %s',
      async (paper) => {
        const { count, starts } = await sheets(await analysisOf(story), language, 'clinic', paper);
        const sides = story === 'thin-data' ? [0, 1] : [0, 1, 2, 3];
        expect({ count, starts }).toEqual({ count: sides.length, starts: sides });
      },
    );

    test.each(['a4', 'letter'] as const)('the patient paper is one sheet with two sides on %s', async (paper) => {
      const { count, starts } = await sheets(await analysisOf(story), language, 'patient', paper);
      expect({ count, starts }).toEqual({ count: 2, starts: [0, 1] });
    });

    test('large print takes four sides of the shorter paper, room to write included', async () => {
      const { count, starts } = await sheets(await analysisOf(story), language, 'patient', 'letter', true);
      expect({ count, starts }).toEqual({ count: 4, starts: [0, 1, 2, 3] });
    });
  });
});
