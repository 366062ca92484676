import { readFileSync } from 'node:fs';
import { measure } from '../../src/measures/index.ts';
import type { Instant, MgPerDl } from '../../src/model/glucose.ts';
import type { LogWords } from '../../src/model/logbook.ts';
import type { OutcomeNotes } from '../../src/model/notedBefore.ts';
import type { Comparison, Meal, Noted, Session, UntilMorning } from '../../src/model/occasions.ts';
import { compareAll } from '../../src/occasions/comparisons.ts';
import type { DayStretch } from '../../src/occasions/dayStretches.ts';
import type { NotedAt } from '../../src/occasions/noted.ts';
import { notedBefore } from '../../src/occasions/notedBefore.ts';
import type { RestDay } from '../../src/occasions/restDays.ts';
import { checkLogWords } from '../../src/schemas/logWords.ts';
import { type Chance, chance } from '../../src/stats/chance.ts';
import { targetSets } from '../../src/targets/index.ts';
import { DAY_MS, MINUTE_MS, midnightOf } from '../../src/time/calendar.ts';
import { type DaysOf, dayOf, timelineOf } from '../support/timeline.ts';

const FROM = '2026-03-02';
const START = midnightOf(FROM);
/** Made once: dates are what a simulated log would spend its time on. */
const DATES = Array.from({ length: 28 }, (_, day) => dayOf(FROM, day));

/** The words of logbooks as they stand in templates. */
export const logWords = ((): LogWords => {
  const checked = checkLogWords(
    JSON.parse(readFileSync(new URL('../../templates/foods.json', import.meta.url), 'utf8')),
  );
  if ('problems' in checked) throw new Error(checked.problems.join(', '));
  return checked.words;
})();

/** Measures of made-up days with notes, through the real intake. */
export const measured = (days: DaysOf) => measure(timelineOf(days), targetSets.adult, logWords);

/** Standard normal by Box and Muller 1958. */
export const normal = (next: Chance): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

/** What is true of the days of a simulated log. All zero: nothing is there to find. */
export interface Truth {
  /** Minutes above range that "rice" adds to an evening meal. */
  food?: number;
  /** mg/dL that exercise takes from the lowest value to 6 in the morning. */
  exercise?: number;
  /** mg/dL that extra food first gives back. */
  extraFood?: number;
}

/** What is eaten when; rice on about 3 evenings a week. */
const FOODS = {
  morning: ['porridge', 'toast', 'yoghurt'],
  midday: ['soup', 'sandwich', 'salad'],
  evening: ['rice', 'rice', 'stew', 'fish'],
};

/**
 * Four weeks of a log without a curve: what each meal, each evening and night came to. Days have weather of their own that lasts
 * (an autoregressive walk), minutes above range have their heap at zero, and one night in ten is hidden.
 */
