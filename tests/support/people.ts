import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Invented people for a clinic's folder: the same number, the same days. */
export interface MadePerson {
  code: string;
  readings: string;
  notes: string;
}

export interface Making {
  days: number;
  /** Minutes between readings. */
  step: number;
}

const START = Date.UTC(2026, 1, 2);
const DAY = 1440;

/** Noise from -1 to 1 (a linear congruential step, Numerical Recipes' constants, from memory). */
function noise(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}

const bump = (minutes: number): number => (minutes < 0 ? 0 : (minutes / 45) * Math.exp(1 - minutes / 45));
const stamp = (minute: number): string =>
  new Date(START + minute * 60_000).toISOString().slice(0, 16).replace('T', ' ');

/** Level of glucose and swing after meals for each kind of person, in turn. */
const KINDS = [
  { level: 122, swing: 40, drift: 2.0 },
  { level: 105, swing: 50, drift: 3.4 },
  { level: 165, swing: 80, drift: 2.6 },
  { level: 118, swing: 45, drift: 2.4 },
  { level: 140, swing: 70, drift: 3.0 },
] as const;

export function madePerson(number: number, { days, step }: Making): MadePerson {
  const next = noise(number + 1);
  const kind = KINDS[number % KINDS.length]!;
  const readings = ['Time,Sensor glucose (mg/dL)'];
  let drift = 0;
  for (let minute = 0; minute < days * DAY; minute += step) {
    const clock = minute % DAY;
    drift = drift * 0.985 + next() * kind.drift;
    const meals = [450, 750, 1130].reduce((sum, meal) => sum + bump(clock - meal), 0);
    const value = Math.min(400, Math.max(41, Math.round(kind.level + kind.swing * meals + drift * 2)));
    readings.push(`${stamp(minute)},${value}`);
  }
  const notes = ['Time,Carbohydrate (g),Rapid insulin (IU),Note'];
  for (let day = 0; day < days; day++) {
    for (const meal of [445, 745, 960, 1125]) {
      const grams = Math.round(45 + next() * 20);
      notes.push(`${stamp(day * DAY + meal)},${grams},${Math.round(grams / 10)},`);
    }
  }
  const code = `P-${String(number + 1).padStart(4, '0')}`;
  return { code, readings: `${readings.join('\n')}\n`, notes: `${notes.join('\n')}\n` };
}

/** A folder with a subfolder of two files for each person. */
export function writePeople(folder: string, count: number, making: Making): void {
  for (let number = 0; number < count; number++) {
    const { code, readings, notes } = madePerson(number, making);
    mkdirSync(join(folder, code), { recursive: true });
    writeFileSync(join(folder, code, 'sensor.csv'), readings);
    writeFileSync(join(folder, code, 'logbook.csv'), notes);
  }
}
