import { create, type ParsedFont } from 'fontkit';
import type { Deflate } from '../../bytes/pack.ts';
import type { DocumentFont } from './documentFont.ts';
import { setPlainly } from './patches.ts';
import { type PlainSetter, plainSetter } from './plainSetter.ts';

/** A parsed font with what is worth keeping between documents. */
export interface Face {
  font: ParsedFont;
  plain: PlainSetter | null;
  /** Glyph codes of words that need only the usual glyphs. */
  codes: Map<string, string>;
  /** The font cut down to a list of glyphs, and deflated, by that list. */
  files: Map<string, Uint8Array>;
  /** What tells their letters, packed, by these letters. */
  letters: Map<string, Uint8Array>;
  /** A document's font when it has taken the usual glyphs and no others. */
  usual?: Pick<DocumentFont, 'widths' | 'unicode'> & Pick<DocumentFont['subset'], 'glyphs' | 'mapping'>;
  /** What packed them. */
  packer?: Deflate;
  uses: number;
}

/** Parsing costs 20 ms and more, so each file is parsed once per program. */
const faces = new WeakMap<Uint8Array, Face>();

/** Words are kept for this many documents, so that free text cannot fill the memory of a long run. */
const DOCUMENTS_PER_CACHE = 200;

export function openFace(bytes: Uint8Array): Face {
  let face = faces.get(bytes);
  if (!face) {
    face = { ...openFont(bytes), codes: new Map(), files: new Map(), letters: new Map(), uses: 0 };
    faces.set(bytes, face);
  }
  if (++face.uses % DOCUMENTS_PER_CACHE === 0) {
    face.codes = new Map();
    face.files = new Map();
    face.letters = new Map();
  }
  return face;
}

function openFont(bytes: Uint8Array): Pick<Face, 'font' | 'plain'> {
  const font = create(bytes);
  const plain = plainSetter(bytes);
  if (plain) setPlainly(font, plain);
  return { font, plain };
}
