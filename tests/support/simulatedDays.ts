import type { DaySums, PeriodSums } from '../../src/model/thenAndNow.ts';
import type { Chance } from '../../src/stats/chance.ts';
import { normalCdf } from '../../src/stats/distributions.ts';
import { addDays } from '../../src/time/calendar.ts';

/** A person made of numbers: glucose of a day is lognormal around a level that wanders from day to day. */
export interface World {
  what: string;
  /** Typical glucose, mg/dL. */
  level: number;
  /** Spread within a day, and of the day's level, on the log scale. */
  within: number;
  between: number;
  /** Correlation of neighbouring days. */
  correlation: number;
}

export const gauss = (next: Chance): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

function poisson(next: Chance, mean: number): number {
  let count = 0;
  for (let left = Math.exp(-mean), product = next(); product > left; product *= next()) count++;
  return count;
}

/** Days of one period; `shift` moves the level (log scale). The walk begins in its long-run state. */
export function simulated(world: World, days: number, shift: number, from: string, next: Chance): PeriodSums {
  const { level, within, between, correlation: a } = world;
  let [state, unrest] = [gauss(next), gauss(next)];
  const list: DaySums[] = [];
  for (let day = 0; day < days; day++) {
    list.push(dayOf(Math.log(level) + shift + between * state, within * Math.exp(0.2 * unrest), from, day, next));
    state = a * state + Math.sqrt(1 - a * a) * gauss(next);
    unrest = a * unrest + Math.sqrt(1 - a * a) * gauss(next);
  }
  return { targets: 'adult', unit: 'mg/dL', interval: 5, sensors: 1, days: list };
}

function dayOf(centre: number, spread: number, from: string, day: number, next: Chance): DaySums {
  const below = (limit: number) => 1440 * normalCdf((Math.log(limit) - centre) / spread);
  const [v, l, h, x] = [54, 70, 180, 250].map(below) as [number, number, number, number];
  const mean = Math.exp(centre + spread ** 2 / 2);
  return {
    date: addDays(from, day),
    length: 1440,
    minutes: 1440,
    known: 1440,
    sum: 1440 * mean,
    squares: 1440 * mean ** 2 * Math.exp(spread ** 2),
    bands: [v, l - v, h - l, x - h, 1440 - x],
    lows: poisson(next, l / 45),
    veryLows: poisson(next, v / 45),
    highs: poisson(next, (1440 - h) / 150),
    nightLow: null,
  };
}

/** Worlds to try: little and much of everything, and days that resemble their neighbours more and more. */
export const WORLDS: World[] = [
  { what: 'days alike, independent', level: 145, within: 0.3, between: 0.08, correlation: 0 },
  { what: 'usual days, a little alike', level: 150, within: 0.36, between: 0.15, correlation: 0.2 },
  { what: 'many lows, alike', level: 125, within: 0.38, between: 0.15, correlation: 0.3 },
  { what: 'many highs, alike', level: 185, within: 0.38, between: 0.2, correlation: 0.3 },
  { what: 'days very unlike, much alike to neighbours', level: 160, within: 0.33, between: 0.25, correlation: 0.45 },
];
