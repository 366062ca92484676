import type { Instant } from '../../../src/model/glucose.ts';
import type { Measured } from '../../../src/model/measured.ts';
import type { LabA1c } from '../../../src/model/measures.ts';
import type { Change, ThenAndNow } from '../../../src/model/thenAndNow.ts';
import type {
  Alarms,
  Fingersticks,
  OddStretches,
  Overnight,
  PressedLows,
  Rates,
  Sensors,
  StillStretch,
} from '../../../src/model/trust.ts';
import { midnightOf } from '../../../src/time/calendar.ts';
import { lowsLike } from './episodes.ts';
import { exampleDate, listed, mg } from './measures.ts';

/** Small made-up measures of trust and change, for the findings' own examples. */
const sameWay = <T>(value: T, n: number, of: 'pairs' | 'notes' | 'episodes' | 'readings' | 'nights' | 'days') =>
  ({ ok: true, value, n, of }) as const;

/** A comparison in which the changes given stand; all others are not told apart. */
export function thenAndNowLike(...given: (Partial<Change> & Pick<Change, 'of'>)[]): Measured<ThenAndNow> {
  const facts = {
    from: exampleDate(0),
    to: exampleDate(13),
    days: 14,
    fullDays: 14,
    share: 1,
    interval: 5,
    sensors: 1,
  };
  const changes = (['in-range', 'low', 'very-low', 'high', 'mean', 'lows'] as const).map(
    (of): Change => ({
      of,
      before: 0.6,
      now: 0.62,
      change: 0.02,
      low: -0.05,
      high: 0.09,
      smallest: 0.05,
      verdict: 'not-told-apart',
      ...given.find((each) => each.of === of),
    }),
  );
  const value: ThenAndNow = {
    with: 'previous',
    text: '',
    before: facts,
    now: facts,
    differs: [],
    sharedDays: 0,
    changes,
    goals: [],
  };
  return sameWay(value, 28, 'days');
}

/** Pairs of a fingerstick and a sensor reading, mg/dL. */
export function sticksLike(...given: [finger: number, sensor: number][]): Measured<Fingersticks> {
  const relative = given.map(([finger, sensor]) => Math.abs(sensor - finger) / finger);
  const mard = relative.reduce((sum, each) => sum + each, 0) / (relative.length || 1);
  const within = relative.filter((each) => each <= 0.2).length / (relative.length || 1);
  const pairs = given.map(([finger, sensor], day) => ({
    at: 0 as Instant,
    date: exampleDate(day),
    minute: 600,
    finger: mg(finger),
    sensor: mg(sensor),
    hoursWorn: null,
    zone: 'A' as const,
  }));
  const bias = given.reduce((sum, [finger, sensor]) => sum + sensor - finger, 0) / (given.length || 1);
  const value: Fingersticks = {
    pairs,
    noted: given.length,
    alone: 0,
    mard,
    medianArd: mard,
    bias,
    relativeBias: bias / 150,
    mad: Math.abs(bias),
    within15: within,
    within20: within,
    zones: { A: given.length, B: 0, C: 0, D: 0, E: 0 },
    afterFirstDay: null,
  };
  return sameWay(value, given.length, 'pairs');
}

export function pressedLike(pressed: number, lows: number): Measured<PressedLows> {
  const example = lowsLike(...listed(pressed, () => ({ startMinute: 180 })));
  const list = (example.ok ? example.value.list : []).map((low) => ({ low, fall: 40, back: 45 }));
  return sameWay({ list, lows, nightLows: lows, veryLows: 0, pressedVeryLows: 0 }, lows, 'episodes');
}

export function alarmsLike(nights: number[], lowsWith: number, lows: number): Measured<Alarms> {
  const value: Alarms = {
    noted: nights.reduce((sum, each) => sum + each, 0) + lowsWith,
    days: nights.length,
    nights: nights.map((alarms, day) => ({ date: exampleDate(day), alarms })),
    lowsWith,
    lows,
    withoutLow: 0,
  };
  return sameWay(value, value.noted, 'notes');
}

export function overnightLike(changes: number[], range = 30): Measured<Overnight> {
  const nights = changes.map((change, day) => ({
    date: exampleDate(day),
    start: mg(150),
    end: mg(150 + change),
    change,
    range,
  }));
  const steady = nights.filter((night) => Math.abs(night.change) <= 30 && night.range <= 50).length;
  const middle = [...changes].sort((a, b) => a - b)[Math.floor(changes.length / 2)] ?? 0;
  return sameWay({ nights, median: middle, steady }, nights.length, 'nights');
}

export function ratesLike(fast: number): Measured<Rates> {
  const steepest = { rate: -3.2, date: exampleDate(2), minute: 1260, from: mg(190), to: mg(126) };
  const value = {
    falling: { over1: 0.05, over2: fast, over3: 0 },
    rising: { over1: 0.05, over2: 0, over3: 0 },
    steepest,
    largest: { ...steepest, minutes: 20, limits: { from: 0 as const, to: 0 as const } },
  };
  return sameWay(value, 4000, 'readings');
}

export function oddLike(
  flat: number,
  jumps: number,
  { still = 0, share = 0.1, below = 0, side = 'value' as StillStretch['side'] } = {},
): Measured<OddStretches> {
  const value: OddStretches = {
    flat: listed(flat, (day) => ({ date: exampleDate(day), minute: 600, minutes: 75, value: mg(120) })),
    jumps: listed(jumps, (day) => ({ date: exampleDate(day), minute: 600, from: mg(120), to: mg(180), minutes: 5 })),
    belowLimit: below,
    aboveLimit: 0,
    still: listed(still, (day) => ({
      date: exampleDate(day),
      minute: 0,
      toDate: exampleDate(day),
      minutes: 720,
      side,
      value: side === 'value' ? mg(100) : null,
    })),
    stillShare: share,
  };
  return sameWay(value, 4000, 'readings');
}

export function sensorsLike(...starts: number[]): Measured<Sensors> {
  const worn = starts.map((day) => ({
    from: midnightOf(exampleDate(day)) as Instant,
    to: midnightOf(exampleDate(day + 7)) as Instant,
    date: exampleDate(day),
    interval: 5,
    readings: 2000,
    begun: true,
    pauseMinutes: 60,
  }));
  return sameWay({ worn, byDay: [] }, 4000, 'readings');
}

export function a1cLike(percent: number, gmi: number | null): Measured<LabA1c> {
  const difference = gmi === null ? null : gmi - percent;
  const value = { percent, mmolPerMol: 53, eag: mg(28.7 * percent - 46.7), mean: mg(150), gmi, difference };
  return sameWay(value, 4000, 'readings');
}
