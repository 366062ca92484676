/**
 * Frequency words with a fixed meaning (communication rule, ours; words alone are read very differently, so the count
 * always follows). `plain` is the count without a word: too few days for one.
 */
export type Frequency = 'every' | 'most' | 'overHalf' | 'half' | 'some' | 'few' | 'plain';

const WORD_NEEDS_DAYS = 7;

/** The word for `k` of `n`. */
export function frequency(k: number, n: number): Frequency {
  const share = k / n;
  const enough = n >= WORD_NEEDS_DAYS;
  if (k === n) return enough ? 'every' : 'plain';
  if (share >= 2 / 3) return enough ? 'most' : 'plain';
  if (share > 2 / 5 && share < 3 / 5) return enough ? 'half' : 'plain';
  if (share >= 3 / 5) return enough ? 'overHalf' : 'plain';
  if (share >= 1 / 3) return k >= 3 ? 'some' : 'plain';
  return k >= 2 ? 'few' : 'plain';
}
