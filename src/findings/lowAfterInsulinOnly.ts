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
    const usable = corrections.value.filter(({ unusable, low }) => unusable.length === 0 && low !== null);
    if (usable.length < LEAST) return untold('too-few-occasions');
    const low = usable.filter((one) => one.low === true);
    if (!isRepeated(low.length, usable.length)) return absent;
    return holds(
      { limit: limit('low'), count: count(low.length), of: count(usable.length) },
      low.map((one) => stretchFrom(one, 240)),
      undefined,
      alsoBeside(
        low,
        usable.filter((each) => !low.includes(each)),
      ),
    );
  },
};
