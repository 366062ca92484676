import { highsLike, longHighsLike, reboundsLike } from '../../support/examples/episodes.ts';
import {
  bandsLike,
  dawnLike,
  daysLike,
  mg,
  modalDayLike,
  nightsLike,
  openBandsLike,
  windowsLike,
} from '../../support/examples/measures.ts';
import { overnightLike, ratesLike } from '../../support/examples/trust.ts';
import type { Examples } from './index.ts';

export const days = {
  'overnight-fall': [
    ['30 mg/dL on 3 of 9 nights', { overnight: overnightLike([-30, -30, -30, 0, 0, 0, 0, 0, 0]) }, 'holds'],
    ['one of them 29', { overnight: overnightLike([-30, -30, -29, 0, 0, 0, 0, 0, 0]) }, 'absent'],
    ['6 nights', { overnight: overnightLike([-40, -40, -40, -40, -40, -40]) }, 'untold'],
  ],
  'best-window': [
    ['6 of 9 days', { windows: windowsLike(9, 6) }, 'holds'],
    ['5 of 9 days', { windows: windowsLike(9, 5) }, 'absent'],
    ['6 days', { windows: windowsLike(6, 6) }, 'untold'],
    ['too few days to measure', { windows: { ok: false, why: 'too-few-days' } }, 'untold'],
  ],
  'best-days': [
    ['2 of 3 days above the goal', { daily: daysLike([0.71, 0.7, 0.9]) }, 'holds'],
    ['none above the goal', { daily: daysLike([0.7, 0.5]) }, 'holds'],
    ['the best of them half in range', { daily: daysLike([0.5, 0.2]) }, 'holds'],
    ['the best of them less than half in range', { daily: daysLike([0.49, 0.2]) }, 'absent'],
    [
      'every day with a low',
      { daily: daysLike([0.9], { minutes: { 'very-low': 0, low: 15, 'in-range': 1000, high: 0, 'very-high': 0 } }) },
      'absent',
    ],
    ['no full day', { daily: daysLike([0.9], { full: false }) }, 'untold'],
  ],
  'steady-nights': [
    ['6 of 9 nights within 30', { overnight: overnightLike([30, -30, 10, 0, 5, 5, 31, 40, 60]) }, 'holds'],
    ['5 of 9 nights', { overnight: overnightLike([30, -30, 10, 0, 5, 31, 31, 40, 60]) }, 'absent'],
    ['two of six steady nights high', steadyAndHigh(2), 'holds'],
    ['three of six steady nights high: not said to have gone well', steadyAndHigh(3), 'holds'],
    ['6 nights', { overnight: overnightLike([0, 0, 0, 0, 0, 0]) }, 'untold'],
  ],
  'days-out-of-range': [
    ['a day of 24.9 % beside 50 %', { ...outOfRange(0.249, 0.5) }, 'holds'],
    ['a day of 25 %', { ...outOfRange(0.25, 0.6) }, 'absent'],
    ['half of what is usual', { ...outOfRange(0.2, 0.4) }, 'absent'],
    ['a day of 0.4 %', { ...outOfRange(0.004, 0.6) }, 'holds'],
    ['no full day', { ...outOfRange(0.1, 0.6), daily: daysLike([0.1], { full: false }) }, 'absent'],
    ['no readings', { daily: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'time-in-range': [
    ['goal met', { timeInBands: bandsLike({ 'in-range': 71, high: 29 }, goal(true)) }, 'holds'],
    ['exactly on the goal', { timeInBands: bandsLike({ 'in-range': 70, high: 30 }, goal(false)) }, 'holds'],
    ['too few readings', { timeInBands: openBandsLike({ 'in-range': 71, high: 29 }, goal(true)) }, 'holds'],
    ['no goal', { timeInBands: bandsLike({ 'in-range': 70, high: 30 }) }, 'holds', 'pregnancy-other'],
    ['no readings', { timeInBands: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'long-very-high': [
    ['120 minutes very high', veryHigh(120), 'holds'],
    ['6 hours on end: ketones are asked about', veryHigh(360), 'holds'],
    ['5 hours 59 minutes: they are not', veryHigh(359), 'holds'],
    ['insulin noted on no day', { longHighs: longHighsLike({ insulinDays: 0 }, { outerMinutes: 120 }) }, 'holds'],
    [
      'insulin noted on all days: nothing is said of what is not noted',
      { longHighs: longHighsLike({ insulinDays: 14 }, { outerMinutes: 120 }) },
      'holds',
    ],
    [
      'long-acting insulin alone, on all days',
      { longHighs: longHighsLike({ insulinDays: 0, basalDays: 14, basal: 'long-acting' }, { outerMinutes: 120 }) },
      'holds',
    ],
    [
      'doses on 5 days, a pump’s rates on 13',
      { longHighs: longHighsLike({ insulinDays: 5, basalDays: 13, basal: 'rates' }, { outerMinutes: 120 }) },
      'holds',
    ],
    ['119 minutes very high', veryHigh(119), 'absent'],
    [
      'pregnancy: 2 hours above 200 mg/dL',
      { longHighs: longHighsLike({ level: mg(200) }, { outerMinutes: 120 }) },
      'holds',
      'pregnancy-type-1',
    ],
    ['no readings', { longHighs: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'high-after-window': [
    ['3 of 9 evenings, 121 minutes', evenings(9, 121, 121, 121), 'holds'],
    ['one of the 3 only 120 minutes', evenings(9, 121, 121, 120), 'absent'],
    ['3 of 10 evenings', evenings(10, 121, 121, 121), 'absent'],
    ['6 days', evenings(6, 121, 121, 121), 'untold'],
  ],
  'rebound-after-lows': [
    ['after 2 of 5 lows', { rebounds: reboundsLike(2, 5) }, 'holds'],
    ['after 1 of 5 lows', { rebounds: reboundsLike(1, 5) }, 'absent'],
    ['no readings', { rebounds: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'dawn-rise': [
    ['20 mg/dL on 3 of 9 nights', { dawnRise: dawnLike([20, 20, 20, 5, 5, 5, 5, 5, 5]) }, 'holds'],
    ['one of them 19.9', { dawnRise: dawnLike([20, 20, 19.9, 5, 5, 5, 5, 5, 5]) }, 'absent'],
    ['6 nights', { dawnRise: dawnLike([30, 30, 30, 30, 30, 30]) }, 'untold'],
    ['too few nights to measure', { dawnRise: { ok: false, why: 'too-few-nights' } }, 'untold'],
  ],
  'wide-spread': [
    ['1.5 times as wide at 19:00, up to 181', { modalDay: modalDayLike(106, { 19: 75 }) }, 'holds'],
    ['1.48 times as wide', { modalDay: modalDayLike(107, { 19: 74 }) }, 'absent'],
    ['as wide, wholly in range: 105 to 180', { modalDay: modalDayLike(105, { 19: 75 }) }, 'absent'],
    ['too few days', { modalDay: { ok: false, why: 'too-few-days' } }, 'untold'],
  ],
  'fast-falls': [
    ['1 % of the time', { rates: ratesLike(0.01) }, 'holds'],
    ['0.9 % of the time', { rates: ratesLike(0.009) }, 'absent'],
    ['no readings', { rates: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'cv-over-limit': [
    ['36.1 %', { cv: { ok: true, value: 36.1, n: 4032, of: 'readings' } }, 'holds'],
    ['36 %', { cv: { ok: true, value: 36, n: 4032, of: 'readings' } }, 'absent'],
    ['no readings', { cv: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
} satisfies Partial<Examples>;

/** Six steady nights and three others; of the first so many more than half was above range. */
function steadyAndHigh(high: number) {
  const nights = nightsLike(9);
  const value = nights.ok ? nights.value.map((night, n) => ({ ...night, highMinutes: n < high ? 181 : 180 })) : [];
  return { overnight: overnightLike([0, 0, 0, 0, 0, 0, 40, 40, 60]), nights: { ...nights, value } as typeof nights };
}

function outOfRange(day: number, usual: number) {
  return {
    daily: daysLike([day, 0.7]),
    timeInBands: bandsLike({ 'in-range': usual * 1000, high: (1 - usual) * 1000 }),
  };
}

function veryHigh(outerMinutes: number) {
  return { longHighs: longHighsLike({}, { level: 2, outerMinutes, minutes: outerMinutes + 80 }) };
}

function goal(met: boolean) {
  return { of: 'in-range' as const, op: '>' as const, share: 0.7, met };
}

function evenings(days: number, ...lengths: number[]) {
  return {
    highs: highsLike(...lengths.map((length) => ({ startMinute: 1090, minutes: length }))),
    windows: windowsLike(days, 0),
  };
}
