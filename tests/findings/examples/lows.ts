import { lowsLike } from '../../support/examples/episodes.ts';
import {
  bandsLike,
  daysLike,
  exampleDate,
  listed,
  modalDayLike,
  nightsLike,
  openBandsLike,
  seenCoverage,
} from '../../support/examples/measures.ts';
import type { Examples } from './index.ts';

export const lows = {
  'very-low': [
    ['one low of level 2', { lows: lowsLike({ level: 2, outerMinutes: 20 }) }, 'holds'],
    ['lows of level 1 only', { lows: lowsLike({}, {}), timeInBands: bandsLike({ low: 60 }) }, 'absent'],
    ['ten minutes very low, no episode', { lows: lowsLike(), timeInBands: bandsLike({ 'very-low': 10 }) }, 'holds'],
    ['no readings', { lows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'lows-seen': [
    ['one low', { lows: lowsLike({}), coverage: seenCoverage(14, 1) }, 'holds'],
    ['three on one day', { lows: lowsLike(...listed(3, onOneDay)), coverage: seenCoverage(14, 1) }, 'holds'],
    ['two on one day', { lows: lowsLike(...listed(2, onOneDay)), coverage: seenCoverage(14, 1) }, 'holds'],
    ['none', { lows: lowsLike(), coverage: seenCoverage(14, 1) }, 'absent'],
    ['no readings', { lows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'long-lows': [
    ['a low of 120 minutes', { lows: lowsLike({ minutes: 120 }) }, 'holds'],
    ['a low of 119 minutes', { lows: lowsLike({ minutes: 119 }) }, 'absent'],
    ['no readings', { lows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'lows-at-night': [
    ['1 night of 14', { nights: nightsLike(14, {}, { state: 'low', longestLow: 20 }) }, 'holds'],
    ['none seen on 14 nights', { nights: nightsLike(14) }, 'absent'],
    ['no night with enough readings', { nights: nightsLike(14, { state: 'unknown', share: 0.5 }) }, 'untold'],
    ['a low in a night with few readings', { nights: nightsLike(1, { state: 'very-low', share: 0.2 }) }, 'holds'],
  ],
  'lows-clustered': [
    ['3 of 9 days, 120 minutes apart', at(9, 120, 180, 240), 'holds'],
    ['3 of 9 days, 121 minutes apart', at(9, 120, 180, 241), 'absent'],
    ['3 of 10 days', at(10, 120, 180, 240), 'absent'],
    ['2 of 4 days', at(4, 120, 180), 'absent'],
    ['around midnight', at(9, 30, 1380, 1439), 'holds'],
    ['two of the three on one evening, before and after midnight', at(9, 1380, 1439, 30), 'absent'],
    ['no readings', { lows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'time-low-over-goal': [
    ['low not met', { timeInBands: bandsLike({ low: 40, 'in-range': 960 }, goal('low', 0.04, false)) }, 'holds'],
    [
      'too few readings',
      { timeInBands: openBandsLike({ low: 40, 'in-range': 960 }, goal('low', 0.04, false)) },
      'holds',
    ],
    ['both met', { timeInBands: bandsLike({ low: 39, 'in-range': 961 }, goal('low', 0.04, true)) }, 'absent'],
    ['very low not met', { timeInBands: bandsLike({ 'very-low': 20 }, goal('very-low', 0.01, false)) }, 'holds'],
    ['a set without goals', { timeInBands: bandsLike({ low: 40 }) }, 'untold', 'pregnancy-other'],
  ],
  'lows-averages-hide': [
    ['lows on 2 days, lower edge at the limit', { ...twoLows(), modalDay: modalDayLike(70) }, 'holds'],
    ['lower edge below the limit, goal missed', { ...twoLows(), modalDay: modalDayLike(69), ...missed() }, 'absent'],
    ['goal met, lower edge below the limit', { ...twoLows(), modalDay: modalDayLike(69), ...met() }, 'holds'],
    ['goal not judged, lower edge below the limit', { ...twoLows(), modalDay: modalDayLike(69), ...open() }, 'absent'],
    ['time in range above 70 %: the usual day may be called calm', { ...twoLows(), ...met() }, 'holds'],
    ['time in range 41 %: not called calm', { ...twoLows(), ...met(410) }, 'holds'],
    ['time in range 90 %, 4.9 % of it very high: calm', { ...twoLows(), ...met(912, 49) }, 'holds'],
    ['5 % very high: not called calm', { ...twoLows(), ...met(911, 50) }, 'holds'],
    ['lows on 1 day', { lows: lowsLike({}), coverage: seenCoverage(14, 1), modalDay: modalDayLike(90) }, 'absent'],
    ['neither shares nor usual day', twoLows(), 'untold'],
  ],
  'brief-lows': [
    ['ten minutes low, no episode', { ...brief(10), lows: lowsLike() }, 'holds'],
    ['nothing low', { ...brief(0), lows: lowsLike() }, 'absent'],
    ['an episode', { ...brief(30), lows: lowsLike({}) }, 'absent'],
    ['no readings', { lows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'no-lows-seen': [
    ['nothing below the limit, nights whole', seen(1), 'holds'],
    ['70 % of readings', seen(0.7), 'holds'],
    ['69 % of readings', seen(0.69), 'untold'],
    ['70 % of the nights', { ...seen(1), coverage: seenCoverage(14, 1, 0.7) }, 'holds'],
    ['69 % of the nights', { ...seen(1), coverage: seenCoverage(14, 1, 0.69) }, 'untold'],
    ['five minutes low, no episode', { ...seen(1), timeInBands: bandsLike({ low: 5, 'in-range': 1000 }) }, 'absent'],
    ['a low', { ...seen(1), lows: lowsLike({}) }, 'absent'],
  ],
} satisfies Partial<Examples>;

function at(days: number, ...startMinutes: number[]) {
  return { lows: lowsLike(...startMinutes.map((startMinute) => ({ startMinute }))), coverage: seenCoverage(days, 1) };
}

function goal(of: 'low' | 'very-low', limitShare: number, met: boolean) {
  return { of, op: '<' as const, share: limitShare, met };
}

function onOneDay(n: number) {
  return { date: exampleDate(2), startMinute: 600 + 100 * n };
}

function twoLows() {
  return { lows: lowsLike({}, {}), coverage: seenCoverage(14, 1) };
}

function met(inRange = 961, veryHigh = 0) {
  return {
    timeInBands: bandsLike(
      { low: 39, 'in-range': inRange, high: 961 - inRange - veryHigh, 'very-high': veryHigh },
      { of: 'low', op: '<', share: 0.04, met: true },
    ),
  };
}

function open() {
  return { timeInBands: openBandsLike({ low: 39, 'in-range': 961 }, { of: 'low', op: '<', share: 0.04, met: true }) };
}

function missed() {
  return { timeInBands: bandsLike({ low: 41, 'in-range': 959 }, { of: 'low', op: '<', share: 0.04, met: false }) };
}

function brief(low: number) {
  const minutes = { 'very-low': 0, low, 'in-range': 1000, high: 0, 'very-high': 0 };
  return { timeInBands: bandsLike(minutes), daily: daysLike([0.9], { minutes }), coverage: seenCoverage(14, 1) };
}

function seen(share: number) {
  return {
    lows: lowsLike(),
    timeInBands: bandsLike({ 'in-range': 1000 }),
    coverage: seenCoverage(14, share),
    nights: nightsLike(14, { share }),
  };
}
