/** Shorter texts are put together letter by letter, which costs less than a decoder's start. */
const SHORT = 24;
/** Arguments of one call, well below what any engine takes. */
const PIECE = 8192;

// A mark at the start is part of the text here; whoever reads a file cuts it off.
const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
const encoder = new TextEncoder();

export type ByteText = 'utf8' | 'latin1';

/** Bytes as UTF-8, with U+FFFD for what is none. */
export function utf8(bytes: Uint8Array, from = 0, to = bytes.length): string {
  if (to - from <= SHORT) {
    let text = '';
    let i = from;
    for (; i < to && bytes[i]! < 0x80; i++) text += String.fromCharCode(bytes[i]!);
    if (i >= to) return text;
  }
  return decoder.decode(bytes.subarray(from, to));
}

/** Each byte as the letter of its number (ISO/IEC 8859-1 with its control characters): nothing is lost, nothing refused. */
export function latin1(bytes: Uint8Array, from = 0, to = bytes.length): string {
  const end = Math.min(to, bytes.length);
  const pieces: string[] = [];
  for (let i = from; i < end; i += PIECE) {
    // Spread would walk the bytes one by one, which costs seven times as much.
    const piece = bytes.subarray(i, Math.min(end, i + PIECE)) as ArrayLike<number> as number[];
    pieces.push(String.fromCharCode.apply(null, piece));
  }
  return pieces.join('');
}

export function textOf(bytes: Uint8Array, encoding: ByteText, from = 0, to = bytes.length): string {
  return encoding === 'utf8' ? utf8(bytes, from, to) : latin1(bytes, from, to);
}

export function bytesOf(text: string): Uint8Array {
  return encoder.encode(text);
}

/** Whether the bytes are UTF-8 (RFC 3629): no stray, missing or needless byte, no half of a pair, nothing over U+10FFFF. */
export function isUtf8(bytes: Uint8Array): boolean {
  const n = bytes.length;
  for (let i = 0; i < n; ) {
    const lead = bytes[i++]!;
    if (lead < 0x80) continue;
    if (lead < 0xc2 || lead > 0xf4) return false;
    const second = bytes[i++];
    const least = lead === 0xe0 ? 0xa0 : lead === 0xf0 ? 0x90 : 0x80;
    const most = lead === 0xed ? 0x9f : lead === 0xf4 ? 0x8f : 0xbf;
    if (second === undefined || second < least || second > most) return false;
    for (let more = lead < 0xe0 ? 0 : lead < 0xf0 ? 1 : 2; more > 0; more--) {
      const next = bytes[i++];
      if (next === undefined || next >> 6 !== 2) return false;
    }
  }
  return true;
}

/** Where a text's bytes stand first at or behind `from`; -1 when nowhere. */
export function find(bytes: Uint8Array, text: string, from = 0): number {
  const wanted = encoder.encode(text);
  // Looked for by its second byte: what begins a text, a quote or a bracket, is met everywhere.
  const by = wanted.length > 1 ? 1 : 0;
  for (let at = bytes.indexOf(wanted[by]!, from + by); at >= 0; at = bytes.indexOf(wanted[by]!, at + 1)) {
    let k = 0;
    while (k < wanted.length && bytes[at - by + k] === wanted[k]) k++;
    if (k === wanted.length) return at - by;
  }
  return -1;
}

/** Text that grows as bytes, without ever being one string. */
export function growingText(): { add(text: string): void; addBytes(bytes: Uint8Array): void; bytes(): Uint8Array } {
  let buffer = new Uint8Array(65_536);
  let length = 0;
  const grow = (most: number): void => {
    if (most <= buffer.length) return;
    const larger = new Uint8Array(most * 2);
    larger.set(buffer.subarray(0, length));
    buffer = larger;
  };
  return {
    add(text) {
      // A UTF-16 unit takes three bytes at most.
      grow(length + text.length * 3);
      length += encoder.encodeInto(text, buffer.subarray(length)).written;
    },
    addBytes(bytes) {
      grow(length + bytes.length);
      buffer.set(bytes, length);
      length += bytes.length;
    },
    bytes: () => buffer.subarray(0, length),
  };
}
