import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Agreed } from '../../src/model/visits.ts';
import { asPrinted, writePdf } from '../../src/writers/pdf/index.ts';
import { analyseStory, held, storyNames } from '../samples/stories.ts';
import { CROWD } from '../support/crowd.ts';
import { everyMessage } from '../support/everyMessage.ts';
import { touchingIn } from '../support/geometry.ts';
import { words } from '../support/readability.ts';
import { passages } from '../support/running.ts';
import { analysisOf, fonts, wordsOf } from '../support/story.ts';
import { openSheets } from '../writers/paper.ts';

/** Points: Letter and A4, and the standing lines above and below what is told (their size is their own). */
const HEIGHT = { letter: 792, a4: 841.89 };
const WIDTH = { letter: 612, a4: 595.28 };
const FRAME = 708;
/** Two pieces of text whose letters touch. */
function overlaps(pieces: { text: string; x: number; y: number; width: number; size: number }[]): string[] {
  const boxes = pieces.map(({ text, x, y, width, size }) => ({
    text,
    left: x + 1,
    right: x + width - 1,
    foot: y,
    top: y + 0.6 * size,
  }));
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.foot < b.top && b.foot < a.top)
      .map((b) => `${a.text} / ${b.text}`),
  );
}

async function look(analysis: Analysis, language: 'en' | 'es', paper: 'a4' | 'letter', large = false) {
  const report = compose(analysis, wordsOf(language), { voice: 'patient', paper, large });
  const printed = asPrinted(report, fonts(), { version: 'test' });
  const { sheets } = await openSheets(await writePdf(report, fonts(), { version: 'test' }));
  const middle = HEIGHT[paper] / 2;
  const standing = large ? { above: 2 * 19 + 6, below: 3 * 19 } : { above: 2 * 11 + 6, below: 2 * 11 };
  const problems: string[] = [];
  for (const [number, { pieces }] of sheets.entries()) {
    const inside = pieces.filter(
      ({ y }) => y < middle + FRAME / 2 - standing.above && y > middle - FRAME / 2 + standing.below,
    );
    for (const { text, size } of inside) if (size < (large ? 16 : 12) - 0.01) problems.push(`${size} pt: ${text}`);
    for (const { text, x, width } of pieces)
      if (x < 40 || x + width > WIDTH[paper] - 40) problems.push(`out of the column: ${text}`);
    problems.push(...overlaps(pieces).map((pair) => `side ${number + 1}: ${pair}`));
  }
  problems.push(...touchingIn(printed));
  const text = sheets.map((sheet) => sheet.text.replace(/\s+/g, ' ')).join('\n');
  return { printed, sides: sheets.length, problems, text, first: sheets[0]!.text.replace(/\s+/g, ' ') };
}

const PAPERS = [
  ['en', 'letter'],
  ['es', 'a4'],
] as const;

describe.each(PAPERS)('the paper for a person in %s on %s', (language, paper) => {
  const say = (key: string): string => {
    const found = key
      .split('.')
      .reduce<unknown>((at, name) => (at as Record<string, unknown>)[name], wordsOf(language));
    return found as string;
  };
  const check = async (analysis: Analysis): Promise<void> => {
    const { printed, sides, problems, text, first } = await look(analysis, language, paper);
    expect(problems).toEqual([]);
    // Words of its own, without the locked cautions.
    const own = passages(printed, locked).reduce((sum, of) => sum + words(of.title).length + words(of.text).length, 0);
    expect.soft(own, 'words').toBeLessThan(451);
    expect(sides).toBe(2);
    for (const id of ['C1', 'C2']) expect(first).toContain(say(`cautions.${id}`));
    for (const id of ['C3', 'C4', 'C5', 'C6', 'C13']) expect(text).toContain(say(`cautions.${id}`));
    for (const key of ['own', 'agreed']) expect(text).toContain(say(`pages.patientBack.${key}`));
    const { phone } = analysis.settings.person;
    if (phone) expect(text).toContain(phone);
  };

  const locked = new Set(
    everyMessage({ cautions: (wordsOf(language) as { cautions: object }).cautions }).map(([, text]) => text),
  );
  test.each(storyNames)('two sides and 450 words, story %s', async (story) => {
    await check(held(analyseStory(story)));
  });
  test.each(CROWD)('two sides and 450 words, $name', async ({ make }) => {
    await check(make());
  });
});

// Spanish says it longest, and Letter is the shorter paper.
test.each(CROWD)('in large print two sheets, $name', async ({ make }) => {
  const { sides, problems } = await look(make(), 'es', 'letter', true);
  expect(problems).toEqual([]);
  expect(sides).toBe(4);
});

type Words = { pages: { patientBack: { own: string } } };

describe('what was agreed is of the paper whatever else has room', () => {
  const earlier: Agreed = {
    goal: 'fewer lows after football',
    step: 'food before football and at bedtime',
    helper: 'the team mate who drives',
    nextVisit: '2026-08-04' as Agreed['nextVisit'],
    sure: 8,
    question: 'can I play twice a week',
  };
  const today: Agreed = { ...earlier, helper: 'my sister', nextVisit: '2026-10-06' as Agreed['nextVisit'], sure: 6 };

  /** The story of four visits with this left by the last one. */
  function withAgreed(analysis: Analysis, agreed: Agreed): Analysis {
    const { lastTime } = analysis.measures;
    if (!lastTime.ok) throw new Error(lastTime.why);
    return {
      ...analysis,
      measures: { ...analysis.measures, lastTime: { ...lastTime, value: { ...lastTime.value, agreed } } },
    };
  }

  const SETS = ['en', 'es'].flatMap((language) =>
    (['a4', 'letter'] as const).flatMap((paper) => [false, true].map((large) => ({ language, paper, large }))),
  );
  test.each(SETS)('last time and today, in $language on $paper, large $large', async ({ language, paper, large }) => {
    const analysis = withAgreed(await analysisOf('four-visits'), earlier);
    for (const written of [null, today]) {
      const report = compose(analysis, wordsOf(language), { voice: 'patient', paper, large, written });
      const { sheets } = await openSheets(await writePdf(report, fonts(), { version: 'test' }));
      const text = sheets.map((sheet) => sheet.text.replace(/\s+/g, ' ')).join(' ');
      expect(sheets).toHaveLength(large ? 4 : 2);
      const { helper, question } = earlier;
      for (const line of [helper!, question!, earlier.goal!, earlier.step!]) expect(text).toContain(line);
      expect(text).toMatch(/August 4, 2026|4 de agosto de 2026/);
      expect(text).toMatch(/8 (of|de) 10/);
      expect(text).toContain((wordsOf(language) as Words).pages.patientBack.own);
      if (written === null) continue;
      for (const line of ['my sister', '6/10']) expect(text).toContain(line);
      expect(text).toMatch(/October 6|6 de octubre/);
    }
  });

  test('what is counted with it is not counted again under the topic', async () => {
    const report = compose(await analysisOf('four-visits'), wordsOf(), { voice: 'patient', paper: 'a4' });
    const text = JSON.stringify(asPrinted(report, fonts(), { version: 'test' })).replaceAll('\u00a0', ' ');
    expect(text.match(/3 of 10/g)).toHaveLength(1);
  });
});
