import { latin1 } from '../../bytes/text.ts';

/** What the digits of one cell looked like; filled by readNumber so that no row allocates. */
export interface NumberLook {
  /** 0 none, else the byte of the single mark between digits: 0x2e or 0x2c. */
  mark: number;
  /** Digits behind it. */
  after: number;
}

/** 1, 10, 100 … as the grammar below can ask for: engines do not agree on every power they work out. */
const TENS = Array.from({ length: 36 }, (_, power) => Number(`1e${power}`));

/** Longer ones are no measurements (ours). */
const MOST_DIGITS = 40;

const isDigit = (b: number): boolean => b >= 0x30 && b <= 0x39;

/**
 * A plain decimal by our own grammar: sign, digits, at most one mark, exponent. The mark is taken as the decimal
 * mark; the column decides later whether it was one. NaN for anything else, without saying what.
 */
export function readNumber(bytes: Uint8Array, from: number, to: number, look: NumberLook): number {
  look.mark = look.after = 0;
  let i = from;
  let negative = false;
  const lead = bytes[i]!;
  if (lead === 0x2d || lead === 0x2b) {
    negative = lead === 0x2d;
    i++;
  } else if (lead === 0x27) i++;
  let value = 0;
  let digits = 0;
  let after = 0;
  for (; i < to; i++) {
    const b = bytes[i]!;
    if (isDigit(b)) {
      value = value * 10 + b - 0x30;
      digits++;
      if (look.mark !== 0) after++;
    } else if ((b === 0x2e || b === 0x2c) && look.mark === 0 && digits > 0) look.mark = b;
    else break;
  }
  if (digits === 0 || digits > MOST_DIGITS || (look.mark !== 0 && after === 0)) return Number.NaN;
  look.after = after;
  // More digits than whole numbers hold: programs write 183.33333333333334.
  if (digits > 15) return longNumber(bytes, from, to);
  let power = -after;
  if (i < to) {
    if ((bytes[i]! | 0x20) !== 0x65) return Number.NaN;
    i++;
    let down = false;
    if (bytes[i] === 0x2d || bytes[i] === 0x2b) down = bytes[i++] === 0x2d;
    let exponent = 0;
    const begin = i;
    for (; i < to && isDigit(bytes[i]!); i++) exponent = exponent * 10 + bytes[i]! - 0x30;
    if (i < to || i === begin || exponent > 20) return Number.NaN;
    power += down ? -exponent : exponent;
  }
  // One division or multiplication of whole numbers, so that 5.6 and 1.12E+02 come out exact.
  if (power !== 0) value = power < 0 ? value / TENS[-power]! : value * TENS[power]!;
  return negative ? -value : value;
}

/** The nearest number to one of many digits (ECMA-262, StringToNumber: exact to 20 of them). */
function longNumber(bytes: Uint8Array, from: number, to: number): number {
  const text = latin1(bytes, from, to).replace(/^'/, '').replace(',', '.');
  return /^[+-]?\d+(?:\.\d+)?(?:e[+-]?\d{1,2})?$/i.test(text) ? Number(text) : Number.NaN;
}

const GROUPED = /^([+-]?)(\d{1,3}(?:([.,'’ \u00a0\u202f])\d{3})(?:\3\d{3})*)(?:([.,])(\d+))?$/;

/** Digits in groups of three: `1.234,56`, `1 234.5`, `1'234'567`. The last mark, when it differs, is the decimal mark. */
export function readGrouped(text: string): number {
  const found = GROUPED.exec(text.replaceAll('\u2212', '-'));
  if (!found) return Number.NaN;
  const [, sign, whole, group, mark, rest] = found;
  if (mark && mark === group) return Number.NaN;
  const value = Number(`${whole!.replace(/\D/g, '')}.${rest ?? 0}`);
  return sign === '-' ? -value : value;
}

const BEYOND_ASCII = /[^\0-\x7f]/;

/** Digits of other scripts (Arabic-Indic, Devanagari …) as ASCII digits; a real minus sign as a hyphen. */
export function asciiDigits(text: string): string {
  if (!BEYOND_ASCII.test(text)) return text;
  return text.replaceAll('\u2212', '-').replace(/\p{Nd}/gu, (digit) => {
    const code = digit.codePointAt(0)!;
    if (code < 0x80) return digit;
    // Unicode keeps the ten digits of a script together, zero first: count down to the first of the run.
    let zero = code;
    while (code - zero < 9 && /\p{Nd}/u.test(String.fromCodePoint(zero - 1))) zero--;
    return String(code - zero);
  });
}
