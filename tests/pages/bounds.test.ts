import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Block, Report } from '../../src/model/report.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

/** Values of the table of single numbers. */
function singleNumbers(report: Report): string[] {
  const all = (blocks: Block[]): Block[] =>
    blocks.flatMap((block) =>
      block.kind === 'columns' ? block.columns.flatMap(all) : block.kind === 'fit' ? all(block.forms[0]!) : [block],
    );
  const table = report.pages
    .flatMap(({ blocks }) => all(blocks))
    .find((block) => block.kind === 'table' && block.caption === 'Average and variability');
  return table?.kind === 'table' ? table.rows.map(([, value]) => value!.text) : [];
}

// A reading at the sensor's limit says only "this high or higher", so what is computed from it is a bound: statistics of
// censored data (Helsel, Statistics for Censored Environmental Data, 2012, from memory). Higher values raise a mean, and GMI
// rises with it; which way the spread moves is not known of both.
test.each([
  ['long-highs', ['at least ', 'about ', 'about ', 'at least ']],
  ['steady-fortnight', ['', '', '', '']],
])('%s: with readings beyond the limits the mean, SD, CV and GMI are told as bounds', async (story, words) => {
  const analysis = await analysisOf(story);
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4' });
  const before = singleNumbers(report).map((value) => value.replace(/[\d.].*$/, ''));
  expect(before).toEqual(words);
  const said = JSON.stringify(report.pages.find(({ id }) => id === 'agreed')!.blocks);
  expect(said).toContain(`the sensor mean ${words[0]}1`);
  expect(/coefficient of variation about \d/.test(said)).toBe(words[2] !== '');
});
