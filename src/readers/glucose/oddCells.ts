import { bytesOf } from '../../bytes/text.ts';
import type { GlucoseUnit } from '../../model/glucose.ts';
import { limitWord } from '../table/limits.ts';
import { asciiDigits, readGrouped, readNumber } from '../table/numbers.ts';
import { glucoseUnit } from './unit.ts';

/** What a glucose cell that is no plain number turns out to hold. */
export type OddCell =
  | { is: 'number'; value: number; unit?: GlucoseUnit; mark: number; after: number }
  | { is: 'limit'; limit: -1 | 1; bound: number; unit?: GlucoseUnit }
  | { is: 'empty' }
  | { is: 'date' }
  | { is: 'text' };

const NOTHING = /^(?:[-–—]+|na|n\/a|n\.a\.|null|none|nan|\.|\?|#n\/a|#ref!|#value!|#num!|#div\/0!)$/i;
/** Arrows before or behind a value tell how it runs, not what it is (U+2190-21FF, 2794-27BE, 2B00-2B4F). */
const TREND =
  /^(?:[\u2190-\u21ff\u2794-\u27be\u2b00-\u2b4f]\ufe0f?|\s)+|(?:[\u2190-\u21ff\u2794-\u27be\u2b00-\u2b4f]\ufe0f?|\s)+$/gu;
const DATE_LIKE = /^(?:\d{1,4}[/-]\d{1,2}(?:[/-]\d{1,4})?|\d{1,2}[-. ][a-zä]{3,4}\.?|[a-zä]{3,4}[-. ]\d{1,2})$/i;
/** A sign or words before a number, or words behind it: "<40", "less than 40 mg/dL", "40 or less", "40以下". */
const BEFORE = /^(<=?|>=?|≤|≥|=<|=>|[\p{L}\p{M}][\p{L}\p{M}. :'’-]*?)\s*(\d[\d.,]*)\s*(\D.*)?$/u;
/** "low mg/dL": a word with the unit of the column. */
const UNITED = /^(\D{1,30}?)\s+(\S{2,12})$/u;
/** "LOW (<40)": a word with its bound. */
const BRACKETED = /^(\D{1,30}?)\s*[([]([^()[\]]{1,20})[)\]]$/u;
const BEHIND = /^(\d[\d.,]*)\s*(\D.*)$/u;
const AMOUNT = /^([+-]?[\d.,'’ \u00a0\u202f]+(?:e[+-]?\d+)?)\s*([\p{L}%].*)?$/iu;

/** The slow road for cells the fast one could not read: censored values, units in the cell, other digits, groups. */
export function readOddCell(raw: string): OddCell {
  if (raw.length > 60) return { is: 'text' };
  const text = asciiDigits(raw.normalize('NFKC')).replace(TREND, '').trim();
  if (text === '' || NOTHING.test(text)) return { is: 'empty' };
  const limit = limitWord(text);
  if (limit !== 0) return { is: 'limit', limit, bound: Number.NaN };
  const united = UNITED.exec(text);
  const unitBehind = united ? glucoseUnit(united[2]!) : undefined;
  if (unitBehind) {
    const side = limitWord(united![1]!);
    if (side !== 0) return limitAt(side, Number.NaN, unitBehind);
  }
  const bracketed = BRACKETED.exec(text);
  if (bracketed) {
    const side = limitWord(bracketed[1]!);
    const inside = readOddCell(bracketed[2]!);
    if (side !== 0 && inside.is === 'limit') return inside.limit === side ? inside : { is: 'text' };
  }
  const before = BEFORE.exec(text);
  if (before) {
    const [, sign, digits, rest] = before;
    const side = /^=?[<≤]/.test(sign!) ? -1 : /^=?[>≥]/.test(sign!) ? 1 : limitWord(sign!);
    const unit = rest ? glucoseUnit(rest) : undefined;
    if (side === 0 || (rest && !unit)) return { is: 'text' };
    return bounded(side, digits!, unit);
  }
  const behind = BEHIND.exec(text);
  if (behind) {
    const [, digits, rest] = behind;
    // A unit may stand between the number and the words.
    const cut = /^(\S+)\s+(.+)$/u.exec(rest!);
    const unit = cut ? glucoseUnit(cut[1]!) : undefined;
    const side = unit ? limitWord(cut![2]!) : limitWord(rest!);
    if (side !== 0) return bounded(side, digits!, unit);
  }
  const plainAmount = AMOUNT.exec(text);
  if (plainAmount) {
    const { value, mark, after } = amount(plainAmount[1]!.trim());
    const unit = plainAmount[2] ? glucoseUnit(plainAmount[2]) : undefined;
    if (!Number.isNaN(value) && (unit || !plainAmount[2])) {
      return unit ? { is: 'number', value, unit, mark, after } : { is: 'number', value, mark, after };
    }
  }
  return DATE_LIKE.test(text) ? { is: 'date' } : { is: 'text' };
}

function bounded(side: -1 | 1, digits: string, unit: GlucoseUnit | undefined): OddCell {
  const { value } = amount(digits);
  return Number.isNaN(value) ? { is: 'text' } : limitAt(side, value, unit);
}

function limitAt(limit: -1 | 1, bound: number, unit: GlucoseUnit | undefined): OddCell {
  return unit ? { is: 'limit', limit, bound, unit } : { is: 'limit', limit, bound };
}

function amount(text: string): { value: number; mark: number; after: number } {
  const bytes = bytesOf(text);
  const look = { mark: 0, after: 0 };
  const plainValue = readNumber(bytes, 0, bytes.length, look);
  if (!Number.isNaN(plainValue)) return { value: plainValue, mark: look.mark, after: look.after };
  return { value: readGrouped(text), mark: 0, after: 0 };
}
