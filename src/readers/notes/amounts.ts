import { bytesOf } from '../../bytes/text.ts';
import { anyUnit } from '../glucose/unit.ts';
import { asciiDigits, readNumber } from '../table/numbers.ts';

/** An amount written in a note. Without a certain number only the text stays. */
export interface Amount {
  amount?: number;
  unit?: string;
  text: string;
}

const WITH_UNIT = /^([+-]?[\d.,]+)\s*([^\d\s.,].{0,20})$/;

/** `5`, `5,5`, `5 IU`. `6+2`, "half", "2 exchanges" and 1.250 (thousand or decimal?) are kept as text only. */
export function readAmount(raw: string, columnUnit: string | undefined): Amount {
  const text = raw.trim();
  if (text.length > 40) return { text };
  const ascii = asciiDigits(text);
  const parted = WITH_UNIT.exec(ascii);
  const digits = bytesOf(parted ? parted[1]! : ascii);
  const look = { mark: 0, after: 0 };
  const amount = readNumber(digits, 0, digits.length, look);
  const unit = parted ? anyUnit(parted[2]!) : columnUnit;
  if (Number.isNaN(amount) || amount < 0 || (look.after === 3 && amount >= 1) || (parted && !unit)) return { text };
  return unit ? { amount, unit, text } : { amount, text };
}

/** Minutes of a duration: `00:45`, `45 min`, `0.75 h`, `2700` in a column of seconds. Undefined without a unit. */
export function readMinutes(raw: string, columnUnit: string | undefined): number | undefined {
  const clock = /^(\d{1,3}):([0-5]\d)(?::([0-5]\d))?$/.exec(raw.trim());
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]) + Number(clock[3] ?? 0) / 60;
  const { amount, unit } = readAmount(raw, columnUnit);
  if (amount === undefined) return undefined;
  return unit === 'min' ? amount : unit === 'h' ? amount * 60 : unit === 's' ? amount / 60 : undefined;
}
