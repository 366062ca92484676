import type { PregnancyGoals } from '../model/settings.ts';
import { toMgPerDl } from '../units.ts';

/** In each unit, what a goal of a clinic can be; the two never overlap, so the size tells the unit (ours). */
const CAN_BE = { 'mg/dL': [60, 250], 'mmol/L': [3.3, 13.9] } as const;

/**
 * A clinic's own goals in pregnancy, `90/130/115`: fasting, 1 hour and 2 hours after meals, all in one unit; a dash
 * leaves the published one. Null for what is none.
 */
export function readPregnancyGoals(text: string): PregnancyGoals | null {
  const parts = text.split('/').map((part) => part.trim());
  const values = parts.map((part) => (part === '-' ? null : /^\d{1,3}([.,]\d)?$/.test(part) ? numberIn(part) : NaN));
  const unit = (['mg/dL', 'mmol/L'] as const).find((one) =>
    values.every((value) => value === null || (value >= CAN_BE[one][0] && value <= CAN_BE[one][1])),
  );
  if (parts.length !== 3 || unit === undefined || values.every((value) => value === null)) {
    return null;
  }
  const [fasting = null, oneHour = null, twoHours = null] = values.map((value) =>
    value === null ? null : toMgPerDl(value, unit),
  );
  return { fasting, oneHour, twoHours };
}

const numberIn = (part: string): number => Number(part.replace(',', '.'));
