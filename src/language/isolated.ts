/** Letters written from right to left: Hebrew, Arabic and their neighbours. */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/**
 * Free text kept to itself when it may run from right to left (Unicode annex 9, isolates): else a number or a code
 * beside a Hebrew name would change its side.
 */
export const isolated = (text: string): string => (RIGHT_TO_LEFT.test(text) ? `\u2068${text}\u2069` : text);
