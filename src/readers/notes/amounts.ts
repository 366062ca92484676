import { bytesOf } from '../../bytes/text.ts';
import { anyUnit, otherUnit } from '../glucose/unit.ts';
import { asciiDigits, readNumber } from '../table/numbers.ts';

/** An amount written in a note. Without a certain number only the text stays. */
export interface Amount {
  amount?: number;
  unit?: string;
  text: string;
}

const WITH_UNIT = /^([+-]?[\d.,]+)\s*([^\d\s.,].{0,20})$/;

/** A thousand of these is nobody's dose and nobody's meal: three decimals are decimals. */
const NEVER_THOUSANDS = new Set(['IU', 'IU/h', 'g']);

/**
 * The two days before 1900 from which some spreadsheets count, written out with a time of day: a number in a cell that shows dates. A day
 * of January or February 1900 is none that can be turned back: programs count it differently.
 */
const SHOWN_AS_DATE = /^1899-12-3([01])(?:[ T](\d\d):(\d\d):(\d\d))?$/;

/** `1899-12-31 16:48:00` is 1.7 in a cell that shows dates; nobody noted a dose then. */
function withoutDate(text: string): string {
  const [, day, h = '0', m = '0', s = '0'] = SHOWN_AS_DATE.exec(text) ?? [];
  if (day === undefined) return text;
  const days = Number(day) + (Number(h) * 3600 + Number(m) * 60 + Number(s)) / 86_400;
  return String(Math.round(days * 10_000) / 10_000);
}

/** `5`, `5,5`, `5 IU`, `1.250 IU`. `6+2`, "half", "2 exchanges" and 1.250 mg (thousand or decimal?) are kept as text only. */
export function readAmount(raw: string, columnUnit: string | undefined, meant?: string): Amount {
  // A spreadsheet's mark of text in front is none of the amount.
  const text = withoutDate(raw.trim().replace(/^'(?=[\d+-])/, ''));
  if (text.length > 40) return { text };
  const ascii = asciiDigits(text);
  const parted = WITH_UNIT.exec(ascii);
  const digits = bytesOf(parted ? parted[1]! : ascii);
  const look = { mark: 0, after: 0 };
  const amount = readNumber(digits, 0, digits.length, look);
  const unit = parted ? anyUnit(parted[2]!) : columnUnit;
  const thousands = look.after === 3 && amount >= 1 && !NEVER_THOUSANDS.has(unit ?? meant ?? '');
  if (Number.isNaN(amount) || amount < 0 || thousands || (parted && !unit)) return { text };
  return unit ? { amount, unit, text } : { amount, text };
}

const NAMED = /^(\p{L}[\p{L}\p{M}\p{N} .-]{0,40}?)\s*[,:;(]?\s+([\d.,]+)\s*([^\d\s.,()]{1,12})\)?$/u;
const NAMED_BEHIND = /^([\d.,]+)\s*([^\d\s.,]{1,12})\s+(?:of\s+)?\(?(\p{L}[\p{L}\p{M}\p{N} .-]{0,40}?)\)?$/u;

/** "Rapid, 6 IU", "6 IU rapid": a dose with its name in one cell. Only with the unit of insulin beside the number. */
export function readNamedDose(raw: string): { amount: number; label: string } | undefined {
  const text = asciiDigits(raw.trim());
  const named = NAMED.exec(text);
  const behind = named ? null : NAMED_BEHIND.exec(text);
  const [number, word, label] = named
    ? [named[2], named[3], named[1]]
    : behind
      ? [behind[1], behind[2], behind[3]]
      : [];
  if (number === undefined || otherUnit(word!) !== 'IU') return undefined;
  const { amount } = readAmount(number, 'IU');
  return amount === undefined ? undefined : { amount, label: label!.trim() };
}

/** Minutes of a duration: `00:45`, `45 min`, `0.75 h`, `2700` in a column of seconds. Undefined without a unit. */
export function readMinutes(raw: string, columnUnit: string | undefined): number | undefined {
  const clock = /^(\d{1,3}):([0-5]\d)(?::([0-5]\d))?$/.exec(raw.trim());
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]) + Number(clock[3] ?? 0) / 60;
  const { amount, unit } = readAmount(raw, columnUnit);
  if (amount === undefined) return undefined;
  return unit === 'min' ? amount : unit === 'h' ? amount * 60 : unit === 's' ? amount / 60 : undefined;
}
