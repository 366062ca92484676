import { alsoBeside } from './evidence/hint.ts';
import { isRepeated } from './evidence/pattern.ts';
import { stretchFrom } from './evidence/places.ts';
import { count, limit } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const LEAST = 3;

/** Readings below the low limit within four hours of mealtime insulin that stands in the log without food. */
export const lowAfterInsulinOnly: Finding<'low-after-insulin-only'> = {
  id: 'low-after-insulin-only',
  source: 'ours',
  look({ corrections }) {
    if (!corrections.ok) return untold(corrections.why);
    const told = corrections.value.filter(({ unusable, low }) => unusable.length === 0 && low !== null);
    if (told.length < LEAST) return untold('too-few-occasions');
    const low = told.filter((one) => one.low === true);
    if (!isRepeated(low.length, told.length)) return absent;
    return holds(
      { limit: limit('low'), count: count(low.length), of: count(told.length) },
      low.map((one) => stretchFrom(one, 240)),
      undefined,
      alsoBeside(
        low,
        told.filter((each) => !low.includes(each)),
      ),
    );
  },
};
