import { square } from '../stats/elementary.ts';
import type { Index } from './indexOf.ts';
import type { Trace } from './trace.ts';

type Path = Pick<Trace, 'mgdl' | 'minutes' | 'stretch'>;

/** Adds up over steps between neighbouring readings of one stretch: `of(change, minutes)`. */
function along(
  { mgdl, minutes, stretch }: Path,
  of: (change: number, minutes: number) => number,
): { sum: number; minutes: number } {
  let sum = 0;
  let lasted = 0;
  for (let i = 1; i < mgdl.length; i++) {
    if (stretch[i] !== stretch[i - 1]) continue;
    const step = minutes[i]! - minutes[i - 1]!;
    sum += of(mgdl[i]! - mgdl[i - 1]!, step);
    lasted += step;
  }
  return { sum, minutes: lasted };
}

/** Mean absolute glucose change, mg/dL an hour; null without a step. */
export function magOf(path: Path): number | null {
  const { sum, minutes } = along(path, (change) => Math.abs(change));
  return minutes > 0 ? sum / (minutes / 60) : null;
}

/** How much longer the drawn line is than a flat one, percent; a minute and a mg/dL drawn alike. Formula from memory. */
export function gvpOf(path: Path): number | null {
  const { sum, minutes } = along(path, (change, minutes) => Math.sqrt(square(change) + square(minutes)));
  return minutes > 0 ? 100 * (sum / minutes - 1) : null;
}

/** Depends on the interval of the readings: compare only like with like. */
export const mag: Index<number> = {
  id: 'mag',
  source: 'Hermanides 2010, Crit Care Med 38:838-842',
  unit: 'mg/dL/h',
  definition: {},
  compute: (trace) => perStep(trace, magOf(trace)),
};

/** Glycemic variability percentage; depends on the interval of the readings. */
export const gvp: Index<number> = {
  id: 'gvp',
  source: 'Peyser 2018, Diabetes Technol Ther 20:6-16, doi 10.1089/dia.2017.0187',
  unit: '%',
  definition: {},
  compute: (trace) => perStep(trace, gvpOf(trace)),
};

function perStep(trace: Trace, value: number | null): ReturnType<Index<number>['compute']> {
  if (trace.mgdl.length === 0) return { ok: false, why: 'no-readings' };
  if (value === null) return { ok: false, why: 'too-few-readings' };
  return { ok: true, value, n: trace.mgdl.length, of: 'readings' };
}
