import type { Bytes } from './bytes.ts';
import type { Pdf } from './document.ts';
import { type DocumentFont, useFace } from './documentFont.ts';
import { type Face, openFace } from './face.ts';
import type { Cuts, PdfFonts } from './info.ts';
import { type Holder, mixedRuns, type Run } from './mixed.ts';
import { type Script, scriptOf } from './scripts.ts';
import { clean, drawable } from './words.ts';

/** A face within one document: measures text and turns it into glyph codes. Other faces help out where it lacks some. */
export interface Typeface {
  font: DocumentFont;
  /** Points. */
  width(text: string, size: number): number;
  /** Writes the inside of a TJ array; for text that `runs` gives null for. */
  encode(text: string, out: Bytes): void;
  /** A line of other than plain text in its runs, in the order in which they are read. */
  runs(line: string): Run[] | null;
  /** Cleaned text in characters the faces have. */
  readable(text: string): string;
}

/** Goes through words, each with the space after it. */
function eachPiece(text: string, visit: (piece: string) => void): void {
  for (let from = 0; from < text.length; ) {
    const space = text.indexOf(' ', from);
    const to = space < 0 ? text.length : space + 1;
    visit(from === 0 && to === text.length ? text : text.slice(from, to));
    from = to;
  }
}

/** `base` is the direction of paragraphs. */
export function openTypeface(
  pdf: Pdf,
  fonts: PdfFonts,
  weight: 'regular' | 'semibold',
  base: 'ltr' | 'rtl',
  cuts: Cuts = {},
): Typeface {
  const face = openFace(fonts[weight]);
  const font = useFace(pdf, face, true, cuts[weight]);
  const usual = font.subset.glyphs.length;
  const plain = base === 'ltr' ? face.plain : null;
  const codes = new Map<string, string>();
  const holderOf = holders(pdf, fonts, weight, { font, has: (code) => face.font.hasGlyphForCodePoint(code) });
  const lines = new Map<string, Run[]>();

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
  const runsOf = (line: string): Run[] => {
    let known = lines.get(line);
    if (!known) {
      known = mixedRuns(line, base, holderOf);
      lines.set(line, known);
    }
    return known;
  };

  return {
    font,
    runs: (line) => (plain && plain.width(line) !== null ? null : runsOf(line)),
    width(text, size) {
      const thousandths = plain?.width(text) ?? runsOf(text).reduce((sum, { width }) => sum + width, 0);
      return (thousandths * size) / 1000;
    },
    encode(text, out) {
      eachPiece(text, (piece) => out.text(pieceCode(piece)));
    },
    readable: (text) =>
      plain && plain.width(text) !== null ? text : drawable(clean(text), (code) => holderOf(code).has(code)),
  };
}

/** The face for a character: the report's own, else that of the script, else a broad one, else the own one again. */
function holders(pdf: Pdf, fonts: PdfFonts, weight: 'regular' | 'semibold', own: Holder): (code: number) => Holder {
  const opened = new Map<Script, Holder | null>();
  const open = (script: Script): Holder | null => {
    let holder = opened.get(script);
    if (holder === undefined) {
      const bytes = fonts.more?.(script, weight === 'semibold');
      holder = bytes ? helper(pdf, openFace(bytes)) : null;
      opened.set(script, holder);
    }
    return holder;
  };
  return (code) => {
    if (own.has(code)) return own;
    for (const script of new Set([scriptOf(code), 'other'] as const)) {
      const holder = open(script);
      if (holder?.has(code)) return holder;
    }
    return own;
  };
}

/** Put into the document when it first draws something, so that asking what a face has leaves no trace. */
function helper(pdf: Pdf, face: Face): Holder {
  let font: DocumentFont | undefined;
  return {
    has: (code) => face.font.hasGlyphForCodePoint(code),
    get font() {
      font ??= useFace(pdf, face, false);
      return font;
    },
  };
}

/** Glyph codes with their kerning, as TJ wants them: `<00010002> 12 <0003>`; and the highest code. */
function glyphRun(font: DocumentFont, piece: string): { code: string; highest: number } {
  const [hex, positions] = font.encode(piece, []);
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
