import type { GlucoseUnit, MgPerDl } from '../model/glucose.ts';
import type { Estimate } from '../model/measured.ts';
import type { Quantity } from '../model/quantity.ts';
import type { TargetSet } from '../model/targets.ts';
import type { LocaleForms, Style } from './locale.ts';
import { spokenMinutes } from './shares.ts';

/** Everything a quantity needs to become text. `fill` finds the pattern, e.g. `units.percent`. */
export interface Telling {
  forms: LocaleForms;
  unit: GlucoseUnit;
  voice: 'clinic' | 'patient';
  targets: TargetSet;
  fill(key: string, texts: Record<string, string>, choices?: Record<string, string | number>): string;
}

const MGDL_PER_MMOL = 18.0156;
const DAY_MINUTES = 1440;
/** From here on minutes no longer matter: "306 hours". */
const LONG_MINUTES = 48 * 60;

/** Percent of a share: one decimal below 10, whole above; never 0 for something that happened. */
export function percentNumber(telling: Telling, share: number): string {
  const percent = share * 100;
  if (percent > 0 && percent < 0.05) return telling.fill('units.under', { value: telling.forms.number(0.1, 1) });
  // 99.6 must not be told as all of it, as long as something lay outside.
  if (percent > 99 && percent < 100) return telling.forms.number(Math.min(percent, 99.9), 1);
  return telling.forms.number(percent, percent > 0 && percent < 9.95 ? 1 : 0);
}

export function percent(telling: Telling, share: number): string {
  return telling.fill('units.percent', { value: percentNumber(telling, share) });
}

