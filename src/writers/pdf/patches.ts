import type { ParsedFont } from 'fontkit';
import PDFDocument from 'pdfkit';
import type { Deflate } from '../../bytes/pack.ts';
import { withoutMarkup } from '../markup.ts';
import { Bytes } from './bytes.ts';
import type { Pdf, PdfPage, Ref } from './document.ts';
import type { DocumentFont } from './documentFont.ts';
import type { Face } from './face.ts';
import type { PlainSetter } from './plainSetter.ts';

// Whatever of pdfkit 0.20 and fontkit 2.0 is replaced or reached into, with the reason. `tests/writers/patches.test.ts`
// makes a document with and without and compares them, so that a release that works otherwise is met there.

/**
 * Gives an object other methods. A function written right of `object.name =` would be put by the engine where old objects lie; there it
 * holds its document, and with it all of a person, until all memory is looked through (V8 11.3, from its parser).
 */
function replace<T extends object>(object: T, methods: Partial<T>): void {
  Object.assign(object, methods);
}

/** Enough for most reports without growing. */
const FILE_SIZE = 1 << 18;

const Streamed = PDFDocument as unknown as new (options: Record<string, unknown>) => Pdf;

/**
 * `_write`: what pdfkit appends to the file goes straight into one buffer. Its stream would cost a tenth of a report's time,
 * hands the bytes on later, and is Node's in one engine and the library's own in others.
 */
export class DirectPdf extends Streamed {
  override _write(data: Uint8Array | string): void {
    // The first line is written before a constructor here could run.
    this.written ??= new Bytes(FILE_SIZE);
    if (typeof data === 'string') this.written.text(data).text('\n');
    else this.written.bytes(data);
    this._offset = this.written.length;
  }
}

/**
 * `_addInfo`: pdfkit puts the title into its XML packet as it is; `A & B` would break the packet. The packet is not
 * packed, so a name in the title that is written like a part of the file stands there in pieces.
 */
export function escapeMetadata(pdf: Pdf): void {
  const write = pdf._addInfo;
  replace(pdf, {
    _addInfo() {
      const plain = pdf.info;
      pdf.info = Object.fromEntries(
        Object.entries(plain).map(([key, value]) => [key, typeof value === 'string' ? inPacket(value) : value]),
      );
      write.call(pdf);
      pdf.info = plain;
    },
  });
}

const inPacket = (text: string): string =>
  withoutMarkup(text)
    .replaceAll('/', '&#47;')
    .replace(/en(?=d(?:stream|obj))/g, 'e&#110;');

/**
 * `content.buffer`: fills the current page with operators. Deflated at a lower level than pdfkit's: a third of the time for
 * 11 % more bytes. The transformation pdfkit has already written there is dropped.
 */
export function fillPage({ content }: PdfPage, operators: Uint8Array, deflate: Deflate): void {
  content.compress = false;
  content.buffer = [];
  content.data.Filter = 'FlateDecode';
  content.write(deflate(operators, 3));
}

/**
 * `subset.encode`: cutting a font down and packing it takes 6 ms, and most reports use the same glyphs, so each cut is made
 * once for all documents, and the usual one before there is any.
 */
export function keepCuts(
  { subset }: DocumentFont,
  face: Face,
  deflate: Deflate,
  cut?: { key: string; file: Uint8Array },
): void {
  const encode = subset.encode.bind(subset);
  replace(subset, {
    encode() {
      const key = subset.glyphs.join();
      if (face.packer !== deflate) [face.files, face.letters] = [new Map(), new Map()];
      face.packer = deflate;
      let file = face.files.get(key) ?? (key === cut?.key ? cut.file : undefined);
      if (!file) {
        file = deflate(encode());
        face.files.set(key, file);
      }
      return file;
    },
  });
}

/** `embed` and `ref`: the first object a font asks for takes its file, which `keepCuts` has packed already. */
export function takePacked(pdf: Pdf, font: DocumentFont): void {
  const embed = font.embed.bind(font);
  replace(font, {
    embed() {
      const { ref } = pdf;
      replace(pdf, {
        ref(data) {
          pdf.ref = ref;
          const packed = pdf.ref(data);
          packed.compress = false;
          packed.data.Filter = 'FlateDecode';
          return packed;
        },
      });
      embed();
    },
  });
}

/** `toUnicodeCmap`: which letters the glyphs stand for is written and packed once for all documents with the same ones. */
export function keepLetters(pdf: Pdf, font: DocumentFont, face: Face): void {
  const write = font.toUnicodeCmap.bind(font);
  replace(font, {
    toUnicodeCmap() {
      const key = font.unicode.join('|');
      let packed = face.letters.get(key);
      if (!packed) {
        packed = pdf.deflate(bytesOfLine(textOf(pdf, write)));
        face.letters.set(key, packed);
      }
      const ref = pdf.ref({});
      ref.compress = false;
      // In the order in which the library writes them.
      Object.assign(ref.data, { Length: 0, Filter: 'FlateDecode' });
      ref.write(packed);
      ref.end();
      return ref;
    },
  });
}

/** What `write` would put into the next object of the document. */
function textOf(pdf: Pdf, write: () => unknown): string {
  const { ref } = pdf;
  let text = '';
  replace(pdf, {
    ref() {
      pdf.ref = ref;
      return { end: (said: string) => (text = said) } as unknown as Ref;
    },
  });
  write();
  return text;
}

const bytesOfLine = (text: string): Uint8Array => new Bytes(text.length + 1).text(text).text('\n').done();

/** `layout`: plain text takes the short way, half of a report's time otherwise, everything else fontkit's own shaper. */
export function setPlainly(font: ParsedFont, plain: PlainSetter): void {
  const shape = font.layout.bind(font);
  font.layout = (text) => plain.layout(text) ?? shape(text);
}
