import { describe, expect, test } from 'vitest';
import type { Analysis } from '../../src/analyse.ts';
import { compose } from '../../src/compose.ts';
import type { Report } from '../../src/model/report.ts';
import { asPrinted } from '../../src/writers/pdf/index.ts';
import { CROWD } from '../support/crowd.ts';
import { drawingsIn, touchingIn } from '../support/geometry.ts';
import { collisions } from '../support/pieces.ts';
import { analysisOf, fonts, stories, wordsOf } from '../support/story.ts';
import { openSheets, type Sheet, write } from '../writers/paper.ts';

// The least print: charts of small days (communication standard: axis text; ours for what stands beside a curve).
const LEAST_PRINT = 7.49;

type Words = {
  cautions: { clinicMethod: string };
  pages: Record<'interpretation' | 'agreed', Record<string, string>> & { overview: { topic: { title: string } } };
};
const flat = (text: string): string => text.replace(/\s+/g, ' ');

/** What a visit ends with that does not stand whole on a side. */
function notAgreed(side: string, { pages: { interpretation, agreed } }: Words): string[] {
  const lines = [interpretation.signature, agreed.goals, agreed.step, agreed.helper, agreed.next, agreed.sure];
  const flat = side.replace(/\s+/g, ' ');
  return lines.flatMap((line) => (line !== undefined && flat.includes(line) ? [] : [String(line)]));
}

/** Lines for the clinician's own words on the last side: those that stand under the heading for them, without a label. */
function ownLines(report: Report): number {
  const blocks = report.pages.find(({ id }) => id === 'agreed')?.blocks ?? [];
  return blocks.reduce((sum, one) => sum + (one.kind === 'writeIn' && one.label === undefined ? one.lines : 0), 0);
}

const MM = 72 / 25.4;

/** Heights from the lower to the upper limit on the page of single days, of the days that are drawn large; points. */
const rangeHeights = (report: Report): number[] =>
  drawingsIn({ ...report, pages: report.pages.filter(({ id }) => id === 'days') }).flatMap(({ drawing }) => {
    const heights = drawing.marks.flatMap((mark) =>
      mark.kind === 'line' && mark.role === 'limit' && mark.width === 0.9 ? [mark.lines[0]![1]!] : [],
    );
    return drawing.width > 200 && heights.length === 2 ? [Math.abs(heights[0]! - heights[1]!)] : [];
  });

type Paper = 'a4' | 'letter';
/** The clinic report of a person: as it is laid out, what stands on its sheets, and on those of the visit alone, without that of remarks. */
interface LaidOut {
  report: Report;
  printed: Report;
  sheets: Sheet[];
  visit: Sheet[];
}
/** Of one person at a time: what is looked at in several ways is made once. */
let kept: { of: Analysis; reports: Map<string, Promise<LaidOut>> } | undefined;

function reportOf(analysis: Analysis, language: string, paper: Paper): Promise<LaidOut> {
  if (kept?.of !== analysis) kept = { of: analysis, reports: new Map() };
  const key = `${language} ${paper}`;
  const report = kept.reports.get(key) ?? layOut(analysis, language, paper);
  kept.reports.set(key, report);
  return report;
}

async function layOut(analysis: Analysis, language: string, paper: Paper): Promise<LaidOut> {
  const report = compose(analysis, wordsOf(language), { voice: 'clinic', paper });
  const { sheets } = await openSheets(await write(report));
  const own = report.pages.filter(({ id }) => id !== 'remarks');
  const visit =
    own.length === report.pages.length ? sheets : (await openSheets(await write({ ...report, pages: own }))).sheets;
  return { report, printed: asPrinted(report, fonts(), { version: 'test' }), sheets, visit };
}

/** All that the geometry of the clinic report breaks, and its sheets but for that of remarks, the only one that may be added. */
async function looked(analysis: Analysis, language: string, paper: Paper) {
  const words = wordsOf(language) as Words;
  const { report, printed, sheets, visit } = await reportOf(analysis, language, paper);
  const last = report.pages.findIndex(({ id }) => id === 'agreed');
  const broken = [
    ...sheets.flatMap(({ pieces }) =>
      pieces.filter(({ size }) => size < LEAST_PRINT).map(({ text, size }) => `${size} pt: ${text}`),
    ),
    ...sheets.flatMap(({ pieces }) => collisions(pieces)),
    ...touchingIn(printed),
    // At least four, nine millimetres apart.
    ...(ownLines(printed) >= 4 ? [] : [`${ownLines(printed)} lines for the clinician's own words`]),
    ...(flat(sheets[0]!.text).includes(flat(words.cautions.clinicMethod))
      ? []
      : ['no caution for the care team on sheet 1']),
    ...(sheets[0]!.text.includes(words.pages.overview.topic.title) ? [] : ['no topic on page 1']),
    ...notAgreed(sheets[last]?.text ?? '', words).map((line) => `not on the last side: ${line}`),
  ];
  return { sheets: visit.length, broken };
}

