import { type Deflate, deflate } from '../../bytes/pack.ts';
import type { Pdf, Ref } from './document.ts';
import { type Face, openFace } from './face.ts';
import { keepCuts, keepLetters, takePacked } from './patches.ts';

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
  subset: { glyphs: number[]; mapping: Record<number, number>; encode(): Uint8Array };
  /** By number in the subset: thousandths of the size, and the code points a reader of the file is told. */
  widths: number[];
  unicode: number[][];
  ref(): Ref;
  /** Puts the font's file and what describes it into the document. */
  embed(): void;
  /** Writes which letters the glyphs stand for. */
  toUnicodeCmap(): Ref;
  /** With a list of features, even an empty one, the text is laid out at once instead of word by word. */
  encode(text: string, features: []): [hex: string[], positions: Position[]];
}

/** What nearly every report uses. Taken into each subset first and in this order, so that subsets can be kept. */
const USUAL =
  ' ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:;!?()[]/+-=%&*#@"\'<>_–—−·•…×±≤≥→’“”°\u00A0\u202F fi fl';

/**
 * Adds a face to a document, sharing cut-down font files with earlier documents. A face that only
 * helps out is not given the usual glyphs. `cut` is the face with these alone, where it was cut before.
 */
export function useFace(pdf: Pdf, face: Face, usual: boolean, cut?: Uint8Array): DocumentFont {
  pdf.font(face.font);
  const font = pdf._font;
  if (!font?.subset?.glyphs) throw new Error('pdfkit keeps its fonts in another way than expected');
  if (usual) takeUsual(font, face);
  keepCuts(font, face, pdf.deflate, usual && cut ? { key: font.subset.glyphs.join(), file: cut } : undefined);
  takePacked(pdf, font);
  // The library packs by the engine's own means: what is kept must be packed by the same.
  if (pdf.deflate !== deflate) keepLetters(pdf, font, face);
  return font;
}

/** The usual glyphs are the same in every document: laid out for the first, copied for the others. */
function takeUsual(font: DocumentFont, face: Face): void {
  if (face.usual) {
    const { glyphs, mapping, widths, unicode } = face.usual;
    Object.assign(font.subset, { glyphs: [...glyphs], mapping: { ...mapping } });
    Object.assign(font, { widths: [...widths], unicode: [...unicode] });
    return;
  }
  font.encode(USUAL, []);
  const { glyphs, mapping } = font.subset;
  face.usual = {
    glyphs: [...glyphs],
    mapping: { ...mapping },
    widths: [...font.widths],
    unicode: [...font.unicode],
  };
}

/** A face cut down to the usual glyphs, as most reports take it into the file, packed. */
export function usualCut(bytes: Uint8Array, deflate: Deflate): Uint8Array {
  const { font } = openFace(bytes);
  const subset = font.createSubset();
  for (const { id } of font.layout(USUAL).glyphs) subset.includeGlyph(id);
  return deflate(subset.encode());
}
