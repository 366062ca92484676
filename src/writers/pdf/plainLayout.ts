import type { ParsedFont } from 'fontkit';
import { pairKerning } from './kerning.ts';
import { coverageIndex, type Lookup, latinLookups, tableAt } from './openType.ts';

/** Glyphs of a run of text, as pdfkit takes them from fontkit. Positions in font units; pdfkit scales them in place. */
export interface Run {
  glyphs: { id: number; advanceWidth: number; codePoints: number[] }[];
  positions: { xAdvance: number; yAdvance: number; xOffset: number; yOffset: number }[];
  readonly advanceWidth: number;
}

/** Latin letters, digits, punctuation and signs: one glyph a character, in order, nothing stacked or joined. */
export const PLAIN =
  /^[ -~\u00a0-\u017f\u2010-\u2015\u2018-\u201a\u201c-\u201e\u2020-\u2022\u2026\u202f\u2030\u2039\u203a\u20ac\u2122\u2190-\u2193\u2212\u2260\u2264\u2265]*$/;

/** Features of Latin text a full shaper would apply besides kerning and ligatures; a font with one is left to it. */
const BEYOND = ['rlig', 'clig', 'calt', 'rclt'];

/**
 * Sets plain text with its kerning and ligatures, straight from the font's tables. A full shaper takes half a second
 * to warm up, more than all the rest of a report. Null for a font that needs one; the layout gives null for such text.
 */
export function plainLayout(font: ParsedFont, bytes: Uint8Array): ((text: string) => Run | null) | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [gsub, gpos, hhea, hmtx] = ['GSUB', 'GPOS', 'hhea', 'hmtx'].map((tag) => tableAt(view, tag));
  if (hhea === undefined || hmtx === undefined) return null;
  const substitutions = gsub === undefined ? new Map<string, Lookup[]>() : latinLookups(view, gsub, 7);
  const positionings = gpos === undefined ? new Map<string, Lookup[]>() : latinLookups(view, gpos, 9);
  if (BEYOND.some((tag) => substitutions.has(tag))) return null;
  const ligature = pairLigatures(view, substitutions.get('liga') ?? []);
  const kern = pairKerning(view, positionings.get('kern') ?? []);
  if (!ligature || !kern) return null;

  const metrics = view.getUint16(hhea + 34);
  const glyphs = new Map<number, Run['glyphs'][number]>();
  const glyphOf = (id: number, codePoints: number[]) => {
    let glyph = glyphs.get(id);
    if (!glyph) {
      glyph = { id, advanceWidth: view.getUint16(hmtx + Math.min(id, metrics - 1) * 4), codePoints };
      glyphs.set(id, glyph);
    }
    return glyph;
  };

  return (text) => {
    if (!PLAIN.test(text)) return null;
    const run: Run['glyphs'] = [];
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      const glyph = glyphOf(font.glyphForCodePoint(code).id, [code]);
      const before = run.at(-1);
      const joined = before && ligature(before.id, glyph.id);
      if (joined === undefined) run.push(glyph);
      else run[run.length - 1] = glyphOf(joined, [...before!.codePoints, code]);
    }
    const positions = run.map((glyph, i) => ({
      xAdvance: glyph.advanceWidth + (i + 1 < run.length ? kern(glyph.id, run[i + 1]!.id) : 0),
      yAdvance: 0,
      xOffset: 0,
      yOffset: 0,
    }));
    return {
      glyphs: run,
      positions,
      get advanceWidth() {
        return positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0);
      },
    };
  };
}

const LIGATURES = 4;

/** Two glyphs that become one (GSUB lookup type 4). Null when the font has ligatures of more than two letters. */
function pairLigatures(
  view: DataView,
  lookups: Lookup[],
): ((left: number, right: number) => number | undefined) | null {
  const sets: { coverage: number; at: number }[] = [];
  for (const { type, subtables } of lookups) {
    if (type !== LIGATURES) return null;
    for (const at of subtables) {
      sets.push({ coverage: at + view.getUint16(at + 2), at });
      for (let i = 0; i < view.getUint16(at + 4); i++) {
        const set = at + view.getUint16(at + 6 + i * 2);
        for (let j = 0; j < view.getUint16(set); j++) {
          if (view.getUint16(set + view.getUint16(set + 2 + j * 2) + 2) !== 2) return null;
        }
      }
    }
  }
  return (left, right) => {
    for (const { coverage, at } of sets) {
      const covered = coverageIndex(view, coverage, left);
      if (covered < 0) continue;
      const set = at + view.getUint16(at + 6 + covered * 2);
      for (let j = 0; j < view.getUint16(set); j++) {
        const ligature = set + view.getUint16(set + 2 + j * 2);
        if (view.getUint16(ligature + 4) === right) return view.getUint16(ligature);
      }
    }
    return undefined;
  };
}
