import type { Measured } from '../../../src/model/measured.ts';
import type { MedicinesNoted } from '../../../src/model/trust.ts';
import { lowsLike } from '../../support/examples/episodes.ts';
import { exampleDate, meanLike, nightsLike, seenCoverage } from '../../support/examples/measures.ts';
import { a1cLike, alarmsLike, oddLike, pressedLike, sensorsLike, sticksLike } from '../../support/examples/trust.ts';
import type { Examples } from './index.ts';

export const trust = {
  'not-enough-data': [
    ['14 days with 70 % of readings', { coverage: seenCoverage(14, 0.7) }, 'absent'],
    ['13 full days', { coverage: seenCoverage(13, 1) }, 'holds'],
    ['14 days with 69.9 %', { coverage: seenCoverage(14, 0.699) }, 'holds'],
    ['no readings', { coverage: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'nights-without-data': [
    ['all nights at 70 %', { nights: nightsLike(14, { share: 0.7 }) }, 'absent'],
    ['one night at 69 %', { nights: nightsLike(14, { share: 1 }, { share: 0.69, state: 'unknown' }) }, 'holds'],
    ['all nights at 69 %', { nights: nightsLike(4, { share: 0.69, state: 'unknown' }) }, 'holds'],
    [
      'three nights of the recording and one after it: all four are counted',
      { nights: nightsLike(4, { share: 0.2, state: 'unknown' }, { share: 0, outside: true }) },
      'holds',
    ],
    ['only the night before the first evening', { nights: nightsLike(2, {}, { share: 0, outside: true }) }, 'absent'],
    ['no night of the recording', { nights: nightsLike(1, { share: 0, outside: true }) }, 'untold'],
    ['no nights', { nights: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'standing-still': [
    ['half a day at one value', { oddStretches: oddLike(1, 0, { still: 1 }) }, 'holds'],
    ['below what the sensor can show, twice', { oddStretches: oddLike(0, 0, { still: 2, side: 'below' }) }, 'holds'],
    [
      'half of the time with readings: nothing went well',
      { oddStretches: oddLike(0, 0, { still: 1, share: 0.5 }) },
      'holds',
    ],
    ['49.9 % of it', { oddStretches: oddLike(0, 0, { still: 1, share: 0.499 }) }, 'holds'],
    ['an hour at one value', { oddStretches: oddLike(1, 0) }, 'absent'],
    ['no readings', { oddStretches: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'pressed-lows': [
    ['one of three', { pressedLows: pressedLike(1, 3) }, 'holds'],
    ['none of three', { pressedLows: pressedLike(0, 3) }, 'absent'],
    ['no readings', { pressedLows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'lows-on-first-day': [
    ['a low in hour 10', { lows: lowsLike({}), sensors: sensorsLike(0) }, 'holds'],
    [
      'a low in hour 24',
      { lows: lowsLike({ startMinute: 0, date: '2024-01-02' as never }), sensors: sensorsLike(0) },
      'absent',
    ],
    ['no new sensor', { lows: lowsLike({}), sensors: sensorsLike() }, 'absent'],
    ['no readings', { lows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'lows-without-alarm': [
    ['1 of 3 lows', { alarms: alarmsLike([1], 1, 3) }, 'holds'],
    ['2 of 4 lows', { alarms: alarmsLike([1], 2, 4) }, 'absent'],
    ['2 lows', { alarms: alarmsLike([1], 0, 2) }, 'absent'],
    ['none noted', { alarms: { ok: false, why: 'none-noted' } }, 'absent'],
  ],
  'alarms-at-night': [
    ['3 nights', { alarms: alarmsLike([1, 2, 1], 0, 0) }, 'holds'],
    ['2 nights', { alarms: alarmsLike([3, 3], 0, 0) }, 'absent'],
    ['none noted', { alarms: { ok: false, why: 'none-noted' } }, 'absent'],
  ],
  'a1c-differs': [
    ['half a point apart', { labA1c: a1cLike(7.5, 7.0) }, 'holds'],
    ['0.4 apart', { labA1c: a1cLike(7.4, 7.0) }, 'absent'],
    [
      'no GMI for these targets',
      { labA1c: a1cLike(7.4, null), gmi: { ok: false, why: 'not-for-these-targets' } },
      'untold',
    ],
    ['none typed in', { labA1c: { ok: false, why: 'not-asked' } }, 'absent'],
  ],
  'readings-at-limits': [
    ['one reading above the limit', { mean: meanLike(150, 1) }, 'holds'],
    ['two below it', { mean: meanLike(150, 0, 2) }, 'holds'],
    ['some on both sides', { mean: meanLike(150, 3, 2) }, 'holds'],
    ['none', { mean: meanLike(150) }, 'absent'],
    ['no readings', { mean: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'odd-stretches': [
    ['one flat stretch', { oddStretches: oddLike(1, 0) }, 'holds'],
    ['one jump', { oddStretches: oddLike(0, 1) }, 'holds'],
    ['neither', { oddStretches: oddLike(0, 0) }, 'absent'],
    ['no readings', { oddStretches: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
  'fingersticks-differ': [
    [
      '3 of 5 within 20 %',
      { fingersticks: sticksLike([100, 100], [150, 150], [200, 200], [100, 140], [200, 130]) },
      'holds',
    ],
    [
      '4 of 5 within 20 %',
      { fingersticks: sticksLike([100, 100], [150, 150], [200, 200], [100, 110], [200, 130]) },
      'absent',
    ],
    ['two pairs', { fingersticks: sticksLike([100, 140], [200, 130]) }, 'untold'],
    ['no fingersticks noted', { fingersticks: { ok: false, why: 'none-noted' } }, 'absent'],
  ],
  'medicines-noted': [
    ['noted once', { medicinesNoted: noted(1) }, 'holds'],
    ['not noted', { medicinesNoted: noted(0) }, 'absent'],
    ['no notes at all', { medicinesNoted: { ok: false, why: 'none-noted' } }, 'absent'],
  ],
} satisfies Partial<Examples>;

function noted(times: number): Measured<MedicinesNoted> {
  const list = Array.from({ length: times }, (_, day) => ({
    id: 'acetaminophen',
    noted: 'paracetamol',
    date: exampleDate(day),
    minute: 480,
  }));
  return { ok: true, value: { list }, n: 10, of: 'notes' };
}
