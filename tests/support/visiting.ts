import { type Analysis, analyse, type Refusal } from '../../src/analyse.ts';
import type { Settings } from '../../src/model/settings.ts';
import type { Agreed, Visit } from '../../src/model/visits.ts';
import { visitOf } from '../../src/papers/visitOf.ts';

/** Readings of one invented person: a day's curve that differs from day to day and from person to person. */
export interface Person {
  /** Sets this person's days apart from another's. */
  seed: number;
  unit?: 'mg/dL' | 'mmol/L';
  every?: number;
  level?: (day: number) => number;
}

const DAY = 1440;

/** Days since 2 March 2026 as a plain export; the last may end early. */
export function exported(
  { seed, unit = 'mg/dL', every = 5, level = () => 150 }: Person,
  from: number,
  to: number,
): string {
  const lines = [`Time,Sensor glucose (${unit})`];
  for (let minute = from * DAY; minute < to * DAY; minute += every) {
    const day = Math.floor(minute / DAY);
    const wave = 40 * Math.sin(minute / 97 + seed) + 25 * Math.sin(day * seed * 1.7 + seed);
    const mgdl = Math.max(45, Math.round(level(day) + wave));
    const at = new Date(Date.UTC(2026, 2, 2) + minute * 60_000).toISOString().slice(0, 16).replace('T', ' ');
    lines.push(`${at},${unit === 'mg/dL' ? mgdl : (mgdl / 18.016).toFixed(1)}`);
  }
  return `${lines.join('\n')}\n`;
}

export function analysed(text: string, given: Partial<Settings> = {}): Analysis | Refusal {
  const settings: Settings = { targets: 'adult', today: '2026-11-01', person: {}, ...given };
  return analyse([{ name: 'a.csv', bytes: new TextEncoder().encode(text) }], settings, '1');
}

export function held(found: Analysis | Refusal): Analysis {
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found;
}

/** What a visit of these readings leaves. */
export const leftBy = (text: string, given: Partial<Settings> = {}, agreed: Agreed | null = null): Visit =>
  visitOf(held(analysed(text, given)), `visit-${given.person?.code ?? 'x'}.json`, agreed);

export const comparedWith = (...visits: Visit[]): Pick<Settings, 'compare'> => ({
  compare: { with: 'visits', visits },
});
