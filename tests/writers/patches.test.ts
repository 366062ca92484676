import { deflateSync } from 'node:zlib';
import { create } from 'fontkit';
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { type Deflate, deflate } from '../../src/bytes/pack.ts';
import { bytesOf } from '../../src/bytes/text.ts';
import type { Pdf } from '../../src/writers/pdf/document.ts';
import type { Face } from '../../src/writers/pdf/face.ts';
import { usualCut, writePdf } from '../../src/writers/pdf/index.ts';
import {
  DirectPdf,
  escapeMetadata,
  fillPage,
  keepCuts,
  keepLetters,
  setPlainly,
  takePacked,
} from '../../src/writers/pdf/patches.ts';
import { plainSetter } from '../../src/writers/pdf/plainSetter.ts';
import { FONTS, pageOf } from './paper.ts';

// Each patch against the library as it comes: what is told apart here is told apart in every file we write.

const OPTIONS = {
  font: null,
  autoFirstPage: false,
  bufferPages: true,
  pdfVersion: '1.7',
  info: { Title: 'A & B', Creator: 'C', Producer: 'P', CreationDate: new Date(0), ModDate: new Date(0) },
};
const plainDocument = (): Pdf => new PDFDocument(OPTIONS as unknown as PDFKit.PDFDocumentOptions) as unknown as Pdf;

/** A document of a line of text, by the library's own means. */
function written(pdf: Pdf, prepare: (pdf: Pdf) => void): Pdf {
  pdf.font(create(FONTS.regular));
  prepare(pdf);
  pdf.addPage();
  (pdf as unknown as PDFKit.PDFDocument).fontSize(12).text('Steady nights', 50, 50);
  pdf.end();
  return pdf;
}

const streamed = (pdf: Pdf): Buffer => {
  const stream = pdf as unknown as { read(): Buffer | null };
  const pieces: Buffer[] = [];
  for (let piece = stream.read(); piece; piece = stream.read()) pieces.push(piece);
  return Buffer.concat(pieces);
};
const face = (): Face => ({
  font: create(FONTS.regular),
  plain: null,
  codes: new Map(),
  files: new Map(),
  letters: new Map(),
  uses: 0,
});

test('a file written at once is the file that the library streams', () => {
  const own = written(new DirectPdf(OPTIONS), () => {});
  expect(Buffer.from(own.written.done()).equals(streamed(written(plainDocument(), () => {})))).toBe(true);
  expect(streamed(own), 'nothing of it waits in the stream as well').toHaveLength(0);
});

test('the library keeps what is reached into where it was', () => {
  const pdf = written(new DirectPdf({ ...OPTIONS, tagged: true }), () => {});
  const { page, _font: font } = pdf;
  expect(font).toMatchObject({ id: expect.any(String), subset: { glyphs: expect.any(Array) } });
  expect(font!.subset.glyphs.length, 'grows with what is encoded').toBeGreaterThan(5);
  expect(page).toMatchObject({ fonts: expect.any(Object), structParentTreeKey: expect.any(Number) });
  expect(page.fonts[font!.id], 'the page lists its fonts by their ids').toBe(font!.ref());
  expect(pdf.getStructTreeRoot().data).toMatchObject({ Type: 'StructTreeRoot' });
  expect(pdf.getStructParentTree().get(page.structParentTreeKey)).toEqual(expect.any(Array));
  expect(pdf._offset, 'what is written so far').toBe(pdf.written.length);
});

test('the library still puts a title into its XML as it is, and the patch mends that', () => {
  const packet = (pdf: Pdf): string => streamed(written(pdf, () => {})).toString('latin1');
  expect(packet(plainDocument())).toContain('<rdf:li xml:lang="x-default">A & B</rdf:li>');
  const mended = (Title: string): string => {
    const pdf = plainDocument();
    pdf.info = { ...pdf.info, Title };
    escapeMetadata(pdf);
    return packet(pdf);
  };
  expect(mended('A & B')).toContain('<rdf:li xml:lang="x-default">A &amp; B</rdf:li>');
  const [title] = /<rdf:li xml:lang[\s\S]*?<\/rdf:li>/.exec(mended('/JS (x) endstream endobj 1 obj'))!;
  expect(title).toBe('<rdf:li xml:lang="x-default">&#47;JS (x) e&#110;dstream e&#110;dobj 1 obj</rdf:li>');
});

