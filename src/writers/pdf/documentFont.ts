import type { Pdf, Ref } from './document.ts';
import type { Face } from './face.ts';
import { keepCuts, takePacked } from './patches.ts';

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
  keepCuts(font, face, pdf.deflate);
  takePacked(pdf, font);
  return font;
}
