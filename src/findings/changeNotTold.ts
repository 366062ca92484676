import { count, limit, share, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

const NUMBERS = ['in-range', 'low', 'very-low', 'lows', 'high', 'very-high'];

/** Two periods are put side by side, and the difference in range and lows may be chance, or cannot be told yet: both numbers stand. */
export const changeNotTold: Finding<'change-not-told'> = {
  id: 'change-not-told',
  source: 'ours',
  look({ thenAndNow }) {
    if (!thenAndNow.ok) return quiet(thenAndNow.why);
    const { changes, before, now } = thenAndNow.value;
    if (changes.some(({ of, verdict }) => NUMBERS.includes(of) && verdict === 'more-than-noise')) return absent;
    const range = changes.find(({ of }) => of === 'in-range');
    if (!range) return absent;
    const low = changes.find(({ of }) => of === 'low');
    const known = range.verdict === 'cannot-tell' ? (range.why === 'few-days' ? 'few' : 'other') : 'chance';
    return holds(
      {
        known: word(known),
        before: share(range.before),
        now: share(range.now),
        lowBefore: share(low?.before ?? 0),
        lowNow: share(low?.now ?? 0),
        lows: word(low && low.why !== 'other-targets' ? 'told' : 'none'),
        from: limit('low'),
        to: limit('high'),
        thenDays: count(before.fullDays),
        nowDays: count(now.fullDays),
      },
      [],
      known,
    );
  },
};
