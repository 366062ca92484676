import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CONTENT_WIDTH } from '../../src/charts/frame.ts';
import type { Block, Cell } from '../../src/model/report.ts';
import { open, openSheets, pageOf, write } from './paper.ts';
import { sampleReport } from './sample.ts';

/** One text in every place that takes text. */
const everywhere = (text: string): Block[] => [
  { kind: 'heading', level: 1, text },
  { kind: 'paragraph', style: 'body', text },
  { kind: 'list', ordered: true, items: [text, text] },
  {
    kind: 'table',
    caption: text,
    captionShown: true,
    columns: [
      { title: text, align: 'start', width: 0.2 },
      { title: 'n', align: 'end', width: 0.8 },
    ],
    rows: [[{ text, band: 'low' }, { text }]],
  },
  { kind: 'boxes', items: [text] },
  { kind: 'boxes', items: [text, text], inline: true },
  { kind: 'writeIn', label: text, lines: 1 },
  { kind: 'caution', id: 'C2', text, boxed: true },
  { kind: 'caution', id: 'C11', text, boxed: false },
  { kind: 'columns', widths: [0.3, 0.7], columns: [[{ kind: 'paragraph', style: 'body', text }], []] },
  { kind: 'panel', blocks: [{ kind: 'paragraph', style: 'lead', text }] },
  {
    kind: 'chart',
    title: text,
    drawing: {
      width: 50,
      height: 20,
      summary: text,
      marks: [{ kind: 'text', role: 'axis', x: 0, y: 10, text, size: 9, anchor: 'start' }],
    },
  },
];

const hostile = (text: string) => {
  const standing = { left: text, right: text };
  return pageOf(everywhere(text), { title: text, header: standing, footer: standing, voice: 'patient' });
};

test.each([
  ['nothing', ''],
  ['spaces', '   \n \t '],
  ['markup', '</text><script>alert(1)</script> &amp; {page} %%EOF endstream'],
  ['PDF syntax', '(a) Tj ET Q >> endobj \\ \\( <</MCID 1>> BDC'],
  ['control characters and NUL', 'a\u0000b\u0001\u001b[31mc\u007f\u0085d\r\ne'],
  ['direction marks', 'x \u202Eevil\u202C \u2066y\u2069 \u200F'],
  ['halves of surrogate pairs', '\uD800 a \uDC00'],
  ['scripts the faces lack', '山田太郎 🙂 שלום'],
  ['combining marks without a base', '\u0301\u0327 e\u0301\u0327'],
  ['names of object members', '__proto__ constructor toString'],
])('%s: does not stop the report or leave the page', async (_, text) => {
  const { sheets } = await openSheets(await write(hostile(text)));
  expect(sheets.length).toBeGreaterThan(0);
  const seen = sheets.map((sheet) => sheet.text).join('');
  // biome-ignore lint/suspicious/noControlCharactersInRegex: this is what must be gone
  expect(seen).not.toMatch(/[\u0000-\u0008\u202E]/);
});

test('a word of 5,000 letters is broken, whole, and inside the page', async () => {
  const word = 'Abcdefghij'.repeat(500);
  const { sheets } = await openSheets(await write(pageOf([{ kind: 'paragraph', style: 'body', text: word }])));
  const body = sheets.flatMap(({ pieces }) => pieces.filter(({ size }) => size > 9));
  expect(body.map(({ text }) => text).join('')).toBe(word);
  for (const { x, width } of body) expect(x + width).toBeLessThanOrEqual(57 + CONTENT_WIDTH + 0.5);
});

test('a cell taller than a sheet runs on to the next', async () => {
  const words = Array.from({ length: 4000 }, (_, i) => `w${i}`).join(' ');
  const blocks: Block[] = [
    {
      kind: 'table',
      caption: 'c',
      captionShown: false,
      columns: [
        { title: 'A', align: 'start', width: 0.5 },
        { title: 'B', align: 'start', width: 0.5 },
      ],
      rows: [[{ text: 'x' }, { text: words }]],
    },
  ];
  const { sheets } = await openSheets(await write(pageOf(blocks)));
  expect(sheets.length).toBeGreaterThan(3);
  const seen = sheets.flatMap(({ pieces }) => pieces.map(({ text }) => text)).join(' ');
  expect([...new Set(seen.match(/\bw\d+\b/g))]).toHaveLength(4000);
  for (const { pieces } of sheets) for (const { y } of pieces) expect(y).toBeGreaterThan(42.5);
});

test('a table of 1,000 rows repeats its head and loses none', async () => {
  const rows: Cell[][] = Array.from({ length: 1000 }, (_, i) => [{ text: `row ${i}.` }]);
  const table: Block = {
    kind: 'table',
    caption: 'c',
    captionShown: false,
    columns: [{ title: 'Head', align: 'start', width: 1 }],
    rows,
  };
  const { sheets, elements } = await open(await write(pageOf([table])));
  for (const sheet of sheets) expect(sheet.text).toContain('Head');
  const seen = sheets.map((sheet) => sheet.text).join('\n');
  for (let i = 0; i < 1000; i++) expect(seen).toContain(`row ${i}.`);
  // Read aloud once: the repeats are artifacts. Each row is named by its first cell.
  expect(elements.filter(({ role, marks }) => role === 'TH' && marks > 0)).toHaveLength(1 + rows.length);
});

test('a name of any length leaves the sheet number and the print date in place', async () => {
  const name = 'Featherstonehaugh-Cholmondeley '.repeat(12);
  const base = sampleReport();
  const { sheets } = await openSheets(await write({ ...base, header: { ...base.header, left: name } }));
  for (const { text } of sheets) {
    expect(text).toContain('Featherstonehaugh');
    expect(text).toContain('…');
    expect(text).toMatch(/Sheet \d of \d/);
  }
});

test('no text makes the writer throw', async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 60 }), async (text) => {
      expect((await write(hostile(text))).length).toBeGreaterThan(1000);
    }),
    { numRuns: 12, seed: 7 },
  );
});
