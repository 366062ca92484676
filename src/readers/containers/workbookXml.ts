import { find, latin1 } from '../../bytes/text.ts';

/** Bytes of a tag, a text, a section. A cell holds 32,767 characters at most (ISO/IEC 29500-1). */
const LONGEST_PIECE = 200_000;

const [LESS, MORE, EQUALS, QUOTE, APOSTROPHE] = [0x3c, 0x3e, 0x3d, 0x22, 0x27];

/**
 * Whether the XML of a workbook may be given to the library for it, which works for minutes on pieces that are long, and
 * takes as they come texts that are no XML. Only marks are looked at: how tags and quotes follow each other (XML 1.0,
 * 2.4 to 3.1), and that there is no document type (forbidden by ISO/IEC 29500-2). Linear; reads nothing twice.
 */
export function isPlainXml(bytes: Uint8Array): boolean {
  const n = bytes.length;
  let at = 0;
  while (at < n) {
    const open = bytes.indexOf(LESS, at);
    if ((open < 0 ? n : open) - at > LONGEST_PIECE) return false;
    if (open < 0) return true;
    const end = bytes[open + 1] === 0x21 ? endOfSection(bytes, open) : endOfTag(bytes, open);
    if (end < 0 || end - open > LONGEST_PIECE) return false;
    at = end;
  }
  return true;
}

/** Behind a comment or a section of plain text; -1 for anything else. */
function endOfSection(text: Uint8Array, open: number): number {
  for (const [start, close] of [
    ['<!--', '-->'],
    ['<![CDATA[', ']]>'],
  ] as const) {
    if (latin1(text, open, open + start.length) !== start) continue;
    const end = find(text, close, open + start.length);
    return end < 0 ? -1 : end + close.length;
  }
  return -1;
}

/** Behind a tag whose values all stand in quotes; -1 when it is none. */
function endOfTag(text: Uint8Array, open: number): number {
  // Within a tag, quoted or not, no other may begin.
  const next = text.indexOf(LESS, open + 1);
  const most = Math.min(next < 0 ? text.length : next, open + LONGEST_PIECE + 1);
  let value = false;
  for (let i = open + 1; i < most; i++) {
    const byte = text[i]!;
    if (byte === MORE) return value ? -1 : i + 1;
    if (byte === EQUALS) value = true;
    else if (byte === QUOTE || byte === APOSTROPHE) {
      if (!value) return -1;
      const close = text.indexOf(byte, i + 1);
      if (close < 0 || close >= most) return -1;
      i = close;
      value = false;
    } else if (value && byte > 0x20) return -1;
  }
  return -1;
}
