import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Block } from '../../src/model/report.ts';
import { analyseStory, held, storyNames } from '../samples/stories.ts';
import { wordsOf } from '../support/story.ts';

type Chart = Extract<Block, { kind: 'chart' }>;

function chartsIn(blocks: readonly Block[]): Chart[] {
  return blocks.flatMap((block): Chart[] => {
    if (block.kind === 'chart') return [block];
    if (block.kind === 'columns') return block.columns.flatMap(chartsIn);
    if (block.kind === 'fit') return block.forms.flatMap((form) => chartsIn(form()));
    return block.kind === 'panel' || block.kind === 'together' ? chartsIn(block.blocks) : [];
  });
}

/** Told by a table or a list of the page itself: the bar and the blocks of the hours, and the changes. */
const TOLD_BESIDE = /^(pages\.)?(overview|patient-front|then-and-now|clock)$/;

/** Pictures are for those who see them: each also has a sentence with its numbers, and the numbers as a table. */
function check(analysis: Analysis, voice: 'clinic' | 'patient', language: string): void {
  const reportOf = (part?: 'further') =>
    compose(analysis, wordsOf(language), { voice, paper: 'a4', ...(part && { part }) });
  const pages = [...reportOf().pages, ...(voice === 'clinic' ? reportOf('further').pages : [])];
  for (const page of pages)
    for (const { title, drawing } of chartsIn(page.blocks)) {
      const name = `${page.id}: ${title ?? drawing.summary}`;
      expect(drawing.summary, name).toMatch(/\d.*[.]$/su);
      const { table } = drawing;
      if (table === undefined) expect(page.id, name).toMatch(TOLD_BESIDE);
      else {
        expect(table.rows.length, name).toBeGreaterThan(0);
        for (const row of table.rows) expect(row, name).toHaveLength(table.columns.length);
      }
    }
}

describe.each(['en', 'es'])('every chart has a sentence with numbers and a table, in %s', (language) => {
  test.each(storyNames)('%s', (story) => {
    const analysis = held(analyseStory(story, { inferMeals: true }));
    check(analysis, 'clinic', language);
    check(analysis, 'patient', language);
  });

  test.each([40, 93])('over %i days', (days) => {
    check(held(analyseStory('evening-exercise', { period: { days } })), 'clinic', language);
  });

  test('beside the days before', () => {
    const other = { period: { days: 14 }, compare: { with: 'previous' } } as const;
    check(held(analyseStory('evening-exercise', other)), 'clinic', language);
  });
});
