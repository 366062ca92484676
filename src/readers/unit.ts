import type { GlucoseUnit } from '../model/glucose.ts';
import { MGDL_PER_MMOL } from '../units.ts';
import { plain } from './vocabulary.ts';

/** Readings outside this are no glucose a body or a sensor can show; set aside (ours). */
export const PLAUSIBLE: Record<GlucoseUnit, { low: number; high: number }> = {
  'mg/dL': { low: 10, high: 1000 },
  'mmol/L': { low: 0.6, high: 55.5 },
};

/** Most sensors stop below this many mmol/L; nothing reads higher in mmol/L without being impossible. */
export const MMOL_TOP = 33.3;

const GLUCOSE_UNITS: [RegExp, GlucoseUnit][] = [
  [/^(?:mg\s*\/?\s*(?:\(?100\s*\.?\s*ml\)?|dl)|mg\s*%|mg\s*per\s*dl|mg[\s_]dl)$/, 'mg/dL'],
  [/^(?:mmol\s*\/?\s*l|mmol|mmol\s*per\s*l|mmol[\s_]l|mmol\/litre|mmol\/liter)$/, 'mmol/L'],
];

export function glucoseUnit(text: string): GlucoseUnit | undefined {
  const word = plain(text).trim();
  for (const [pattern, unit] of GLUCOSE_UNITS) if (pattern.test(word)) return unit;
  return undefined;
}

/** Both readings of a number without a unit, each in both units, so that people see which one they know. */
export function bothUnits(value: number, line: number): string {
  const asMmol = (value / MGDL_PER_MMOL).toFixed(1);
  const asMgdl = Math.round(value * MGDL_PER_MMOL);
  return `${value} (line ${line}) = ${value} mg/dL (${asMmol} mmol/L) | ${value} mmol/L (${asMgdl} mg/dL)`;
}

/** Words for other quantities, written the way UCUM writes the unit. */
const OTHER_UNITS: Record<string, string> = {
  g: 'g',
  gr: 'g',
  gram: 'g',
  grams: 'g',
  gramm: 'g',
  gramos: 'g',
  grammes: 'g',
  grammi: 'g',
  gramas: 'g',
  grammaa: 'g',
  iu: 'IU',
  u: 'IU',
  ie: 'IU',
  ui: 'IU',
  e: 'IU',
  unit: 'IU',
  units: 'IU',
  einheiten: 'IU',
  unidades: 'IU',
  unites: 'IU',
  unita: 'IU',
  eenheden: 'IU',
  enheter: 'IU',
  ky: 'IU',
  yks: 'IU',
  j: 'IU',
  jednostki: 'IU',
  min: 'min',
  mins: 'min',
  minute: 'min',
  minutes: 'min',
  minuten: 'min',
  minutos: 'min',
  minuti: 'min',
  minuter: 'min',
  minuuttia: 'min',
  minut: 'min',
  h: 'h',
  hr: 'h',
  hrs: 'h',
  hour: 'h',
  hours: 'h',
  std: 'h',
  stunden: 'h',
  s: 's',
  sec: 's',
  secs: 's',
  second: 's',
  seconds: 's',
  sek: 's',
  mg: 'mg',
  mcg: 'ug',
  ml: 'mL',
  tablet: 'tablet',
  tablets: 'tablet',
};

/** The unit of an insulin dose, carbohydrate, duration or medicine; undefined when it is no unit known here. */
export function otherUnit(text: string): string | undefined {
  return OTHER_UNITS[plain(text).replace(/[.\s]/g, '')];
}

export function anyUnit(text: string): string | undefined {
  return glucoseUnit(text) ?? otherUnit(text);
}