// The aim of the redesign is sixteen hundred words of the two sheets, the caution for the care team and the sheet of remarks left out;
// of the stories fifty less, so that there is room (ours).
async function wordsOn(analysis: Analysis, language: string): Promise<number> {
  const words = wordsOf(language) as { cautions: { clinicMethod: string } };
  const { visit } = await reportOf(analysis, language, 'a4');
  const said = visit.flatMap(({ text }) => text.split(/\s+/).filter((word) => word !== ''));
  return said.length - words.cautions.clinicMethod.split(' ').length;
}

// A low of 62 is to be seen as deep: 9 mm from 70 to 180 mg/dL on the page of single days, however many there are.
async function expectHigh(analysis: Analysis, language: string): Promise<void> {
  const { report, printed } = await reportOf(analysis, language, 'letter');
  const heights = rangeHeights(printed);
  // Another range, in pregnancy, has its own height; of thin data the days share a side.
  if (analysis.targets.id.startsWith('pregnancy') || !report.pages.some(({ id }) => id === 'days')) return;
  expect(heights.length).toBeGreaterThan(0);
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(9 * MM - 0.05);
}

describe.each(CROWD)('$name', ({ make, thin }) => {
  test.each([
    ['en', 'a4'],
    ['es', 'letter'],
  ] as const)(
    'in %s on %s the clinic report stands on its sheets, nothing on anything else',
    async (language, paper) => {
      expect(await looked(make(), language, paper)).toEqual({ sheets: thin ? 2 : 4, broken: [] });
    },
  );

  test('70 to 180 take 9 mm and more on each large day', () => expectHigh(make(), 'es'));

  test.each(['en', 'es'])('words of the two sheets, %s: at most 1,600', async (language) => {
    expect(await wordsOn(make(), language)).toBeLessThanOrEqual(1600);
  });

  // Of few and of many, on thin data and beside a comparison.
  test('every remark stands whole, and page 1 says where those are that need a sheet', async () => {
    const analysis = make();
    const { remarks } = analysis.measures;
    if (!remarks.ok || remarks.value.length === 0) return;
    const { report, printed } = await reportOf(analysis, 'en', 'a4');
    const text = JSON.stringify(printed.pages);
    expect(remarks.value.filter((remark) => !text.includes(remark.text)).map(({ at }) => at)).toEqual([]);
    const onSheet = report.pages.some(({ id }) => id === 'remarks');
    expect(/more remarks? stands? whole/.test(JSON.stringify(report.pages[0]))).toBe(onSheet);
  });
});

describe.each(stories)('the story %s', (story) => {
  const sheets = story === 'thin-data' ? 2 : 4;
  for (const language of ['en', 'es']) {
    for (const paper of ['a4', 'letter'] as const)
      test(`in ${language} on ${paper} stands on its sheets, nothing under 7.5 pt, nothing on anything else`, async () => {
        expect(await looked(await analysisOf(story), language, paper)).toEqual({ sheets, broken: [] });
      });
    test(`70 to 180 take 9 mm and more on each large day, ${language}`, async () =>
      expectHigh(await analysisOf(story), language));
    test(`words of the two sheets, ${language}: at most 1,550`, async () => {
      expect(await wordsOn(await analysisOf(story), language)).toBeLessThanOrEqual(1550);
    });
  }
});

test('200 remarks stand whole: what does not fit on the second side is on a sheet of its own, and nothing else is added', async () => {
  const analysis = CROWD.find(({ name }) => name.includes('200 remarks'))!.make();
  const { report, sheets } = await reportOf(analysis, 'en', 'a4');
  expect(report.pages.map(({ id }) => id)).toEqual(['overview', 'clock', 'days', 'agreed', 'remarks']);
  const shown = sheets.map(({ text }) => text.replace(/\s+/g, '')).join('');
  const { remarks } = analysis.measures;
  if (!remarks.ok) throw new Error(remarks.why);
  expect(remarks.value.length).toBeGreaterThanOrEqual(200);
  for (const { text } of remarks.value) expect(shown).toContain(text.replace(/\s+/g, ''));
  expect(sheets[0]!.text).toMatch(/more remarks stand/);
});
