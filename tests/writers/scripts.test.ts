import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import bidiFactory, { type Bidi } from 'bidi-js';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inVisualOrder, levelsOf } from '../../src/writers/pdf/bidi.ts';
import { PLAIN } from '../../src/writers/pdf/plainSetter.ts';
import { structureFaults } from '../support/pdfStructure.ts';
import { needs, run } from '../support/tools.ts';
import { FONTS, openSheets, pageOf, write } from './paper.ts';

/** Names and foods as people write them; invented. */
const TEXTS: readonly [script: string, text: string, face: RegExp][] = [
  ['Hebrew', 'מרית לוי', /DejaVuSans/],
  ['Hebrew with points', 'שָׁלוֹם', /DejaVuSans/],
  ['Arabic', 'كبسة دجاج', /DejaVuSans/],
  ['Persian with a joiner', 'می‌خواهم', /DejaVuSans/],
  ['simplified Chinese', '番茄炒蛋和米饭', /NotoSansHans/],
  ['traditional Chinese', '滷肉飯', /NotoSansHans/],
  ['Japanese', '抹茶アイス、ラーメン', /NotoSansHans/],
  ['Korean', '김치찌개', /NotoSansKR/],
  ['Hindi', 'दाल चावल', /NotoSansDevanagari/],
  ['Bengali', 'ভাত মাছ', /NotoSansBengali/],
  ['Tamil', 'சாம்பார் கொழுக்கட்டை', /NotoSansTamil/],
  ['Thai', 'ข้าวผัดกุ้ง', /NotoSansThai/],
  ['Georgian', 'ქართული', /DejaVuSans/],
  ['Greek', 'Ωμέγα', /IBMPlexSans/],
  ['Cyrillic', 'Україна', /IBMPlexSans/],
];

const folder = mkdtempSync(join(tmpdir(), 'daybands-scripts-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Marks that a reader of the file adds around text from right to left, and composed forms it takes apart. */
const bare = (text: string): string => text.replace(/[\u200b-\u200f\u202a-\u202e\u2066-\u2069]/g, '').normalize('NFC');

describe.each(TEXTS)('%s', (script, text, face) => {
  const file = join(folder, `${script}.pdf`);
  let bytes: Uint8Array;
  beforeAll(async () => {
    bytes = await write(
      pageOf([
        { kind: 'heading', level: 1, text: 'Food' },
        { kind: 'paragraph', style: 'body', text: `Lunch: \u2068${text}\u2069 45 g` },
        { kind: 'paragraph', style: 'strong', text },
      ]),
    );
    writeFileSync(file, bytes);
  });

  needs('qpdf')('every glyph is there, embedded and has its text', () => {
    expect(structureFaults(bytes).faults).toEqual([]);
  });
  needs('pdffonts')('is set in the face of its script', () => {
    expect(run('pdffonts', [file])).toMatch(face);
  });
  needs('pdftotext')('comes out in the order in which it is written, the number after it', () => {
    const printed = bare(run('pdftotext', [file, '-']));
    const lines = printed.split('\n').filter((line) => line.includes('Lunch'));
    // Points over letters may be told on a line of their own.
    if (/\p{M}/u.test(text.normalize('NFC')) && /[\u0590-\u05ff]/.test(text)) return;
    // Where the direction changes this reader puts the space on the other side of the word.
    expect(lines[0]!.replaceAll(' ', '')).toBe(`Lunch:${bare(text)}45g`.replaceAll(' ', ''));
  });
});

test('a name of one direction leaves numbers of the other beside it in place', async () => {
  const bytes = await write(pageOf([{ kind: 'paragraph', style: 'body', text: '\u2068מרית\u2069 · 104' }]));
  const { sheets } = await openSheets(bytes);
  const pieces = sheets[0]!.pieces.filter(({ text }) => /מרית|תירמ|104/.test(text));
  const [name, number] = [pieces.find(({ text }) => !/104/.test(text))!, pieces.find(({ text }) => /104/.test(text))!];
  expect(number.x).toBeGreaterThan(name.x);
});

test('a report in a script of its own direction starts at its right: words follow from right to left', async () => {
  const report = pageOf([{ kind: 'paragraph', style: 'body', text: 'אחת \u2066123 mg/dL\u2069 שתיים' }], {
    direction: 'rtl',
  });
  const { sheets } = await openSheets(await write(report));
  const at = (part: RegExp) => sheets[0]!.pieces.find(({ text }) => part.test(text))!.x;
  expect(at(/שתיים|םייתש/)).toBeLessThan(at(/123/));
  expect(at(/123/)).toBeLessThan(at(/אחת|תחא/));
});

test('a report without such text carries its two faces only', async () => {
  const text = Buffer.from(
    await write(
      pageOf([
        { kind: 'paragraph', style: 'strong', text: 'Ünü, 45 g' },
        { kind: 'paragraph', style: 'body', text: 'é' },
      ]),
    ),
  ).toString('latin1');
  expect(text.match(/\/FontFile/g)).toHaveLength(2);
});

test('both own faces have every character of the short way', () => {
  const pdf = [FONTS.regular, FONTS.semibold];
  expect(pdf.every((face) => face.length > 0)).toBe(true);
  const missing: string[] = [];
  for (let code = 0x20; code < 0x2300; code++) {
    const letter = String.fromCharCode(code);
    if (PLAIN.test(letter)) missing.push(letter);
  }
  return write(
    pageOf([
      { kind: 'paragraph', style: 'body', text: missing.join(' ') },
      { kind: 'paragraph', style: 'strong', text: missing.join(' ') },
    ]),
  ).then((bytes) => expect(structureFaults(bytes).faults.filter((fault) => !/heading/.test(fault))).toEqual([]));
});

/** bidi-js reorders whole strings by itself; ours reorders runs, so that each can be shaped. */
test('runs stand in the order that the annex gives to their letters', () => {
  const bidi = (bidiFactory as unknown as () => Bidi)();
  const letters = fc.constantFrom('a', 'b', 'א', 'ב', 'ع', '1', '2', ' ', '(', ')', '.', '\u2068', '\u2069');
  fc.assert(
    fc.property(
      fc.array(letters, { minLength: 1, maxLength: 20 }),
      fc.constantFrom('ltr' as const, 'rtl' as const),
      (parts, base) => {
        const line = parts.join('');
        const expected = bidi.getReorderedIndices(line, bidi.getEmbeddingLevels(line, base));
        const levels = levelsOf(line, base);
        const runs = [...line].map((_, i) => ({ level: levels[i]!, i }));
        expect(inVisualOrder(runs).map(({ i }) => i)).toEqual(expected);
      },
    ),
  );
});
