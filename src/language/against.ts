import type { Goal } from '../model/targets.ts';
import { DAY_MINUTES } from '../time/calendar.ts';
import { duration, percent as percentText } from './durations.ts';
import { spokenMinutes } from './shares.ts';
import type { Telling } from './telling.ts';

/** -1 under, 0 on, 1 over; the tolerance only absorbs what floating point adds. */
const sideOf = (value: number, goal: number): number => (Math.abs(value - goal) < 1e-9 ? 0 : Math.sign(value - goal));

/** A goal's own share, without the decimals a measured one would get: "4 %". */
export function goalShare(telling: Telling, share: number): string {
  return telling.voice === 'patient'
    ? duration(telling, share * DAY_MINUTES, 'long')
    : telling.fill('units.percent', { value: telling.forms.number(share * 100, 0, 1) });
}

/**
 * A share printed beside a goal. 69.96 % does not meet "above 70 %", so it may not be printed as 70: the usual
 * rounding is kept while it stands on the same side as the value, then up to two decimals more, at last "just under 70 %".
 */
export function against(telling: Telling, share: number, goal: Pick<Goal, 'share'>): string {
  const side = sideOf(share, goal.share);
  if (telling.voice === 'patient') {
    const minutes = share * DAY_MINUTES;
    for (const rounded of [spokenMinutes(minutes), Math.round(minutes)]) {
      if (sideOf(rounded, goal.share * DAY_MINUTES) === side) {
        return duration(telling, rounded === 0 ? minutes : rounded, 'long');
      }
    }
  } else {
    const percent = share * 100;
    const rounded = Number(percent.toFixed(percent < 9.95 || percent > 99 ? 1 : 0));
    if (rounded === 0 || sideOf(rounded, goal.share * 100) === side) return percentText(telling, share);
    for (const decimals of [1, 2]) {
      if (sideOf(Number(percent.toFixed(decimals)), goal.share * 100) === side) {
        return telling.fill('units.percent', { value: telling.forms.number(percent, decimals) });
      }
    }
  }
  return telling.fill(side < 0 ? 'units.justUnder' : 'units.justOver', { value: goalShare(telling, goal.share) });
}