/** Whole minutes as hours and minutes; less than half a minute is told as less than 1. */
export function duration(telling: Telling, minutes: number, style: Style): string {
  const length = style === 'short' ? 'short' : 'long';
  const say = (name: string, value: number): string =>
    telling.fill(`units.${name}.${length}`, { n: telling.forms.number(value) }, { n: value });
  if (minutes > 0 && minutes < 0.5) return telling.fill('units.lessThan', { value: say('minutes', 1) });
  if (minutes >= LONG_MINUTES) return say('hours', Math.round(minutes / 60));
  const whole = Math.round(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return say('minutes', rest);
  if (rest === 0) return say('hours', hours);
  return telling.fill(`units.hoursAndMinutes.${length}`, { hours: say('hours', hours), minutes: say('minutes', rest) });
}

/** A share: percent for the clinic, time a day for the person whose days they are. */
export function share(telling: Telling, value: number, style: Style): string {
  if (telling.voice === 'clinic') return percent(telling, value);
  const minutes = value * DAY_MINUTES;
  const spoken = spokenMinutes(minutes);
  if (spoken === 0) return duration(telling, minutes, style);
  // Only a share of 1 is all 24 hours.
  const whole = spoken === DAY_MINUTES && value < 1;
  return duration(telling, whole ? Math.min(Math.round(minutes), DAY_MINUTES - 1) : spoken, style);
}

function inUnit(telling: Telling, mgdl: number): string {
  return telling.unit === 'mg/dL' ? telling.forms.number(mgdl) : telling.forms.number(mgdl / MGDL_PER_MMOL, 1);
}

function withUnit(telling: Telling, value: string, style: Style): string {
  return style === 'short' ? value : telling.fill('units.glucose', { value, unit: telling.unit });
}

/** A reading beyond what the sensor reports is told as a bound, never as the bound's own value. */
export function glucose(telling: Telling, mgdl: MgPerDl, limit: -1 | 0 | 1, style: Style): string {
  if (limit === 0) return withUnit(telling, inUnit(telling, mgdl), style);
  const side = limit < 0 ? 'below' : 'above';
  if (!Number.isFinite(mgdl)) return telling.fill(`units.${side}Sensor`, {});
  return telling.fill(`units.${side}`, { value: withUnit(telling, inUnit(telling, mgdl), style) });
}

/** A limit of the set by its published pair (70 and 3.9), never one converted from the other. */
function limit(telling: Telling, of: 'very-low' | 'low' | 'high' | 'very-high', style: Style): string {
  const limits = telling.targets.limits[telling.unit];
  const values = { 'very-low': limits.veryLow, low: limits.low, high: limits.high, 'very-high': limits.veryHigh };
  const value = values[of];
  if (value === null) throw new Error(`The target set "${telling.targets.id}" has no limit "${of}".`);
  return withUnit(telling, telling.forms.number(value, telling.unit === 'mg/dL' ? 0 : 1), style);
}

function clock(telling: Telling, minute: number): string {
  const whole = Math.round(minute);
  const ofDay = whole % DAY_MINUTES;
  if (ofDay === 0) return telling.fill('units.midnight', {});
  if (ofDay === DAY_MINUTES / 2) return telling.fill('units.noon', {});
  return telling.forms.clock(ofDay);
}

function estimate(telling: Telling, value: Estimate, as: 'share' | 'glucose' | 'minutes', style: Style): string {
  const plain = (number: number, last: boolean): string => {
    if (as === 'minutes') return duration(telling, number, style);
    if (as === 'glucose') return withUnit(telling, inUnit(telling, number), last ? style : 'short');
    return share(telling, number, style);
  };
  if (value.low === null || value.high === null) return plain(value.value, true);
  // In percent and glucose the unit stands once, at the estimate; times carry their own.
  const bare = (number: number): string =>
    as === 'share' && telling.voice === 'clinic' ? percentNumber(telling, Math.max(0, number)) : plain(number, false);
  return telling.fill(`units.estimate.${telling.voice}`, {
    value: plain(value.value, true),
    level: telling.fill('units.percent', { value: telling.forms.number(value.level * 100) }),
    low: bare(value.low),
    high: bare(value.high),
  });
}

/** Clinic text is terse and carries units; the patient paper names the unit once a block and spells words out. */
function usualStyle(q: Quantity, voice: 'clinic' | 'patient'): Style {
  const terse = q.q === 'glucose' || q.q === 'limit' || q.q === 'rise' || q.q === 'estimate';
  if (q.q === 'estimate' && q.as !== 'glucose') return voice === 'clinic' ? 'short' : 'long';
  if (terse) return voice === 'clinic' ? 'long' : 'short';
  return voice === 'clinic' ? 'short' : 'long';
}

/** A quantity as text: the one place where numbers are rounded. */
export function quantityText(telling: Telling, q: Quantity, asked?: Style): string {
  const style = asked ?? usualStyle(q, telling.voice);
  switch (q.q) {
    case 'count':
      return telling.forms.number(q.value);
    case 'share':
      return share(telling, q.value, style);
    case 'minutes':
      return duration(telling, q.value, style);
    case 'glucose':
      return glucose(telling, q.value, q.limit ?? 0, style);
    case 'rise':
      return withUnit(telling, inUnit(telling, q.value), style);
    case 'limit':
      return limit(telling, q.of, style);
    case 'clock':
      return clock(telling, q.value);
    case 'date':
      return telling.forms.date(q.value, style);
    case 'dates':
      return telling.forms.list(q.value.map((date) => telling.forms.dayAndMonth(date)));
    case 'estimate':
      return estimate(telling, q.value, q.as, style);
    case 'word':
      return q.value;
  }
}

/** What plural and select arms look at: a count's number, how many dates there are to name, a word itself. */
export function quantityChoice(q: Quantity): string | number | undefined {
  // Whole, as it is printed, or "1 hours" could stand there.
  if (q.q === 'count') return Math.round(q.value);
  if (q.q === 'word') return q.value;
  if (q.q === 'dates') return q.value.length <= 3 ? 'few' : 'many';
  if (q.q === 'estimate') return q.value.low === null ? 'point' : 'interval';
  return undefined;
}
