import type { Face } from './face.ts';

/** What stands for a character the face has no shape for (REPLACEMENT CHARACTER, which the faces do have). */
const MISSING = '\uFFFD';

/**
 * What has no shape of its own: controls, marks that steer direction or joining, variation selectors, halves of
 * surrogate pairs. Pasted text may hold any of them. Line ends are kept.
 */
const INVISIBLE = /(?!\n)[\p{Cc}\p{Cf}\p{Variation_Selector}]/gu;

/** Most text: nothing to clean, and every face has it. */
const PLAIN = /^[ -~]*$/;

/** Text as it can be drawn: composed, one kind of line end, nothing invisible, no half of a surrogate pair. */
export function clean(text: string): string {
  if (PLAIN.test(text)) return text;
  return text
    .normalize('NFC')
    .replace(/\r\n?|\u2028|\u2029/g, '\n')
    .replace(/\t/g, ' ')
    .replace(INVISIBLE, '')
    .replace(/\p{Surrogate}/gu, MISSING);
}

/** Replaces what the face cannot show. The same string comes back when nothing was missing. */
export function drawable(text: string, face: Face): string {
  let out = '';
  let kept = 0;
  for (let i = 0; i < text.length; ) {
    const code = text.codePointAt(i)!;
    const width = code > 0xffff ? 2 : 1;
    if (code > 0x7e && !face.font.hasGlyphForCodePoint(code)) {
      out += text.slice(kept, i) + MISSING;
      kept = i + width;
    }
    i += width;
  }
  return kept === 0 ? text : out + text.slice(kept);
}
