import { expect, test } from 'vitest';
import type { Block } from '../../src/model/report.ts';
import { headingDepths } from '../../src/writers/pdf/headings.ts';

const depthsOf = (pages: (1 | 2 | 3)[][]): number[][] => {
  const built = pages.map((levels, i) => ({
    id: `p${i}`,
    title: '',
    blocks: levels.map((level): Block => ({ kind: 'heading', level, text: '' })),
  }));
  const depths = headingDepths(built);
  return pages.map((levels, i) => levels.map((level) => depths[i]!(level)));
};

test.each<[string, (1 | 2 | 3)[][], number[][]]>([
  [
    'a later page with a top heading becomes a chapter',
    [
      [1, 2, 3],
      [1, 2],
      [1, 3],
    ],
    [
      [1, 2, 3],
      [2, 3],
      [2, 3],
    ],
  ],
  [
    'a later page without one keeps its levels',
    [
      [1, 2],
      [2, 3],
    ],
    [
      [1, 2],
      [2, 3],
    ],
  ],
  ['the first heading is the top one, whatever its level', [[2, 3], [2]], [[1, 2], [2]]],
  ['a second top heading of a page lies below the first', [[1, 1, 2]], [[1, 2, 2]]],
  ['no level is skipped, and siblings stay siblings', [[1, 3, 3, 2, 3, 3], [3]], [[1, 2, 2, 2, 3, 3], [3]]],
])('%s', (_, pages, expected) => {
  expect(depthsOf(pages)).toEqual(expected);
});
