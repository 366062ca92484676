import { describe, expect, test } from 'vitest';
import { compose } from '../../src/compose.ts';
import type { Words } from '../../src/language/index.ts';
import type { Block, Report } from '../../src/model/report.ts';
import { collisions } from '../support/pieces.ts';
import { pseudo } from '../support/pseudo.ts';
import { analysisOf, stories, wordsOf } from '../support/story.ts';
import { type Opened, open, type Piece, write } from '../writers/paper.ts';

/** English with accents and words longer by 40 %: no language we know of asks for more room. */
const long = pseudo(wordsOf() as Words);

/** All that a reader reads of a block, in pieces that stand together; and of these, what comes from words alone. */
function texts(block: Block): { all: string[]; ours: string[] } {
  const none = { all: [], ours: [] };
  const both = (...ours: string[]) => ({ all: ours, ours });
  switch (block.kind) {
    case 'heading':
    case 'paragraph':
    case 'caution':
      return both(block.text);
    case 'list':
    case 'boxes':
      return { all: block.items, ours: [] };
    case 'table': {
      const titles = block.columns.map(({ title }) => title);
      const caption = block.captionShown ? [block.caption] : [];
      const cells = block.rows.flatMap((row) => row.map(({ text }) => text));
      return { all: [...caption, ...titles, ...cells], ours: [block.caption, ...titles] };
    }
    case 'chart': {
      const title = block.title === undefined ? [] : [block.title];
      const marks = block.drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
      return { all: [...title, ...marks], ours: [...title, block.drawing.summary] };
    }
    case 'writeIn':
      return both(block.label ?? '');
    case 'columns':
      return joined(block.columns.flat());
    case 'panel':
    case 'together':
      return joined(block.blocks);
    // Which form is printed depends on the room.
    case 'fit':
      return { all: [], ours: joined(block.forms.flatMap((form) => form())).ours };
    default:
      return none;
  }
}

function joined(blocks: Block[]): { all: string[]; ours: string[] } {
  const each = blocks.map(texts);
  return { all: each.flatMap(({ all }) => all), ours: each.flatMap(({ ours }) => ours) };
}

const bare = (text: string): string => text.normalize('NFC').replace(/[\s\u00ad\u2066\u2069]+/g, '');

/** Words of the report that no sheet shows. A line may break anywhere, so whole sheets are searched without spaces. */
function lost(report: Report, { sheets }: Opened): string[] {
  const shown = bare(sheets.map(({ pieces }) => pieces.map(({ text }) => text).join('')).join(''));
  const { all } = joined(report.pages.flatMap(({ blocks }) => blocks));
  return all.flatMap((text) => text.split(/\s+/)).filter((word) => word !== '' && !shown.includes(bare(word)));
}

const PAPER_WIDTH = 595.28;
/** 15 mm: what every printer can print. A chart's label may hang into the binding edge as far as that. */
const MARGIN = 42.5;
const over = ({ x, width, size }: Piece): boolean => x < MARGIN || x + width - size * 0.25 > PAPER_WIDTH - MARGIN;

/** Texts of four letters and more without an accent never went through the words file; units are the same in all. */
const unspoken = (report: Report): string[] =>
  joined(report.pages.flatMap(({ blocks }) => blocks)).ours.filter(
    (text) => text !== 'mmol/L' && /\p{L}{4}/u.test(text) && !/[áéíóúÁÉÍÓÚñÑçÇýšžŠŽ]/.test(text),
  );

describe.each(stories)('%s', (story) => {
  test.each(['clinic', 'patient'] as const)('longer words on the %s paper', async (voice) => {
    const analysis = await analysisOf(story);
    const report = compose(analysis, long, { voice, paper: 'a4' });
    const file = await open(await write(report));
    expect.soft(unspoken(report), 'not from the words file').toEqual([]);
    expect.soft(lost(report, file), 'lost').toEqual([]);
    file.sheets.forEach(({ pieces }, sheet) => {
      expect.soft(collisions(pieces), `sheet ${sheet + 1}`).toEqual([]);
      expect
        .soft(
          pieces.filter(over).map(({ text }) => text),
          `sheet ${sheet + 1}: over the edge`,
        )
        .toEqual([]);
    });
    if (voice === 'patient') {
      // Longer words take more paper, never smaller print.
      const plain = await open(await write(compose(analysis, wordsOf(), { voice, paper: 'a4' })));
      const sizes = ({ sheets }: Opened) =>
        new Set(sheets.flatMap(({ pieces }) => pieces.map(({ size }) => Math.round(size))));
      expect([...sizes(file)].filter((size) => !sizes(plain).has(size))).toEqual([]);
      expect(file.sheets.length).toBeLessThanOrEqual(4);
    }
  });
});
