import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Block } from '../../src/model/report.ts';
import { pageAsText } from '../../src/writers/text.ts';
import { sentences } from '../support/readability.ts';
import { frases } from '../support/spanish.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';

const paragraphs = (blocks: Block[]): string[] =>
  blocks.flatMap((block) => (block.kind === 'paragraph' && block.style === 'body' ? [block.text] : []));

describe.each(stories)('%s', (story) => {
  test.each([
    ['en', sentences],
    ['es', frases],
  ] as const)('five to nine sentences, each a paragraph, in reading order (%s)', async (language, split) => {
    const report = compose(await analysisOf(story), wordsOf(language), { voice: 'clinic', paper: 'a4', part: 'draft' });
    const page = report.pages.find(({ id }) => id === 'interpretation')!;
    const printed = paragraphs(page.blocks);
    expect(printed.length).toBeGreaterThanOrEqual(5);
    expect(printed.length).toBeLessThanOrEqual(9);
    for (const one of printed) expect(split(one), one).toHaveLength(1);
  });

  test('as plain text: every sentence, room to write and sign, the hours', async () => {
    const report = compose(await analysisOf(story), wordsOf(), { voice: 'clinic', paper: 'a4', part: 'draft' });
    const text = pageAsText(report, 'interpretation');
    const page = report.pages.find(({ id }) => id === 'interpretation')!;
    const lines = text.split('\n');
    for (const one of paragraphs(page.blocks)) expect(lines).toContain(one.replaceAll('\u00a0', ' '));
    for (const label of ["Clinician's interpretation:", 'Name:', 'Role:', 'Signature:', 'Date:']) {
      expect(lines[lines.indexOf(label) + 1], label).toMatch(/^_{40,}$/);
    }
    expect(text).toMatch(/^Draft made from fixed rules\./m);
    expect(text).toMatch(/^Hours of sensor readings in the period: .*\. 72 hours reached: (yes|no)\.$/m);
    expect(text).toContain(report.footer.left.replaceAll('\u00a0', ' '));
    expect(text).not.toMatch(/[{}\u00a0]|undefined|NaN/);
  });
});

test('a page that a report does not have is no text', async () => {
  const report = compose(await analysisOf(stories[0]!), wordsOf(), { voice: 'patient', paper: 'a4' });
  expect(pageAsText(report, 'interpretation')).toBe('');
});
