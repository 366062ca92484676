import { bytesOf, isUtf8 } from '../../bytes/text.ts';
import type { Choice, ChoiceOf, TextEncoding } from '../../model/choices.ts';
import type { NotText } from '../../model/detail.ts';

export interface Decoded {
  /** UTF-8 without a byte-order mark, whatever the file was in. */
  bytes: Uint8Array;
  choice: ChoiceOf<'encoding'>;
  /** Letters beyond ASCII that a single-byte code page decided. */
  guessedLetters: number;
}

/** Signatures of common containers and pictures: told by name instead of "not text". */
const SIGNATURES: [NotText, number[]][] = [
  ['zip-archive', [0x50, 0x4b, 0x03, 0x04]],
  ['gzip-archive', [0x1f, 0x8b]],
  ['pdf-document', [0x25, 0x50, 0x44, 0x46]],
  ['picture', [0x89, 0x50, 0x4e, 0x47]],
  ['picture', [0xff, 0xd8, 0xff]],
  ['old-workbook', [0xd0, 0xcf, 0x11, 0xe0]],
];

/** Brings text to UTF-8, or says what kind of file it is instead. A byte-order mark decides first. */
export function decode(bytes: Uint8Array, wanted?: TextEncoding): Decoded | { notText: NotText } {
  for (const [name, signature] of SIGNATURES) {
    if (signature.every((byte, i) => bytes[i] === byte)) return { notText: name };
  }
  if (wanted) return convert(skipMark(bytes, wanted), wanted, 'user', 'laid-out');
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) {
    const rest = bytes.subarray(3);
    // A mark before bytes that are no UTF-8 happens when files are pasted together.
    return isUtf8(rest)
      ? convert(rest, 'utf-8', 'file', 'byte-order-mark')
      : convert(rest, 'windows-1252', 'default', 'not-utf-8');
  }
  if (bytes[0] === 0xff && bytes[1] === 0xfe) {
    if (bytes[2] === 0 && bytes[3] === 0 && bytes.length >= 4) return { notText: 'utf-32' };
    return convert(bytes.subarray(2), 'utf-16le', 'file', 'byte-order-mark');
  }
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return convert(bytes.subarray(2), 'utf-16be', 'file', 'byte-order-mark');
  const zeros = zeroPattern(bytes);
  if (zeros) return convert(bytes, zeros, 'file', 'zero-bytes');
  if (isUtf8(bytes)) return convert(bytes, 'utf-8', 'file', 'valid-utf-8');
  return convert(bytes, 'windows-1252', 'default', 'not-utf-8');
}

function skipMark(bytes: Uint8Array, encoding: TextEncoding): Uint8Array {
  if (encoding === 'utf-8' && bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return bytes.subarray(3);
  const marked = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  return marked && encoding.startsWith('utf-16') ? bytes.subarray(2) : bytes;
}

/**
 * Digits, signs and line ends in UTF-16 have a zero at every other byte, in tables of any script: many on one side and next to none
 * on the other settle it (shares ours).
 */
function zeroPattern(bytes: Uint8Array): TextEncoding | undefined {
  const n = Math.min(bytes.length, 4096);
  let even = 0;
  let odd = 0;
  for (let i = 0; i < n; i++) {
    if (bytes[i] === 0) {
      if (i & 1) odd++;
      else even++;
    }
  }
  const half = n >> 1;
  if (half < 2) return undefined;
  if (odd > half * 0.2 && even < odd * 0.05) return 'utf-16le';
  if (even > half * 0.2 && odd < even * 0.05) return 'utf-16be';
  return undefined;
}

function convert(
  bytes: Uint8Array,
  encoding: TextEncoding,
  by: Choice['by'],
  is: NonNullable<ChoiceOf<'encoding'>['evidence']>['is'],
): Decoded | { notText: NotText } {
  // Only bytes that were looked at are called UTF-8 by the file.
  const known = by === 'file' && encoding === 'utf-8';
  const text = known || (encoding === 'utf-8' && isUtf8(bytes)) ? bytes : reencode(bytes, encoding);
  // What is taken for a code page only because it is no UTF-8 is looked at as it came: written as UTF-8 it grows, its control bytes do not.
  const guessed = by === 'default';
  if (looksBinary(guessed ? bytes : text, guessed ? 0.05 : 0.1)) return { notText: 'binary-data' };
  let guessedLetters = 0;
  if (by === 'default') for (const byte of bytes) if (byte >= 0x80) guessedLetters++;
  return { bytes: text, choice: { id: 'encoding', value: encoding, by, evidence: { is } }, guessedLetters };
}

function reencode(bytes: Uint8Array, encoding: TextEncoding): Uint8Array {
  return bytesOf(new TextDecoder(encoding).decode(bytes));
}

/** Text holds next to no control bytes besides tab and line ends (shares ours); a stray NUL alone does not make a file binary. */
function looksBinary(bytes: Uint8Array, most: number): boolean {
  const n = Math.min(bytes.length, 16_384);
  let control = 0;
  for (let i = 0; i < n; i++) {
    const b = bytes[i]!;
    if (b < 9 || (b > 13 && b < 32)) control++;
  }
  return control > n * most;
}
