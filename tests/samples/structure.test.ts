import { spawnSync } from 'node:child_process';
import { describe, expect } from 'vitest';
import { type ComposeOptions, compose } from '../../src/compose.ts';
import type { Settings } from '../../src/model/settings.ts';
import { structureFaults } from '../support/pdfStructure.ts';
import { wordsOf } from '../support/story.ts';
import { needs } from '../support/tools.ts';
import { open, readAloud, write } from '../writers/paper.ts';
import { analyseStory, held, storyNames } from './stories.ts';

const words = wordsOf();

/** Each kind of paper, so that every setting meets every story. */
const PAPERS: readonly [string, ComposeOptions, grey: boolean][] = [
  ['further pages, A4, colour', { voice: 'clinic', paper: 'a4', part: 'further' }, false],
  ['clinic report, A4, colour', { voice: 'clinic', paper: 'a4' }, false],
  ['clinic report, Letter, grey', { voice: 'clinic', paper: 'letter' }, true],
  ['patient paper, Letter, colour', { voice: 'patient', paper: 'letter' }, false],
  ['patient paper, A4, grey', { voice: 'patient', paper: 'a4' }, true],
  ['patient paper in large print', { voice: 'patient', paper: 'letter', large: true }, false],
];

type Reader = [program: string, ...args: string[]];
/**
 * Readers of structures and of text that complain of none. The one that puts both together sets a page again for each
 * element on it, 2 to 4 s for a report of many tables: there it reads the tree, and another the text.
 */
const WITH_TEXT: Reader[] = [['pdfinfo', '-struct-text', '-']];
const TREE_THEN_TEXT: Reader[] = [
  ['pdfinfo', '-struct', '-'],
  ['pdftotext', '-', '-'],
];

function expectFirst(start: string, parts: readonly string[]): void {
  for (const part of parts) expect(start).toContain(part);
  expect(start).toMatch(/ to .* · (mg\/dL|mmol\/L) · printed /);
}

/**
 * No validator of PDF/UA is to be had from the registries; these checks on the objects as qpdf tells them, and on the
 * tree as pdfjs tells it, stand in. What only people can judge (that a description says what a chart shows) they leave.
 */
describe.each(storyNames)('%s', (story) => {
  const analysis = held(analyseStory(story));
  for (const [name, options, grey] of PAPERS) {
    needs('qpdf')(`${name}: no fault in structure, marks, fonts or metadata`, async () => {
      const report = compose(analysis, words, options);
      const bytes = await write(report, { grey });
      const { faults, elements, marks } = structureFaults(bytes);
      expect(faults).toEqual([]);
      expect(marks).toBeGreaterThan(10);
      const file = await open(bytes);
      const figures = elements.filter(({ role }) => role === 'Figure').length;
      // The reader lists elements once a sheet, so only those with content count.
      expect(file.elements.filter(({ role, marks }) => role === 'Figure' && marks > 0)).toHaveLength(figures);
      expect(file.elements.filter(({ alt }) => alt !== undefined && /\d/.test(alt)).length).toBeGreaterThanOrEqual(
        figures,
      );
      // Whose paper it is comes first, and what it is, and of which days.
      const { code, clinic } = analysis.settings.person;
      const aloud = await readAloud(bytes);
      const heading = aloud.findIndex(({ role }) => role === 'H1');
      expect(heading).toBeGreaterThan(0);
      const first = aloud.map(({ text }) => text).slice(0, heading);
      expectFirst(first.join(' '), [code ?? 'Name or code', clinic ?? '', report.title]);
      for (const [reader, ...args] of options.voice === 'patient' ? WITH_TEXT : TREE_THEN_TEXT) {
        // These say beside what they print what they complain of.
        const read = spawnSync(reader, args, { input: bytes, encoding: 'utf8' });
        if (read.error !== undefined) continue;
        expect([read.status, read.stderr]).toEqual([0, '']);
        if (!args.includes('-struct-text')) continue;
        const start = read.stdout.slice(0, read.stdout.search(/\n {2}H1 /)).replace(/"\n\s*"/g, '');
        expectFirst(start, [code ?? 'Name or code', clinic ?? '', report.title]);
      }
      expect(file.title).toContain(analysis.settings.person.code ?? ' to ');
      if (!options.large) return;
      for (const { pieces } of file.sheets)
        for (const { text, size } of pieces) expect(size, text).toBeGreaterThanOrEqual(15.99);
    });
  }
});

/** Pages that no story has by itself: beside a period before, further indices, inferred meals; 40 days, a row each. */
const SOME: Partial<Settings> = { compare: { with: 'previous' }, moreIndices: true, inferMeals: true };
const MORE: readonly [string, Partial<Settings>, string[]][] = [
  ['with the fortnight before', { ...SOME, period: { from: '2026-04-27', to: '2026-05-10' } }, ['then-and-now']],
  // Nothing stands before all the days there are, so no page compares them.
  ['with a row a day', { ...SOME, period: { days: 40 } }, []],
];

describe.each(['en', 'es'])('pages that are asked for, in %s', (language) => {
  for (const [name, other, compared] of MORE)
    needs('qpdf')(name, async () => {
      const analysis = held(analyseStory('evening-exercise', other));
      const report = compose(analysis, wordsOf(language), { voice: 'clinic', paper: 'a4', part: 'further' });
      const pages = report.pages.map(({ id }) => id);
      expect(pages).toContain('indices');
      expect(pages.filter((id) => id === 'then-and-now')).toEqual(compared);
      expect(structureFaults(await write(report, {})).faults).toEqual([]);
    });
});
