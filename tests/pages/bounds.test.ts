import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Block, Report } from '../../src/model/report.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

/** Values of the table of single numbers. */
function singleNumbers(report: Report): string[] {
  const all = (blocks: Block[]): Block[] =>
    blocks.flatMap((block) => (block.kind === 'columns' ? block.columns.flatMap(all) : [block]));
  const table = report.pages
    .flatMap(({ blocks }) => all(blocks))
    .find((block) => block.kind === 'table' && block.caption === 'Average and variability');
  return table?.kind === 'table' ? table.rows.map(([, value]) => value!.text) : [];
}

// A reading at the sensor's limit says only "this low or lower", so what is computed from it is a bound: statistics
// of censored data (Helsel, Statistics for Censored Environmental Data, 2012, from memory).
test.each([
  ['long-highs', true],
  ['steady-fortnight', false],
])('%s: with readings beyond the limits the mean, SD, CV and GMI are all told as "about"', async (story, bounded) => {
  const analysis = await analysisOf(story);
  expect(analysis.measures.mean).toMatchObject({ ok: true, value: { bounded } });
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
  const values = singleNumbers(report).filter((value) => value !== '–');
  expect(values).toHaveLength(4);
  for (const value of values) expect(value.startsWith('about '), value).toBe(bounded);
  const said = report.pages.find(({ id }) => id === 'interpretation')!.blocks;
  expect(/coefficient of variation about \d/.test(JSON.stringify(said))).toBe(bounded);
});
