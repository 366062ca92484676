import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Block, BlockOf, Form, Report } from '../../src/model/report.ts';
import { writePdf } from '../../src/writers/pdf/index.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';

const isFit = (block: Block): block is BlockOf<'fit'> => block.kind === 'fit';

function topHeadings(blocks: readonly Block[]): number {
  return blocks.reduce((sum, block) => {
    if (block.kind === 'heading') return sum + Number(block.level === 1);
    if (block.kind === 'columns') return sum + topHeadings(block.columns.flat());
    return 'blocks' in block ? sum + topHeadings(block.blocks) : sum;
  }, 0);
}

describe.each(stories)('%s', (story) => {
  test.each(['clinic', 'patient'] as const)(
    'each form of the %s paper is the same each time, without a top heading',
    async (voice) => {
      const report = compose(await analysisOf(story), wordsOf(), { voice, paper: 'a4' });
      const forms = report.pages.flatMap(({ blocks }) => blocks.filter(isFit).flatMap((block) => block.forms));
      for (const form of forms) {
        const blocks = form();
        expect(form()).toEqual(blocks);
        expect(topHeadings(blocks)).toBe(0);
      }
    },
  );
});

test('a form is told once, when it is tried, and never where a fuller one fits', async () => {
  const tried: string[] = [];
  const form =
    (name: string, points: number): Form =>
    () => {
      tried.push(name);
      return [{ kind: 'space', points }];
    };
  const blocks: Block[] = [
    { kind: 'fit', gives: 1, forms: [form('tall', 2000), form('fits', 100), form('never', 50)] },
    { kind: 'fit', gives: 2, forms: [form('full', 100), form('unasked', 50)] },
  ];
  const line = { left: '', right: '' };
  const page = { id: 'p', title: 'P', blocks };
  const report: Report = {
    language: 'en',
    direction: 'ltr',
    paper: 'a4',
    voice: 'clinic',
    title: 'T',
    tab: 'T',
    header: line,
    footer: line,
    pages: [page],
    printed: '2026-01-01',
  };
  await writePdf(report, fonts(), { version: 'test' });
  expect(tried).toEqual(['tall', 'full', 'fits']);
});
