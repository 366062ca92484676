import { expect, test } from 'vitest';
import { type Analysis, analyse } from '../../src/analyse.ts';
import { gather } from '../../src/cli/gather.ts';
import { settle } from '../../src/cli/settings.ts';
import { compose } from '../../src/compose.ts';
import type { LocalDate } from '../../src/model/glucose.ts';
import type { Agreed } from '../../src/model/visits.ts';
import { pageAsText } from '../../src/writers/text.ts';
import { CROWD } from '../support/crowd.ts';
import { analysisOf, wordsOf } from '../support/story.ts';
import { openSheets, write } from '../writers/paper.ts';

const sentence = 'Something that was said at the table, in the words in which it was said. ';
const letters = (most: number): string => sentence.repeat(20).slice(0, most).trim();

/** Every field as long as people write who write much. */
const FULL: Agreed = {
  goal: letters(120),
  step: letters(120),
  helper: letters(120),
  nextVisit: '2026-09-17' as LocalDate,
  sure: 7,
  question: letters(120),
  remarks: letters(150),
  interpretation: letters(300),
  by: letters(40),
  on: '2026-06-02' as LocalDate,
};

const flat = (text: string): string => text.replace(/\s+/g, '');

async function sheetsOf(analysis: Analysis, voice: 'clinic' | 'patient', written: Agreed, language = 'en') {
  const report = compose(analysis, wordsOf(language), { voice, paper: 'letter', written });
  return { report, ...(await openSheets(await write(report))) };
}

const BUSY = CROWD.filter(({ name }) =>
  ['a fortnight', 'a fortnight beside the one before', 'a low every evening of 28 days', '2 days'].includes(name),
);

test.each(BUSY)('long typed words stand whole and add no side: $name', async ({ make, thin }) => {
  for (const language of ['en', 'es']) {
    const { report, sheets } = await sheetsOf(make(), 'clinic', FULL, language);
    const last = report.pages.findIndex(({ id }) => id === 'agreed');
    expect(last, language).toBe(thin ? 1 : 3);
    const added = await write({ ...report, pages: report.pages.slice(0, last + 1) });
    expect((await openSheets(added)).sheets.length, language).toBe(last + 1);
    // Of thin data the long ones have a sheet of their own.
    const where = flat((thin ? sheets : sheets.slice(last, last + 1)).map(({ text }) => text).join(''));
    for (const text of [FULL.goal, FULL.step, FULL.helper, FULL.question, FULL.remarks, FULL.interpretation, FULL.by])
      expect(where).toContain(flat(text!));
    const own = await sheetsOf(make(), 'patient', FULL, language);
    expect(own.sheets.length, language).toBe(2);
    for (const text of [FULL.goal, FULL.step]) expect(flat(own.sheets[1]!.text)).toContain(flat(text!));
    // What a clinician makes of it is not the person's paper.
    expect(flat(own.sheets.map(({ text }) => text).join(''))).not.toContain(flat(FULL.interpretation!));
  }
});

test('longer words stand whole on a sheet of their own, which the last side names', async () => {
  const long: Agreed = { goal: letters(300), interpretation: `first line\n\n${letters(2000)}`, remarks: 'a\nb' };
  const { report, sheets } = await sheetsOf(await analysisOf('steady-fortnight'), 'clinic', long);
  expect(report.pages.map(({ id }) => id)).toEqual(['overview', 'clock', 'days', 'agreed', 'written']);
  expect(sheets[3]!.text).toMatch(/Written at this visit/);
  const sheet = flat(sheets[4]!.text);
  for (const text of [long.goal!, 'first line', letters(2000)]) expect(sheet).toContain(flat(text));
});

test('without typed words nothing on any paper changes', async () => {
  const analysis = await analysisOf('steady-fortnight');
  for (const options of [{ voice: 'clinic' }, { voice: 'patient' }, { voice: 'clinic', part: 'draft' }] as const) {
    const asText = (written: Agreed | null) =>
      JSON.stringify(compose(analysis, wordsOf(), { ...options, paper: 'a4', written }));
    expect(asText({ by: 'A', on: '2026-06-02' as LocalDate })).toBe(asText(null));
  }
});

test('in the text to paste, typed words stand before the draft, which stays as it was worked out', async () => {
  const analysis = await analysisOf('evening-exercise');
  const text = (written: Agreed | null) =>
    pageAsText(
      compose(analysis, wordsOf(), { voice: 'clinic', paper: 'a4', part: 'draft', written }),
      'interpretation',
    );
  const own = text({ interpretation: 'We agree on food first.', goal: 'fewer lows', by: 'Dr B' });
  const [before = '', after = ''] = own.split('Draft interpretation, for editing and signature');
  expect(before).toMatch(/Typed in by Dr B; not worked out.*Goals we agreed: fewer lows.*We agree on food first\./s);
  const draft = text(null).split('Draft interpretation, for editing and signature')[1]!;
  const sentences = draft.split('\n').filter((line) => /\d/.test(line));
  for (const line of sentences) expect(after).toContain(line);
});

/** The story as the command reads it, about something else than the rules gave. */
async function chosen(topic: string): Promise<Analysis> {
  const { inputs, settingsPath } = gather(['sample-data/evening-exercise']);
  const wanted = await settle({ topic }, settingsPath, '2026-01-01');
  if ('issues' in wanted) throw new Error(JSON.stringify(wanted.issues));
  const analysis = analyse(inputs, wanted.settings, 'golden');
  if (!analysis.ok) throw new Error(JSON.stringify(analysis.issues));
  return analysis;
}

test('whatever topic is chosen, page 1 keeps its lines on lows, highs and nights, and says what the rule gave', async () => {
  const ruled = await analysisOf('evening-exercise');
  const own = await chosen('long-very-high');
  expect(own.topics).toEqual([{ id: 'long-very-high', rule: 'chosen' }]);
  const pages = (analysis: Analysis, voice: 'clinic' | 'patient') =>
    compose(analysis, wordsOf(), { voice, paper: 'a4' }).pages;
  const lines = (analysis: Analysis) => {
    const { blocks } = pages(analysis, 'clinic')[0]!;
    const at = (text: string) => blocks.findIndex((block) => block.kind === 'heading' && block.text === text);
    return { lows: at('Lows'), blocks: JSON.stringify(blocks.slice(at('Lows'), at('Lows') + 3)) };
  };
  expect(lines(own)).toEqual(lines(ruled));
  const form = JSON.stringify(pages(own, 'clinic')[0]!.blocks, (_, value) =>
    typeof value === 'function' ? value() : value,
  );
  expect(form).toMatch(/Chosen for this visit, not by rule\. By rule: very low glucose/);
  expect(JSON.stringify(pages(own, 'patient')[0])).toMatch(/very low|below 54/i);
  expect(JSON.stringify(pages(own, 'patient'))).toMatch(/This topic was chosen for the visit\. By rule it would be/);
});
