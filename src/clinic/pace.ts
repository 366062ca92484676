/** How far a run has come; times in milliseconds since its start and since the first was done. */
export interface Gone {
  done: number;
  total: number;
  sinceStart: number;
  sinceFirst: number;
}

/**
 * People a second, and seconds left. Workers take a moment to start, which would make the first guesses far too long: the pace counts from
 * the first person.
 */
export function paceOf({ done, total, sinceStart, sinceFirst }: Gone): { rate: number; left: number } {
  const [paced, since] = done > 1 ? [done - 1, sinceFirst] : [done, sinceStart];
  const rate = (1000 * paced) / Math.max(since, 1);
  return { rate, left: (total - done) / Math.max(rate, 0.001) };
}

/** `4:05` or `1:04:05`. */
export function stopwatch(seconds: number): string {
  const whole = Math.round(seconds);
  const two = (n: number): string => String(n).padStart(2, '0');
  const [h, m, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}
