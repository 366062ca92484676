import { create, type ParsedFont } from 'fontkit';
import { plainLayout } from './plainLayout.ts';
import type { Script } from './scripts.ts';

/** The two faces of a report as font files (TrueType). */
export interface PdfFonts {
  regular: Uint8Array;
  semibold: Uint8Array;
  /** Asked only for characters the two do not have; undefined where there is no face for a script. */
  more?: (script: Script, strong: boolean) => Uint8Array | undefined;
}

/** A parsed font with what is worth keeping between documents. */
export interface Face {
  font: ParsedFont;
  /** pdfkit's word layouts. */
  layouts: Record<string, unknown>;
  /** Advance of a word, in thousandths of the size. */
  widths: Map<string, number>;
  /** Glyph codes of words that need only the usual glyphs. */
  codes: Map<string, string>;
  /** The font cut down to a list of glyphs, by that list. */
  files: Map<string, Uint8Array>;
  uses: number;
}

/** Parsing costs 20 ms and more, so each file is parsed once per process. */
const faces = new WeakMap<Uint8Array, Face>();

/** Words are kept for this many documents, so that free text cannot fill the memory of a long run. */
const DOCUMENTS_PER_CACHE = 200;

export function openFace(bytes: Uint8Array): Face {
  let face = faces.get(bytes);
  if (!face) {
    face = {
      font: openFont(bytes),
      layouts: Object.create(null),
      widths: new Map(),
      codes: new Map(),
      files: new Map(),
      uses: 0,
    };
    faces.set(bytes, face);
  }
  if (++face.uses % DOCUMENTS_PER_CACHE === 0) {
    face.layouts = Object.create(null);
    face.widths = new Map();
    face.codes = new Map();
    face.files = new Map();
  }
  return face;
}

/** Plain text takes the short way, everything else fontkit's own shaper. */
function openFont(bytes: Uint8Array): ParsedFont {
  const font = create(bytes);
  const plain = plainLayout(font, bytes);
  if (plain) {
    const shape = font.layout.bind(font);
    font.layout = (text) => plain(text) ?? shape(text);
  }
  return font;
}
