import type { MgPerDl } from '../model/glucose.ts';
import { MGDL_PER_MMOL } from '../units.ts';
import type { Style } from './locale.ts';
import type { Telling } from './telling.ts';

export function inUnit(telling: Telling, mgdl: number): string {
  return telling.unit === 'mg/dL' ? telling.forms.number(mgdl) : telling.forms.number(mgdl / MGDL_PER_MMOL, 1);
}

export function withUnit(telling: Telling, value: string, style: Style): string {
  return style === 'short' || style === 'compact'
    ? value
    : telling.fill('units.glucose', { value, unit: telling.unit });
}

/** A reading beyond what the sensor reports is told as a bound, never as the bound's own value; where no file names the
 * limit, without a number. */
export function glucose(telling: Telling, mgdl: MgPerDl, limit: -1 | 0 | 1, style: Style): string {
  if (limit === 0) return withUnit(telling, inUnit(telling, mgdl), style);
  const side = limit < 0 ? 'below' : 'above';
  if (!Number.isFinite(mgdl) || telling.unnamed[side]) return telling.fill(`units.${side}Sensor`, {});
  return telling.fill(`units.${side}`, { value: withUnit(telling, inUnit(telling, mgdl), style) });
}

/** A limit of the set by its published pair (70 and 3.9), never one converted from the other. */
export function limit(telling: Telling, of: 'very-low' | 'low' | 'high' | 'very-high', style: Style): string {
  const limits = telling.targets.limits[telling.unit];
  const values = { 'very-low': limits.veryLow, low: limits.low, high: limits.high, 'very-high': limits.veryHigh };
  const value = values[of];
  if (value === null) throw new Error(`The target set "${telling.targets.id}" has no limit "${of}".`);
  return withUnit(telling, telling.forms.number(value, telling.unit === 'mg/dL' ? 0 : 1), style);
}
