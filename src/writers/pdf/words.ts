import { REORDERED, RIGHT_TO_LEFT } from './scripts.ts';

/** Joiners and marks of direction: no face need have them. */
const UNSEEN = /[\u200c-\u200f\u2066-\u2069]/;

/** What stands for a character the face has no shape for (REPLACEMENT CHARACTER, which the faces do have). */
const MISSING = '\uFFFD';

/**
 * What has no shape of its own: controls, marks that steer direction or joining, variation selectors, halves of
 * surrogate pairs. Pasted text may hold any of them. Line ends are kept.
 */
const INVISIBLE = /(?!\n)[\p{Cc}\p{Cf}\p{Variation_Selector}]/gu;

/** The same, save what text in scripts that join or run both ways needs: joiners, and isolates and marks of direction. */
const NEEDLESS = /(?![\n\u200c-\u200f\u2066-\u2069])[\p{Cc}\p{Cf}\p{Variation_Selector}]/gu;

/** Nothing to clean, and every face has it. */
const BASIC = /^[ -~]*$/;

/** Text as it can be drawn: composed, one kind of line end, nothing invisible, no half of a surrogate pair. */
export function clean(text: string): string {
  if (BASIC.test(text)) return text;
  const steered = RIGHT_TO_LEFT.test(text) || REORDERED.test(text);
  return text
    .normalize('NFC')
    .replace(/\r\n?|\u2028|\u2029/g, '\n')
    .replace(/\t/g, ' ')
    .replace(steered ? NEEDLESS : INVISIBLE, '')
    .replace(/\p{Surrogate}/gu, MISSING);
}

/** Replaces what no face can show. The same string comes back when nothing was missing. */
export function drawable(text: string, has: (code: number) => boolean): string {
  let out = '';
  let kept = 0;
  for (let i = 0; i < text.length; ) {
    const code = text.codePointAt(i)!;
    const width = code > 0xffff ? 2 : 1;
    if (code > 0x7e && !UNSEEN.test(text[i]!) && !has(code)) {
      out += text.slice(kept, i) + MISSING;
      kept = i + width;
    }
    i += width;
  }
  return kept === 0 ? text : out + text.slice(kept);
}

/** UTF-16 as hexadecimal digits, high byte first. */
export function utf16(text: string): string {
  let digits = '';
  for (let i = 0; i < text.length; i++) digits += text.charCodeAt(i).toString(16).padStart(4, '0');
  return digits;
}
