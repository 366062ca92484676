import type { Correction, Meal } from '../model/occasions.ts';
import type { Note } from '../model/timeline.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { INSULIN_WITHIN } from './meals.ts';
import { between, glucoseAt, type Signal, stretch } from './signal.ts';

/** Food or more insulin within so long hides what followed. */
const ALONE = 120;

/** Mealtime insulin noted with no food near it. That none is noted does not mean that none was eaten. */
export function findCorrections(signal: Signal, doses: readonly Note[], meals: readonly Meal[]): Correction[] {
  return doses
    .filter(({ at }) => around(meals, at, INSULIN_WITHIN).length === 0)
    .map((dose) => {
      const { at } = dose;
      const after = stretch(signal, at, at + 240 * MINUTE_MS);
      const start = glucoseAt(signal, at);
      const change = (minutes: number): number | null => {
        const then = glucoseAt(signal, at + minutes * MINUTE_MS);
        return start === null || then === null ? null : then - start;
      };
      const unusable: Correction['unusable'] = [];
      if (start === null || after.low === null) unusable.push('gap');
      if (around(meals, at, ALONE).length > 0 || around(doses, at, ALONE).length > 1) unusable.push('overlap');
      if (stretch(signal, at - 15 * MINUTE_MS, at + MINUTE_MS).low === true) unusable.push('low-at-start');
      return {
        at,
        date: signal.timeline.days[dose.day]!.date,
        minute: dose.minute,
        start,
        change2h: change(120),
        change4h: change(240),
        low: after.low,
        unusable,
        nearby: [],
      };
    });
}

const around = <T extends { at: number }>(list: readonly T[], at: number, minutes: number): T[] =>
  between(list, at - minutes * MINUTE_MS, at + minutes * MINUTE_MS);
