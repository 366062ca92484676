import type { Body } from './body.ts';

export type Kind = 'meal' | 'insulin' | 'exercise' | 'medication' | 'fingerstick' | 'alarm' | 'sensor' | 'text';

/** Something that happened, as somebody might write it down. `at` counts minutes from the story's first midnight. */
export interface Happening {
  at: number;
  kind: Kind;
  amount?: number;
  label?: string;
  minutes?: number;
  text?: string;
  why: 'meal' | 'low' | 'high' | 'before-exercise' | 'routine';
}

/** A meal that will be eaten. `grams` is what the person believes. */
export interface Meal {
  at: number;
  grams: number;
  food: string;
  /** Minutes to the peak of absorption. */
  minutes: number;
  /** Minutes from the meal to its dose; null: no dose. */
  doseAfter: number | null;
  /** Share of the usual dose, 1 = as usual. */
  doseShare: number;
  why: 'meal' | 'before-exercise';
}

export interface Bout {
  at: number;
  minutes: number;
  /** 0 to 1. */
  effort: number;
  label: string;
}

/** What is planned before any reading is seen. */
export interface Plan {
  meals: Meal[];
  bouts: Bout[];
  /** Long-acting doses; `units` 0 = forgotten. */
  longActing: { at: number; units: number }[];
}

export interface Habits {
  /** g of carbohydrate a unit covers; Infinity: no rapid insulin. */
  ratio: number;
  /** mg/dL a unit lowers. */
  lowersBy: number;
  aimsAt: number;
  /** Smallest step of the pen, U. */
  penStep: number;
  /** Corrects above this reading when awake and three hours after the last dose. */
  correctsAbove: number;
  /** Chance per reading (3 min) of acting on a low, awake and asleep. */
  treatsLow: { awake: number; asleep: number };
  /** Acts on readings under this, mg/dL. */
  treatsBelow: number;
  /** Asleep from, to: wall minutes. */
  sleep: { from: number; to: number };
  /** Names of the insulins. */
  rapid: string;
  long: string;
  /** Spread of the estimate of carbohydrate, as a share. */
  guess: number;
  /** Spread of sensitivity over the days, log scale, and how much of it lasts from one quarter of a day to the next. */
  varies: { spread: number; lasts: number };
  startsAt: number;
}

export interface Person {
  body: Body;
  habits: Habits;
}
