import { pairKerning } from './kerning.ts';
import { coverageIndex, glyphsByCode, type Lookup, latinLookups, tableAt } from './openType.ts';

/** Glyphs of a run of text, as pdfkit takes them from fontkit. Positions in font units; pdfkit scales them in place. */
export interface Run {
  glyphs: { id: number; advanceWidth: number; codePoints: number[] }[];
  positions: { xAdvance: number; yAdvance: number; xOffset: number; yOffset: number }[];
  readonly advanceWidth: number;
}

/** Plain text in one font. Both give null for text that is not plain, or that the font does not have. */
export interface PlainSetter {
  /** Thousandths of the size, each word with the space after it set for itself. */
  width(text: string): number | null;
  layout(text: string): Run | null;
}

/**
 * Latin letters, digits, punctuation and signs: one glyph a character, in order, nothing stacked or joined, nothing
 * unseen, and each in the one form in which text is composed.
 */
export const PLAIN =
  /^[ -~\u00a0-\u00ac\u00ae-\u017f\u2010-\u2015\u2018-\u201a\u201c-\u201e\u2020-\u2022\u2026\u202f\u2030\u2039\u203a\u20ac\u2122\u2190-\u2193\u2212\u2260\u2264\u2265]*$/;
const CODES = 0x2266;

/** Features of Latin text a full shaper would apply besides kerning and ligatures; a font with one is left to it. */
const BEYOND = ['rlig', 'clig', 'calt', 'rclt'];

/** Of the plain characters and their ligatures there are fewer than this. */
const SLOTS = 512;
const SPACE = 32;

/** In the table of pairs, numbers from here on are kerning about KERNED, those below are ligatures. */
const KERNED_FROM = SLOTS + 1;
const KERNED = 16_384;

/**
 * Sets plain text with its kerning and ligatures, straight from the font's tables. A full shaper takes half a second
 * to warm up, more than all the rest of a report. Null for a font that needs one.
 */
export function plainSetter(bytes: Uint8Array): PlainSetter | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [gsub, gpos, hhea, hmtx, head] = ['GSUB', 'GPOS', 'hhea', 'hmtx', 'head'].map((tag) => tableAt(view, tag));
  const glyphOf = glyphsByCode(view);
  if (hhea === undefined || hmtx === undefined || head === undefined || !glyphOf) return null;
  const substitutions = gsub === undefined ? new Map<string, Lookup[]>() : latinLookups(view, gsub, 7);
  const positionings = gpos === undefined ? new Map<string, Lookup[]>() : latinLookups(view, gpos, 9);
  if (BEYOND.some((tag) => substitutions.has(tag))) return null;
  const ligature = pairLigatures(view, substitutions.get('liga') ?? []);
  const kern = pairKerning(view, positionings.get('kern') ?? []);
  if (!ligature || !kern) return null;

  const metrics = view.getUint16(hhea + 34);
  const scale = 1000 / view.getUint16(head + 18);
  const glyphs: Run['glyphs'] = [];
  // By slot, which numbers the glyphs met so far: what the loop over every letter of a report needs, in flat tables.
  const ofCode = new Int16Array(CODES).fill(-1);
  const advances = new Int32Array(SLOTS);
  const afterPair = new Int16Array(SLOTS * SLOTS);
  const slots = new Map<number, number>();

  const slotOf = (id: number, codePoints: number[]): number => {
    let slot = slots.get(id);
    if (slot === undefined) {
      slot = glyphs.length;
      slots.set(id, slot);
      advances[slot] = view.getUint16(hmtx + Math.min(id, metrics - 1) * 4);
      glyphs.push({ id, advanceWidth: advances[slot]!, codePoints });
    }
    return slot;
  };
  /** Its slot, or -1. */
  const slotOfCode = (code: number): number => {
    if (code >= CODES) return -1;
    const known = ofCode[code]!;
    if (known >= 0) return known;
    const id = PLAIN.test(String.fromCharCode(code)) ? glyphOf(code) : 0;
    if (id === 0) return -1;
    ofCode[code] = slotOf(id, [code]);
    return ofCode[code]!;
  };
  /** What two glyphs do to one another: 0 not yet asked, 1 + the slot of what both become, or KERNED + kerning. */
  const pair = (left: number, right: number): number => {
    const at = left * SLOTS + right;
    if (afterPair[at] !== 0) return afterPair[at]!;
    const [first, second] = [glyphs[left]!, glyphs[right]!];
    const joined = ligature(first.id, second.id);
    if (joined === undefined) afterPair[at] = KERNED + kern(first.id, second.id);
    else afterPair[at] = 1 + slotOf(joined, [...first.codePoints, ...second.codePoints]);
    return afterPair[at]!;
  };

  const layout = (text: string): Run | null => {
    const run: number[] = [];
    for (let i = 0; i < text.length; i++) {
      const slot = slotOfCode(text.charCodeAt(i));
      if (slot < 0) return null;
      const met = run.length > 0 ? pair(run.at(-1)!, slot) : KERNED;
      if (met < KERNED_FROM) run[run.length - 1] = met - 1;
      else run.push(slot);
    }
    const positions = run.map((slot, i) => ({
      xAdvance: advances[slot]! + (i + 1 < run.length ? kern(glyphs[slot]!.id, glyphs[run[i + 1]!]!.id) : 0),
      yAdvance: 0,
      xOffset: 0,
      yOffset: 0,
    }));
    return {
      glyphs: run.map((slot) => glyphs[slot]!),
      positions,
      get advanceWidth() {
        return positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0);
      },
    };
  };

  return {
    width(text) {
      let sum = 0;
      // The glyph before this one in its word, the one before that, and the kerning between these two.
      let [before, prior, kerned] = [-1, -1, 0];
      for (let i = 0; i < text.length; i++) {
        const code = text.charCodeAt(i);
        let slot = slotOfCode(code);
        if (slot < 0) return null;
        if (before >= 0) {
          const met = pair(before, slot);
          if (met < KERNED_FROM) {
            sum -= advances[before]! + (prior < 0 ? 0 : kerned);
            slot = met - 1;
            kerned = prior < 0 ? 0 : kern(glyphs[prior]!.id, glyphs[slot]!.id);
          } else {
            prior = before;
            kerned = met - KERNED;
          }
          sum += kerned;
        }
        sum += advances[slot]!;
        before = slot;
        if (code === SPACE) before = prior = -1;
      }
      return sum * scale;
    },
    layout,
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
