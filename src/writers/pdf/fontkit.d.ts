/** fontkit ships no types; this is the part used here. */
declare module 'fontkit' {
  export interface ParsedFont {
    readonly postscriptName: string;
    readonly unitsPerEm: number;
    readonly 'OS/2'?: { usWeightClass?: number; fsType?: { noEmbedding?: boolean } };
    hasGlyphForCodePoint(codePoint: number): boolean;
    layout(text: string): { glyphs: readonly { id: number }[] };
    createSubset(): { includeGlyph(id: number): number; encode(): Uint8Array };
  }
  export function create(bytes: Uint8Array): ParsedFont;
}
