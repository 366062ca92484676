import type { Deflate } from '../../bytes/pack.ts';
import type { Script } from './scripts.ts';

/** The two faces of a report as font files (TrueType). */
export interface PdfFonts {
  regular: Uint8Array;
  semibold: Uint8Array;
  /** Asked only for characters the two do not have; undefined where there is no face for a script. */
  more?: (script: Script, strong: boolean) => Uint8Array | undefined;
}

/** Faces cut down to the usual glyphs, and packed. */
export interface Cuts {
  regular?: Uint8Array | undefined;
  semibold?: Uint8Array | undefined;
}

/** A file that travels inside the document, as data the document was made from. */
export interface Attachment {
  name: string;
  bytes: Uint8Array;
  /** Media type. */
  type: string;
  description: string;
}

export interface PdfInfo {
  /** Version of this program, for the file's own description. */
  version: string;
  /** Black ink only, bands told apart by hatch. */
  grey?: boolean;
  attachment?: Attachment | undefined;
  /** Locks the file. A locked file holds chance, so it differs from run to run. */
  password?: string | undefined;
  /** Packs pages and faces; what an engine has of its own is faster. */
  deflate?: Deflate | undefined;
  /** The two faces as `usualCut` gives them with the same `deflate`, where that has been done before. */
  cuts?: Cuts | undefined;
}
