import { expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Areas } from '../../src/indices/areas.ts';
import type { Grade } from '../../src/indices/quality.ts';
import type { Cell } from '../../src/model/report.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

/** Rows of the annex by their first cell, each as value and unit. */
async function annexOf(story: string) {
  const analysis = await analysisOf(story, { moreIndices: true });
  const report = compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4', part: 'further' });
  const rows = report.pages
    .filter(({ id }) => id === 'indices')
    .flatMap(({ blocks }) => blocks.flatMap((block): Cell[][] => (block.kind === 'table' ? block.rows : [])));
  const texts = new Map(rows.map((row) => [row[0]!.text, [row[1]!.text, row[2]!.text] as const]));
  return { indices: analysis.indices!, rows, texts };
}

const foundValue = <T>(found: { ok: boolean }): T => (found as unknown as { value: T }).value;

test('a report in mmol/L gives glucose, its areas and its rates in mmol/L, by the factor of clinical chemistry', async () => {
  const { indices, rows, texts } = await annexOf('autumn-clock-change');
  expect(rows.length).toBeGreaterThan(30);
  expect(rows.map((row) => row[2]!.text).filter((unit) => unit.includes('mg/dL'))).toEqual([]);
  // 180.156 g/mol of glucose (IUPAC atomic weights), so 18.0156 mg/dL are 1 mmol/L.
  const { whole } = foundValue<Areas>(indices.areas);
  expect(texts.get('whole curve')).toEqual([(whole / 18.0156).toFixed(1), 'mmol/L·h/d']);
  expect(texts.get('Mean of daily differences (MODD)')![1]).toBe('mmol/L');
  expect(texts.get('Mean absolute glucose change (MAG)')![1]).toBe('mmol/L/h');
  // Defined in mmol/L whatever the report's unit (Ryan 2004), so never converted.
  expect(texts.get('Lability index')).toEqual([foundValue<number>(indices.lability).toFixed(1), '(mmol/L)²/h/wk']);
});

test('a report in mg/dL keeps them', async () => {
  const { indices, texts } = await annexOf('steady-fortnight');
  expect(texts.get('whole curve')).toEqual([
    foundValue<Areas>(indices.areas).whole.toLocaleString('en-US', { maximumFractionDigits: 1 }),
    'mg/dL·h/d',
  ]);
  expect(texts.get('Mean of daily differences (MODD)')![1]).toBe('mg/dL');
});

test('the parts of GRADE are shares in percent (Hill 2007 gives 20, 8 and 72 % in type 1), all of them 100', async () => {
  const { indices, texts } = await annexOf('autumn-clock-change');
  const { hyper } = foundValue<Grade>(indices.grade);
  const [low, middle, high] = ['from low', 'from middle', 'from high'].map((name) => texts.get(name)!);
  expect(high).toEqual([`${Math.round(100 * hyper)}\u00a0%`, '']);
  const sum = [low, middle, high].reduce((all, one) => all + Number.parseFloat(one![0]), 0);
  expect(Math.abs(sum - 100)).toBeLessThanOrEqual(1);
});