test('a page filled by the patch holds those operators and nothing else', () => {
  const pdf = new DirectPdf(OPTIONS);
  pdf.addPage();
  expect(pdf.page.content.buffer.length, 'what the library writes first').toBe(1);
  fillPage(pdf.page, bytesOf('0 0 m 9 9 l S'), (bytes) => bytes);
  pdf.end();
  const text = Buffer.from(pdf.written.done()).toString('latin1');
  expect(text).toContain('/Length 13\n/Filter /FlateDecode\n>>\nstream\n0 0 m 9 9 l S\nendstream');
  expect(text).not.toContain('1 0 0 -1 0');
});

describe('a face that is cut and packed once', () => {
  const patched = (shared: Face): Buffer => {
    const pdf = written(new DirectPdf(OPTIONS), (one) => {
      const font = one._font!;
      keepCuts(font, shared, deflate);
      takePacked(one, font);
    });
    return Buffer.from(pdf.written.done());
  };

  test('is the one the library embeds, once unpacked', async () => {
    const { inflateSync } = await import('node:zlib');
    const parts = (file: Buffer): string[] =>
      [...file.toString('latin1').matchAll(/stream\n([\s\S]*?)\nendstream/g)].map(([, body]) =>
        /^x/.test(body!) ? inflateSync(Buffer.from(body!, 'latin1')).toString('latin1') : body!,
      );
    const mine = parts(patched(face()));
    expect(mine.length).toBeGreaterThan(2);
    expect(mine).toEqual(parts(streamed(written(plainDocument(), () => {}))));
  });

  test('is packed once for two documents', () => {
    const cuts: Uint8Array[] = [];
    const shared = face();
    const packer = (bytes: Uint8Array): Uint8Array => {
      cuts.push(bytes);
      return deflate(bytes);
    };
    const files = [0, 1].map(() => {
      const pdf = written(new DirectPdf(OPTIONS), (one) => {
        keepCuts(one._font!, shared, packer);
        takePacked(one, one._font!);
      });
      return Buffer.from(pdf.written.done()).toString('latin1');
    });
    expect(cuts.length).toBe(1);
    expect(files[0]).toBe(files[1]);
  });
});

test('plain text set the short way is what the shaper gives, and the library asks for it by `layout`', () => {
  const bytes = FONTS.regular;
  const [short, long] = [create(bytes), create(bytes)];
  const plain = plainSetter(bytes)!;
  let asked = 0;
  setPlainly(short, {
    ...plain,
    layout: (text: string) => {
      asked++;
      return plain.layout(text);
    },
  });
  const encoded = (font: typeof short): unknown => {
    const pdf = new DirectPdf(OPTIONS);
    pdf.font(font);
    return pdf._font!.encode('AVATAR, Tomorrow 12', []);
  };
  expect(encoded(short)).toEqual(encoded(long));
  expect(asked).toBe(1);
});

test('a face cut before its document is made gives the file that is cut while it is made', async () => {
  const report = pageOf([{ kind: 'paragraph', style: 'body', text: 'Steady nights' }]);
  const cuts = { regular: usualCut(FONTS.regular, deflate), semibold: usualCut(FONTS.semibold, deflate) };
  // Faces are known by their bytes, and keep what was cut: a copy knows nothing yet.
  const fresh = () => ({ regular: FONTS.regular.slice(), semibold: FONTS.semibold.slice() });
  const meanwhile = Buffer.from(await writePdf(report, fresh(), { version: '1', deflate }));
  const before = Buffer.from(await writePdf(report, fresh(), { version: '1', deflate, cuts }));
  expect(before.equals(meanwhile)).toBe(true);
  expect(meanwhile.includes(Buffer.from(cuts.regular))).toBe(true);
});

test('a document that takes the usual glyphs and their letters from an earlier one is the document without it', async () => {
  const own: Deflate = (bytes, level) => deflateSync(bytes, level === undefined ? {} : { level });
  const report = (text: string) => pageOf([{ kind: 'paragraph', style: 'body', text }]);
  const fresh = () => ({ regular: FONTS.regular.slice(), semibold: FONTS.semibold.slice() });
  const fonts = fresh();
  for (const text of ['Steady nights', 'Steady nights', 'Nächte ohne Tiefs', 'Steady nights']) {
    const after = await writePdf(report(text), fonts, { version: '1', deflate: own });
    const alone = await writePdf(report(text), fresh(), { version: '1', deflate: own });
    expect(Buffer.from(after).equals(alone)).toBe(true);
  }
  // As the library itself writes and packs them.
  const pdf = new DirectPdf(OPTIONS);
  pdf.deflate = own;
  const kept = written(pdf, (pdf) => keepLetters(pdf, pdf._font!, face())).written.done();
  expect(Buffer.from(kept).equals(streamed(written(plainDocument(), () => {})))).toBe(true);
});
