/** Rounding makes equal chances differ in their last digits. */
const EQUAL = 1 + 1e-9;

/**
 * Fisher's exact test of two shares, a of n and b of m, two-sided: all tables with the same margins that are no likelier
 * than the one seen (Fisher 1934, Statistical Methods for Research Workers, 5th ed.). `least` is the smallest p that these
 * margins allow, whatever is seen.
 */
export function exactTable(a: number, n: number, b: number, m: number): { p: number; least: number } {
  const all = a + b;
  const first = Math.max(0, all - m);
  const chances = [1];
  for (let k = first; k < Math.min(n, all); k++) {
    const last = chances[chances.length - 1]!;
    chances.push((last * ((n - k) * (all - k))) / ((k + 1) * (m - all + k + 1)));
  }
  const whole = chances.reduce((sum, one) => sum + one, 0);
  const upTo = (limit: number) => chances.reduce((sum, one) => (one <= limit * EQUAL ? sum + one : sum), 0) / whole;
  return { p: upTo(chances[a - first]!), least: upTo(Math.min(...chances)) };
}
