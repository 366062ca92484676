import { deflateSync } from 'node:zlib';
import type { Pdf, Ref } from './document.ts';
import type { Face } from './face.ts';

/** Of a glyph, in thousandths of the size. */
export interface Position {
  xAdvance: number;
  advanceWidth: number;
  xOffset: number;
  yOffset: number;
}

/** pdfkit's font of one document: a subset that grows as words are encoded. */
export interface DocumentFont {
  id: string;
  subset: { glyphs: number[]; encode(): Uint8Array };
  ref(): Ref;
  /** Puts the font's file and what describes it into the document. */
  embed(): void;
  /** With a list of features, even an empty one, the text is laid out at once instead of word by word. */
  encode(text: string, features: []): [hex: string[], positions: Position[]];
}

/** What nearly every report uses. Taken into each subset first and in this order, so that subsets can be kept. */
const USUAL =
  ' ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;!?()[]/+-=%&*#@"\'<>_–—−·•…×±≤≥→’“”°\u00A0\u202F fi fl';

/**
 * Adds a face to a document, sharing cut-down font files with earlier documents. A face that only
 * helps out is not given the usual glyphs.
 */
export function useFace(pdf: Pdf, face: Face, usual: boolean): DocumentFont {
  pdf.font(face.font);
  const font = pdf._font;
  if (!font?.subset?.glyphs) throw new Error('pdfkit keeps its fonts in another way than expected');
  if (usual) font.encode(USUAL, []);
  const { subset } = font;
  const encode = subset.encode.bind(subset);
  // Cutting a font down and packing it takes 6 ms; most reports use the same glyphs.
  subset.encode = () => {
    const key = subset.glyphs.join();
    let file = face.files.get(key);
    if (!file) {
      file = deflateSync(encode());
      face.files.set(key, file);
    }
    return file;
  };
  const embed = font.embed.bind(font);
  font.embed = () => {
    const { ref } = pdf;
    // The first object a font asks for takes its file, which is packed already.
    pdf.ref = (data) => {
      pdf.ref = ref;
      const packed = pdf.ref(data);
      packed.compress = false;
      packed.data.Filter = 'FlateDecode';
      return packed;
    };
    embed();
  };
  return font;
}
