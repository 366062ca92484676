import { expect, test } from 'vitest';
import { analyse } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Block, Report } from '../../src/model/report.ts';
import { everyForm, pageText } from '../support/pageText.ts';
import { analysisOf, wordsOf } from '../support/story.ts';

/** Values of the table of single numbers. */
function singleNumbers(report: Report): string[] {
  const all = (blocks: Block[]): Block[] =>
    blocks.flatMap((block) =>
      block.kind === 'columns' ? block.columns.flatMap(all) : block.kind === 'fit' ? all(block.forms[0]!()) : [block],
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
  const said = everyForm(compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4', part: 'draft' }).pages);
  expect(said).toContain(`the sensor mean ${words[0]}1`);
  expect(/coefficient of variation about \d/.test(said)).toBe(words[2] !== '');
});

test('a laboratory A1C stands beside a mean and a GMI that are told as bounds', async () => {
  const analysis = await analysisOf('long-highs', { a1c: '9 %' });
  const said = pageText(compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4', part: 'further' })).replaceAll(
    '\u00a0',
    ' ',
  );
  expect(said).toMatch(/Sensor mean at least \d+ mg\/dL, GMI at least 7\.9\s%/);
  expect(said).toMatch(/above the GMI of at least 7\.9\s%.* the sensor mean is at least \d/);
  expect(said).toContain('may bring the two nearer');
  expect(said).toMatch(/The coefficient of variation was about 36\.4/);
});

/** Both sheets and the further pages on a fortnight whose afternoons lie beyond what the sensor can show. */
function papersOn(beyond: string, at: number): string {
  const rows = ['time,glucose mg/dL'];
  for (let day = 2; day < 16; day++)
    for (let minute = 0; minute < 1440; minute += 5) {
      const clock = [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, '0')).join(':');
      rows.push(`2026-03-${String(day).padStart(2, '0')} ${clock},${minute >= at && minute < at + 150 ? beyond : 120}`);
    }
  const bytes = new TextEncoder().encode(rows.join('\n'));
  const settings = { targets: 'adult', today: '2026-05-01', person: {} } as const;
  const analysis = analyse([{ name: 'made.csv', bytes }], settings, 'test');
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  const parts = (['visit', 'further', 'draft'] as const).map((part) =>
    pageText(compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4', part })),
  );
  return parts.join('\n').replaceAll('\u00a0', ' ');
}

test('a limit stands as a number only where the file names it', () => {
  const named = papersOn('>400', 900);
  expect(named).toContain('above 400 mg/dL');
  const unnamed = papersOn('high', 900);
  expect(unnamed).toContain('above what the sensor can show');
  expect(unnamed).not.toMatch(/above 400|above 250 mg\/dL,|The highest reading was above \d/);
});

test.each([
  ['>400', 'above', 'at least'],
  ['<40', 'below', 'at most'],
])('%s: only that side is told, the same way in the words, the numbers and the days', (beyond, side, way) => {
  const text = papersOn(beyond, 900);
  const other = side === 'above' ? 'below' : 'above';
  expect(text).toContain(`readings were ${side} what the sensor can show`);
  expect(text).not.toContain(`${other} what the sensor can show`);
  expect(text).toContain(`the mean is ${way} what is printed`);
  expect(text).toMatch(new RegExp(`the sensor mean ${way} \\d`));
  expect(text.match(new RegExp(`average ${way} \\d`, 'g'))?.length).toBeGreaterThanOrEqual(14);
  expect(text).toMatch(side === 'above' ? /average ≥ \d/ : /average ≤ \d/);
});
