import type { Bytes } from './bytes.ts';
import { type DocumentFont, type Pdf, useFace } from './document.ts';
import type { Face } from './face.ts';
import { clean, drawable } from './words.ts';

/** A face within one document: measures text and turns it into glyph codes. */
export interface Typeface {
  id: string;
  font: DocumentFont;
  /** Points. */
  width(text: string, size: number): number;
  /** Writes the inside of a TJ array. */
  encode(text: string, out: Bytes): void;
  /** Cleaned text in characters the face has. */
  readable(text: string): string;
}

/** Goes through words, each with the space after it; pdfkit keeps layouts by the same pieces. */
function eachPiece(text: string, visit: (piece: string) => void): void {
  for (let from = 0; from < text.length; ) {
    const space = text.indexOf(' ', from);
    const to = space < 0 ? text.length : space + 1;
    visit(from === 0 && to === text.length ? text : text.slice(from, to));
    from = to;
  }
}

export function openTypeface(pdf: Pdf, face: Face): Typeface {
  const font = useFace(pdf, face);
  const usual = font.subset.glyphs.length;
  const { widths } = face;
  const codes = new Map<string, string>();

  const pieceWidth = (piece: string): number => {
    let width = widths.get(piece);
    if (width === undefined) {
      width = font.widthOfString(piece, 1000);
      widths.set(piece, width);
    }
    return width;
  };
  const pieceCode = (piece: string): string => {
    let code = face.codes.get(piece) ?? codes.get(piece);
    if (code === undefined) {
      const run = glyphRun(font, piece);
      code = run.code;
      // The usual glyphs have the same numbers in every document.
      (run.highest < usual ? face.codes : codes).set(piece, code);
    }
    return code;
  };

  return {
    id: font.id,
    font,
    width(text, size) {
      let sum = 0;
      eachPiece(text, (piece) => {
        sum += pieceWidth(piece);
      });
      return (sum * size) / 1000;
    },
    encode(text, out) {
      eachPiece(text, (piece) => out.text(pieceCode(piece)));
    },
    readable: (text) => drawable(clean(text), face),
  };
}

/** Glyph codes with their kerning, as TJ wants them: `<00010002> 12 <0003>`; and the highest code. */
function glyphRun(font: DocumentFont, piece: string): { code: string; highest: number } {
  const [hex, positions] = font.encode(piece);
  let code = '';
  let open = '';
  let highest = 0;
  const adjust = (by: number): void => {
    if (open) code += `<${open}>`;
    open = '';
    code += ` ${Math.round(by * 100) / 100} `;
  };
  for (let i = 0; i < hex.length; i++) {
    const { xAdvance, advanceWidth, xOffset } = positions[i]!;
    if (xOffset) adjust(-xOffset);
    open += hex[i];
    highest = Math.max(highest, Number.parseInt(hex[i]!, 16));
    const kern = xAdvance - advanceWidth - xOffset;
    if (kern) adjust(-kern);
  }
  return { code: open ? `${code}<${open}>` : code, highest };
}
