import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { CONTENT_HEIGHT } from '../../src/charts/frame.ts';
import { compose } from '../../src/compose.ts';
import type { Block, BlockOf, Form } from '../../src/model/report.ts';
import type { Agreed } from '../../src/model/visits.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { CROWD } from '../support/crowd.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';

/** Words typed in at the visit that fill their places. */
const TYPED: Agreed = { goal: 'g '.repeat(80), step: 's '.repeat(80), interpretation: 'what we saw '.repeat(25) };

const isFit = (block: Block): block is BlockOf<'fit'> => block.kind === 'fit';
const goesEmpty = ({ forms }: BlockOf<'fit'>): boolean => forms.at(-1)!().length === 0;

/** The last side as it was asked for, and as it is printed. */
function lastSide(analysis: Analysis, language: string, paper: 'a4' | 'letter', written: Agreed | null) {
  const report = compose(analysis, wordsOf(language), { voice: 'clinic', paper, written });
  const asked = { ...report, pages: report.pages.filter(({ id }) => id === 'agreed') };
  return {
    report,
    asked: asked.pages[0]!.blocks,
    printed: asPrinted(asked, fonts(), { version: 't' }).pages[0]!.blocks,
  };
}

/** Of blocks that come in forms those that could go empty and did. */
function stands(asked: readonly Block[], printed: readonly Block[]) {
  const text = JSON.stringify(printed);
  const stood = (form: Form): boolean => {
    const inner = JSON.stringify(form()).slice(1, -1);
    return inner !== '' && text.includes(inner);
  };
  const fits = asked.filter(isFit).filter(({ forms }) => forms.length > 1);
  return { gone: fits.filter((one) => goesEmpty(one) && !one.forms.some(stood)).length };
}

const standsWhole = (make: () => Analysis | Promise<Analysis>) => async (language: string, paper: 'a4' | 'letter') => {
  const { asked, printed } = lastSide(await make(), language, paper, null);
  expect(stands(asked, printed).gone).toBe(0);
};

describe.each(stories)('what the topic rests on stands on the last side: %s', (story) => {
  test.each([
    ['en', 'a4'],
    ['en', 'letter'],
    ['es', 'a4'],
    ['es', 'letter'],
  ] as const)(
    'in %s on %s',
    standsWhole(() => analysisOf(story)),
  );
});

describe.each(CROWD)('what the topic rests on stands on the last side: $name', ({ make }) => {
  test.each([
    ['en', 'a4'],
    ['es', 'letter'],
  ] as const)('in %s on %s', standsWhole(make));
});

test.each([
  ...stories.map((name): [string, () => Promise<Analysis>] => [name, () => analysisOf(name)]),
  ...CROWD.slice(0, 2).map(({ name, make }): [string, () => Promise<Analysis>] => [name, async () => make()]),
])('beside long words typed in, it goes only where all else is at its least: %s', async (_, make) => {
  const { report, asked, printed } = lastSide(await make(), 'es', 'letter', TYPED);
  if (stands(asked, printed).gone === 0) return;
  const least = asked.map((one): Block => {
    if (!isFit(one)) return one;
    return { ...one, forms: one.forms.slice(goesEmpty(one) && one.forms.length > 1 ? -2 : -1) };
  });
  const page = { id: 'agreed', title: '', blocks: least };
  const again = asPrinted({ ...report, pages: [page] }, fonts(), { version: 't' }).pages[0]!.blocks;
  expect(stands(least, again).gone).toBeGreaterThan(0);
});

const space =
  (points: number): Form =>
  () => [{ kind: 'space', points }];

test('a form that is a loss is taken in its own turn, after blocks that give way later', () => {
  const blocks: Block[] = [
    { kind: 'fit', gives: 1, goes: 3, forms: [space(301), space(202), () => []] },
    { kind: 'fit', gives: 2, forms: [space(203), space(104)] },
  ];
  const report = compose(CROWD[0]!.make(), wordsOf(), { voice: 'clinic', paper: 'a4' });
  const heights = (taken: number): number[] => {
    const page = { id: 'p', title: 'P', blocks: [{ kind: 'space', points: taken } as const, ...blocks] };
    const printed = asPrinted({ ...report, pages: [page] }, fonts(), { version: 't' }).pages[0]!.blocks;
    return printed.slice(1).flatMap((block) => (block.kind === 'space' ? [block.points] : []));
  };
  expect([90, 190, 290].map((more) => heights(CONTENT_HEIGHT - 504 + more))).toEqual([[202, 203], [202, 104], [203]]);
  expect(heights(CONTENT_HEIGHT - 504)).toEqual([301, 203]);
});
