import { pow, square } from './elementary.ts';
/**
 * Correlation of neighbouring days that every interval answers for (ours). A fortnight tells its own so badly that an
 * estimate would only make the width of intervals a matter of chance.
 */
export const LIKENESS = 0.25;

/**
 * What neighbouring days that resemble each other do to a sum over `days`, if they correlate by a, a², a³ …: its variance
 * is the usual one `times` so much, and the days count for fewer `degrees` of freedom. The spread itself is seen too
 * small as well, which `times` holds.
 */
export function alikeDays(days: number, a: number): { times: number; degrees: number } {
  const more = (1 + a) / (1 - a) - (2 * a * (1 - pow(a, days))) / (days * square(1 - a));
  const seen = 1 - (more - 1) / (days - 1);
  return { times: more / seen, degrees: Math.max(1, days / more - 1) };
}
