import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Block } from '../../src/model/report.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

test('days without a reading or a note are one line, and a clock stands under the last strip of every sheet', async () => {
  const report = compose(await analysisOf('thin-data'), wordsOf(), { voice: 'clinic', paper: 'a4', part: 'further' });
  const { blocks } = report.pages.find(({ id }) => id === 'day-strips')!;
  const names = blocks.slice(2).map((block: Block) => (block.kind === 'chart' ? block.drawing.day!.name : block));
  expect(names).toEqual([
    { kind: 'paragraph', style: 'small', text: 'Wed, June 17 to Thu, June 25: no readings on these 9 days.' },
    ...['Fri Jun 26', 'Sat Jun 27', 'Sun Jun 28', 'Mon Jun 29', 'Tue Jun 30'],
  ]);
  const heights = blocks.flatMap((block) => (block.kind === 'chart' ? [block.drawing.height] : []));
  expect(heights.at(-1)).toBeGreaterThan(Math.max(...heights.slice(0, -1)));
});
