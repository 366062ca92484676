import type { MgPerDl } from '../model/glucose.ts';
import type { Band } from '../model/targets.ts';
import type { Timeline } from '../model/timeline.ts';
import { BANDS, bandBeyond, bandOf } from '../targets/bands.ts';
import { MGDL_PER_MMOL, UNITS } from '../units.ts';
import type { ChartContext } from './context.ts';

/** Band of a reading, in the unit of its file. */
export function bandAt(
  { readings: { native, unit, limit } }: Timeline,
  index: number,
  { targets }: Pick<ChartContext, 'targets'>,
): Band {
  const limits = targets.limits[UNITS[unit[index]!]!];
  const side = limit[index]!;
  const band = side === 0 ? bandOf(native[index]!, limits) : bandBeyond(side < 0 ? -1 : 1, native[index]!, limits);
  return BANDS[band]!;
}

/** Band of a height that is no reading, such as a median, as the number that is printed for it: both never differ. */
export function bandOfHeight(mgdl: MgPerDl, { targets, native }: Pick<ChartContext, 'targets' | 'native'>): Band {
  const printed = native === 'mg/dL' ? Math.round(mgdl) : Math.round((mgdl / MGDL_PER_MMOL) * 10) / 10;
  return BANDS[bandOf(printed, targets.limits[native])]!;
}
