/** Of how many days a statement about a habit needs to speak at all (communication rule, ours). */
export const PATTERN_DAYS = 7;

/** Seen at least 3 times, and on at least a third of the days (or nights, or lows) that could have shown it. */
export const isRepeated = (k: number, n: number): boolean => k >= 3 && k / n >= 1 / 3;

/** What may be called a pattern: repeated, with at least 7 days behind it. */
export const isPattern = (k: number, n: number): boolean => isRepeated(k, n) && n >= PATTERN_DAYS;
