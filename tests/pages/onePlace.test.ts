import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import { speakerOf } from '../../src/language/index.ts';
import type { Block, Report } from '../../src/model/report.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { CROWD } from '../support/crowd.ts';
import { type Count, repeated } from '../support/oneFact.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';

const printed = (analysis: Analysis, language: string): Report =>
  asPrinted(compose(analysis, wordsOf(language), { voice: 'clinic', paper: 'a4' }), fonts(), { version: 'test' });

const everyone: [name: string, make: () => Analysis | Promise<Analysis>][] = [
  ...stories.map((name): [string, () => Promise<Analysis>] => [name, () => analysisOf(name)]),
  ...CROWD.map(({ name, make }): [string, () => Analysis] => [name, make]),
];

describe.each(everyone)('%s: one fact, one place', (_, make) => {
  test.each(['en', 'es'])('no sentence, low, list of days or amount is told twice, in %s', async (language) => {
    const analysis = await make();
    const { counted, ...twice } = repeated(analysis, wordsOf(language), printed(analysis, language));
    expect(twice).toEqual({ sentences: [], lows: [], days: [], amounts: [] });
    expect(counted.sentences).toBeGreaterThan(8);
    const { lows } = analysis.measures;
    if (lows.ok && lows.value.list.length > 0) expect(counted.lows).toBeGreaterThan(0);
  });
});

/** The report with one block more at the end of a side. */
const planted = (report: Report, id: string, block: Block): Report => ({
  ...report,
  pages: report.pages.map((page) => (page.id === id ? { ...page, blocks: [...page.blocks, block] } : page)),
});
const line = (text: string): Block => ({ kind: 'paragraph', style: 'body', text });

describe('what is told twice is seen', () => {
  const at = async (story: string, language: string) => {
    const analysis = await analysisOf(story);
    const report = printed(analysis, language);
    const { timeline, targets } = analysis;
    const speaker = speakerOf(wordsOf(language), { unit: timeline.unit, voice: 'clinic', targets });
    const see = (more: Report): Omit<Count, 'counted'> => {
      const { counted: _, ...twice } = repeated(analysis, wordsOf(language), more);
      return twice;
    };
    return { analysis, report, speaker, see };
  };

  test('a sentence of page 1 on the last side', async () => {
    const { report, see } = await at('evening-exercise', 'en');
    const box = report.pages[0]!.blocks.find((block) => block.kind === 'panel');
    const sentences =
      box?.kind === 'panel' ? box.blocks.flatMap((one) => (one.kind === 'paragraph' ? [one.text] : [])) : [];
    const own = sentences[0]!.replaceAll('\u00a0', ' ').match(/(?<=[.?!] )\p{Lu}[^.?!]{40,}[.?!]/u)![0];
    expect(see(planted(report, 'agreed', line(own))).sentences).toEqual([own]);
  });

  test.each(['en', 'es'])('how deep and how long a low was, beside the strip of its day, in %s', async (language) => {
    const { report, see, analysis, speaker } = await at('evening-exercise', language);
    if (!analysis.measures.lows.ok) throw new Error('no lows');
    const low = analysis.measures.lows.value.list.reduce((a, b) => (a.minutes > b.minutes ? a : b));
    const lowText = `${speaker.value({ q: 'glucose', value: low.extreme }, 'short')} · ${speaker.value({ q: 'minutes', value: low.minutes }, 'short')}`;
    expect(see(planted(report, 'days', line(`x ${lowText} x`))).lows).toEqual([`days: ${lowText}`]);
  });

  test.each([
    ['en', 'compact', ', '],
    ['en', 'plain', ' and '],
    ['es', 'plain', ' y '],
    ['es', 'compact', '; '],
  ] as const)('two days of a list of page 1, in %s, written %s and parted by "%s"', async (language, style, parts) => {
    const { report, see, analysis, speaker } = await at('long-highs', language);
    const dates = analysis.timeline.days.map(({ date }) => speaker.value({ q: 'date', value: date }, style));
    // May 21 and 27 of the list of days with most time very high.
    const two = [dates[3]!, dates[9]!].join(parts);
    expect(see(planted(report, 'clock', line(`x ${two}.`))).days).toEqual([
      '2026-05-21 2026-05-27 on overview and clock',
    ]);
  });

  test('the days of a table again in a table', async () => {
    const { report, see } = await at('long-highs', 'en');
    const rows = report.pages.flatMap(({ blocks }) => blocks).find((block) => block.kind === 'table');
    const again = rows && planted(planted(report, 'clock', rows), 'agreed', rows);
    if (!again) throw new Error('no table');
    expect(see(again).days.length).toBeGreaterThan(0);
  });

  test('an amount of page 1, in a text of another side', async () => {
    const { report, see } = await at('evening-exercise', 'en');
    expect(see(planted(report, 'agreed', line('The longest lasted 5 h 45 min.'))).amounts).toHaveLength(1);
    expect(see(planted(report, 'agreed', line('The lowest was 45 mg/dL.'))).amounts).toHaveLength(1);
  });
});
