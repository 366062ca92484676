import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';
import { open, write } from '../writers/paper.ts';

type Words = { pages: { interpretation: { title: string; signature: string } } };

/** The draft is a text of its own to paste into a record, and so the one place that tells again (docs/decisions.md). */
function withoutDraft(side: string, words: Words): string {
  const from = side.indexOf(words.pages.interpretation.title);
  const to = side.indexOf(words.pages.interpretation.signature, from);
  return from < 0 || to < 0 ? side : side.slice(0, from) + side.slice(to);
}

const sentencesOf = (text: string): string[] =>
  text.split(/(?<=[.?!]) (?=\p{Lu}|\d)/u).filter((sentence) => sentence.length > 40);

const timesIn = (text: string, part: string): number => text.split(part).length - 1;

describe.each(stories)('%s: one fact, one place', (story) => {
  test.each(['en', 'es'])('no sentence stands twice, and a low is told on page 1 alone, in %s', async (language) => {
    const analysis = await analysisOf(story);
    const words = wordsOf(language) as Words;
    const file = await open(await write(compose(analysis, words, { voice: 'clinic', paper: 'a4' })));
    const sides = file.sheets.map(({ text }) => withoutDraft(text.replace(/\s+/g, ' '), words));
    const all = sides.join(' ');
    const said = sides.flatMap((side) => sentencesOf(side));
    expect(said.length).toBeGreaterThan(8);
    expect(said.filter((sentence, i) => said.indexOf(sentence) !== i)).toEqual([]);
    // How deep and how long a low was stands beside its bar; the strip of its day shows it and repeats no such number.
    const labels = file.sheets[0]!.pieces.map(({ text }) => text).filter((text) => /^≤?[\d.,]+ · \d/.test(text));
    const { lows } = analysis.measures;
    if (lows.ok && lows.value.list.length > 0) expect(labels.length).toBeGreaterThan(0);
    for (const label of new Set(labels)) {
      const onOne = labels.filter((one) => one === label).length;
      expect(timesIn(all, label)).toBe(onOne);
    }
  });
});