export function simulatedLog(seed: number, truth: Truth = {}): { comparisons: Comparison[]; before: OutcomeNotes[] } {
  const next = chance(seed);
  const days = 28;
  const meals: Meal[] = [];
  const sessions: Session[] = [];
  const rests: RestDay[] = [];
  const stretches: DayStretch[] = [];
  const noted: NotedAt[] = [];
  const lows: number[] = [];
  let weather = normal(next);
  for (let day = 0; day < days; day++) {
    weather = 0.4 * weather + Math.sqrt(1 - 0.4 ** 2) * normal(next);
    const date = DATES[day]!;
    for (const [slot, minute] of [
      ['morning', 450],
      ['midday', 760],
      ['evening', 1130],
    ] as const) {
      if (next() > 0.8) continue;
      const foods = FOODS[slot];
      const food = foods[Math.floor(next() * foods.length)]!;
      const high = 30 + 20 * weather + 45 * normal(next) + (food === 'rice' ? (truth.food ?? 0) : 0);
      meals.push(mealOf(day, minute, slot, food, Math.min(180, Math.max(0, high)), next));
    }
    const moved =
      next() < 0.45
        ? sessionOf(day, next() < 0.5 ? 'extra' : 'none-noted', next() < 0.5 ? 'running' : 'cycling', next)
        : null;
    const drop = moved ? (truth.exercise ?? 0) - (moved.carbsFirst === 'extra' ? (truth.extraFood ?? 0) : 0) : 0;
    const lowest = Math.max(42, 105 + 10 * weather + 22 * normal(next) - drop) as MgPerDl;
    const low = next() < 0.9 ? lowest < 70 : null;
    const untilMorning: UntilMorning = { minutes: 700, low, lowest, lowestAfter: 460, lowMinutes: 0 };
    if (moved) sessions.push({ ...moved, untilMorning });
    else rests.push({ at: START + day * DAY_MS + 1100 * MINUTE_MS, date, minute: 1100, untilMorning });
    const from = START + day * DAY_MS + 360 * MINUTE_MS;
    const at = (hours: number) => from + hours * 60 * MINUTE_MS;
    if (low) lows.push(at(18));
    const write = (id: Noted['id'], hours: number, name = '') =>
      noted.push({ id, name, at: at(hours), end: at(hours) });
    for (const food of meals.filter((meal) => meal.date === date).flatMap(({ foods }) => foods))
      write('food', 12, food);
    if (moved) write('exercise', 12.5);
    if (moved?.kind) write('exercise-kind', 12.5, moved.kind);
    if (next() < 0.3) write('bedtime-food', 15.5);
    if (next() < 0.3) write('insulin-only', 10);
    const veryHigh = 5 * weather + 10 * normal(next) > 12;
    stretches.push({
      date,
      from,
      to: from + DAY_MS,
      noted: true,
      came: {
        lows: low,
        'very-lows': low === null ? null : lowest < 60,
        'night-lows': low === null ? null : low && next() < 0.6,
        'very-highs': veryHigh,
        'much-high': weather + normal(next) > 0,
        unsteady: weather + normal(next) > 0,
      },
    });
  }
  noted.sort((a, b) => a.at - b.at);
  const events = { lows, 'very-lows': [], 'night-lows': [], 'very-highs': [] };
  return { comparisons: compareAll(meals, sessions, rests, []), before: notedBefore(stretches, events, noted) };
}

function mealOf(day: number, minute: number, slot: Meal['slot'], food: string, high: number, next: Chance): Meal {
  const when = (['before', 'with', 'after'] as const)[Math.floor(next() * 3)]!;
  return {
    at: (START + day * DAY_MS + minute * MINUTE_MS) as Instant,
    date: DATES[day]!,
    weekday: (day % 7) + 1,
    minute,
    slot,
    foods: [food],
    carbs: Math.round(30 + 50 * next()),
    insulin: { when, minutes: 0 },
    late: false,
    riseBefore: null,
    inferred: false,
    unusable: [],
    course: {
      baseline: 120 as MgPerDl,
      oneHour: null,
      twoHours: null,
      peak: 190 as MgPerDl,
      peakLimit: false,
      increment: 70,
      minutesToPeak: 70,
      highMinutes: high,
      highMinutes4h: high,
      area: 5000,
      returnMinutes: null,
      low: false,
    },
    nearby: [],
  };
}

function sessionOf(
  day: number,
  carbsFirst: Session['carbsFirst'],
  kind: string,
  next: Chance,
): Omit<Session, 'untilMorning'> {
  const soon = (95 + 25 * normal(next)) as MgPerDl;
  return {
    at: (START + day * DAY_MS + 1100 * MINUTE_MS) as Instant,
    date: DATES[day]!,
    minute: 1100,
    kind,
    minutes: 45,
    effort: 'not-noted',
    carbsFirst,
    carbs: null,
    start: 140 as MgPerDl,
    steepest: null,
    lowestDuring: soon,
    lowestSoon: soon,
    lowSoon: soon < 70,
  };
}
