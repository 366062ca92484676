/** Writing systems that need a face of their own. `other` is all that a broad face may have: Hebrew, Arabic, signs. */
export type Script = 'chinese' | 'korean' | 'devanagari' | 'bengali' | 'tamil' | 'thai' | 'other';

/** Blocks of the Unicode standard, first and last code point. Chinese characters and kana share one face. */
const BLOCKS: readonly [from: number, to: number, script: Script][] = [
  [0x0900, 0x097f, 'devanagari'],
  [0x0980, 0x09ff, 'bengali'],
  [0x0b80, 0x0bff, 'tamil'],
  [0x0e00, 0x0e7f, 'thai'],
  [0x1100, 0x11ff, 'korean'],
  [0x2e80, 0x312f, 'chinese'],
  [0x3130, 0x318f, 'korean'],
  [0x3190, 0x9fff, 'chinese'],
  [0xa8e0, 0xa8ff, 'devanagari'],
  [0xa960, 0xa97f, 'korean'],
  [0xac00, 0xd7ff, 'korean'],
  [0xf900, 0xfaff, 'chinese'],
  [0xfe30, 0xfe4f, 'chinese'],
  [0xff00, 0xffef, 'chinese'],
  [0x20000, 0x3ffff, 'chinese'],
];

export function scriptOf(code: number): Script {
  for (const [from, to, script] of BLOCKS) if (code >= from && code <= to) return script;
  return 'other';
}

/** Letters written from right to left: Hebrew, Arabic and their neighbours. */
export const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** Scripts whose signs change place or join, so that the glyphs do not follow the order of the text. */
export const REORDERED = /[\u0900-\u0dff\u0e00-\u0eff]/;

/** Marks that steer direction; nothing of them is drawn. */
export const STEERS = /[\u200e\u200f\u2066-\u2069]/;
export const STEERING = new RegExp(STEERS, 'g');
