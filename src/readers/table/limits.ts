import words from './limits.json' with { type: 'json' };
import { tokens, UNPARTED } from './vocabulary.ts';

const setOf = (words: string): Set<string> => new Set(words.split(' '));
const LOW = setOf(words.low);
const HIGH = setOf(words.high);
/** What stands beside them and says nothing more. */
const FILLERS = setOf(words.fillers);
/** Of scripts without blanks: looked for anywhere. */
const LOW_SIGNS = words.lowAnywhere.split(' ');
const HIGH_SIGNS = words.highAnywhere.split(' ');

/** -1 for "below what the sensor reports" in words, 1 for above, 0 for any other text: "trop bas", "less than". */
export function limitWord(text: string): -1 | 0 | 1 {
  if (text.length > 40 || /\p{Nd}/u.test(text)) return 0;
  const parts = tokens(text);
  if (parts.length === 0) return 0;
  const whole = parts.join('');
  if (UNPARTED.test(whole)) {
    const low = LOW_SIGNS.some((sign) => whole.includes(sign));
    return low === HIGH_SIGNS.some((sign) => whole.includes(sign)) ? 0 : low ? -1 : 1;
  }
  if (LOW.has(whole)) return -1;
  if (HIGH.has(whole)) return 1;
  let side: -1 | 0 | 1 = 0;
  for (const word of parts) {
    const says = LOW.has(word) ? -1 : HIGH.has(word) ? 1 : 0;
    if (says === 0 ? !FILLERS.has(word) : side !== 0 && side !== says) return 0;
    if (says !== 0) side = says;
  }
  return side;
}
