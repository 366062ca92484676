import { type DocumentFont, type Pdf, useFace } from './document.ts';
import type { Face } from './face.ts';
import { clean, drawable } from './words.ts';

/** A face within one document: measures text and turns it into glyph codes. */
export interface Typeface {
  id: string;
  font: DocumentFont;
  /** Points. */
  width(text: string, size: number): number;
  /** The inside of a TJ array. */
  encode(text: string): string;
  /** Cleaned text in characters the face has. */
  readable(text: string): string;
}

/** A word with the space after it; pdfkit keeps layouts by the same pieces. */
const PIECES = /[^ ]* |[^ ]+/g;

export function openTypeface(pdf: Pdf, face: Face): Typeface {
  const font = useFace(pdf, face);
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
    let code = codes.get(piece);
    if (code === undefined) {
      code = glyphRun(font, piece);
      codes.set(piece, code);
    }
    return code;
  };

  return {
    id: font.id,
    font,
    width(text, size) {
      let sum = 0;
      for (const piece of text.match(PIECES) ?? []) sum += pieceWidth(piece);
      return (sum * size) / 1000;
    },
    encode(text) {
      let run = '';
      for (const piece of text.match(PIECES) ?? []) run += pieceCode(piece);
      return run;
    },
    readable: (text) => drawable(clean(text), face),
  };
}

/** Glyph codes with their kerning, as TJ wants them: `<00010002> 12 <0003>`. */
function glyphRun(font: DocumentFont, piece: string): string {
  const [hex, positions] = font.encode(piece);
  let run = '';
  let open = '';
  const adjust = (by: number): void => {
    if (open) run += `<${open}>`;
    open = '';
    run += ` ${Math.round(by * 100) / 100} `;
  };
  for (let i = 0; i < hex.length; i++) {
    const { xAdvance, advanceWidth, xOffset } = positions[i]!;
    if (xOffset) adjust(-xOffset);
    open += hex[i];
    const kern = xAdvance - advanceWidth - xOffset;
    if (kern) adjust(-kern);
  }
  return open ? `${run}<${open}>` : run;
}
