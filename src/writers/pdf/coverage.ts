import type { ParsedFont } from 'fontkit';
import { openFace } from './face.ts';
import type { PdfFonts } from './info.ts';
import { type Script, scriptOf } from './scripts.ts';

/** A letter of each script that a face of it surely has. */
const LETTERS: readonly (readonly [Script, string])[] = [
  ['chinese', '的あ'],
  ['korean', '가'],
  ['devanagari', 'क'],
  ['bengali', 'ক'],
  ['tamil', 'க'],
  ['thai', 'ก'],
];
/** Letters that none of the faces of a report has, of scripts without a face of their own. */
const OTHERS = 'עبაԱ';

/** A face that somebody brought: the scripts it has letters of, and whether it is a bold one. */
export interface BroughtFace {
  bytes: Uint8Array;
  scripts: readonly Script[];
  strong: boolean;
}

/** @throws Error where the bytes are no face (TrueType or OpenType), or one whose licence lets nobody put it into a document. */
export function openBroughtFace(bytes: Uint8Array): BroughtFace {
  const { font } = openFace(bytes);
  const has = (letter: string): boolean => font.hasGlyphForCodePoint(letter.codePointAt(0)!);
  const { usWeightClass = 400, fsType } = font['OS/2'] ?? {};
  if (fsType?.noEmbedding) throw new Error('this face may not be put into a document');
  const own = LETTERS.filter(([, letters]) => [...letters].some(has)).map(([script]) => script);
  const broad = own.length === 0 || [...OTHERS].some(has);
  return { bytes, scripts: broad ? [...own, 'other'] : own, strong: usWeightClass >= 600 };
}

/** The faces that somebody brought, by script; of two for the same the later. Where there is no bold one the plain one stands in, and the other way round. */
export function broughtFaces(brought: readonly BroughtFace[]): NonNullable<PdfFonts['more']> {
  const find = (script: Script, strong: boolean): Uint8Array | undefined =>
    brought.findLast((one) => one.strong === strong && one.scripts.includes(script))?.bytes;
  return (script, strong) => find(script, strong) ?? find(script, !strong);
}

/** Letters of a text that would stand as a mark on paper, as no face has them; each once, in order. */
export function lettersWithout(text: string, { regular, more }: PdfFonts): string[] {
  // Latin letters are in the faces of a report.
  const letters = new Set(text.match(/(?=[\u0250-\u{10ffff}])\p{L}/gu));
  if (letters.size === 0) return [];
  const opened = new Map<Uint8Array, ParsedFont>();
  const has = (bytes: Uint8Array | undefined, code: number): boolean => {
    if (bytes === undefined) return false;
    const font = opened.get(bytes) ?? openFace(bytes).font;
    opened.set(bytes, font);
    return font.hasGlyphForCodePoint(code);
  };
  return [...letters].filter((letter) => {
    const code = letter.codePointAt(0)!;
    return !(has(regular, code) || has(more?.(scriptOf(code), false), code) || has(more?.('other', false), code));
  });
}
