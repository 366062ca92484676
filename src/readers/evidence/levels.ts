/** A run of values of one size. */
interface Level {
  from: number;
  n: number;
  median: number;
}

/** mmol/L stops here (the highest number that sensors show); nothing in mg/dL stays below it for long. */
const BORDER = 33.3;
/** Fewer values than this in a row are no change of unit (ours). */
const LEAST_RUN = 6;
const MOST_RUNS = 6;
/** How far apart the middles of the two sizes are: 18 for a change of unit, with room for the days to differ (ours). */
const TIMES = { low: 8, high: 40 };

/**
 * The rows at which a series goes over from one unit to the other, by the step this makes: values up to 33.3 on one side,
 * above on the other, some eighteen times as large. Empty where it does not.
 */
export function unitSteps(value: Float64Array): number[] {
  const runs: { from: number; n: number; small: boolean }[] = [];
  for (let k = 0; k < value.length; k++) {
    const here = value[k]!;
    if (Number.isNaN(here)) continue;
    const small = here <= BORDER;
    const run = runs[runs.length - 1];
    if (run && run.small === small) run.n++;
    else if (runs.length === MOST_RUNS) return [];
    else runs.push({ from: k, n: 1, small });
  }
  if (runs.length < 2 || runs.some(({ n }) => n < LEAST_RUN)) return [];
  const levels: Level[] = runs.map(({ from, n }) => ({ from, n, median: medianFrom(value, from, n) }));
  for (let i = 1; i < levels.length; i++) {
    const [a, b] = [levels[i - 1]!.median, levels[i]!.median];
    const times = a > b ? a / b : b / a;
    if (times < TIMES.low || times > TIMES.high) return [];
  }
  return levels.slice(1).map(({ from }) => from);
}

function medianFrom(value: Float64Array, from: number, n: number): number {
  const step = Math.max(1, Math.floor(n / 500));
  const sample: number[] = [];
  for (let k = from, seen = 0; k < value.length && seen < n; k++) {
    if (Number.isNaN(value[k]!)) continue;
    if (seen % step === 0) sample.push(value[k]!);
    seen++;
  }
  return Float64Array.from(sample).sort()[sample.length >> 1]!;
}
