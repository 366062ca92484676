import type { Measured, Why } from '../../src/model/measured.ts';
import type { Measures } from '../../src/model/measures.ts';
import { highsLike, longHighsLike, lowsLike, reboundsLike } from './examples/episodes.ts';
import {
  bandsLike,
  daysLike,
  meanLike,
  modalDayLike,
  nightsLike,
  seenCoverage,
  windowsLike,
} from './examples/measures.ts';

const unknown = <T>(): Measured<T> => ({ ok: false, why: 'too-few-readings' });
const unasked = <T>(why: Why): Measured<T> => ({ ok: false, why });

/** A calm fortnight in which nothing stands out; what is given replaces it. */
export function measuresWith(given: Partial<Measures> = {}): Measures {
  return {
    coverage: seenCoverage(14, 1),
    mean: meanLike(140),
    sd: { ok: true, value: 42, n: 4032, of: 'readings' },
    cv: { ok: true, value: 30, n: 4032, of: 'readings' },
    cvRange: unknown(),
    gmi: { ok: true, value: { percent: 6.66, mmolPerMol: 49.3 }, n: 4032, of: 'readings' },
    timeInBands: bandsLike({ 'in-range': 15_000, high: 5_160 }),
    modalDay: modalDayLike(100),
    curveRanges: unknown(),
    hourly: unknown(),
    lows: lowsLike(),
    highs: highsLike(),
    longHighs: longHighsLike(),
    lowStories: unknown(),
    nights: nightsLike(14),
    daily: daysLike(Array.from({ length: 14 }, () => 0.74)),
    windows: windowsLike(14, 8),
    dawnRise: unknown(),
    rebounds: reboundsLike(0, 0),
    labA1c: unasked('not-asked'),
    lastTime: unasked('not-asked'),
    visitByVisit: unasked('not-asked'),
    overnight: unknown(),
    rates: unknown(),
    sensors: unknown(),
    oddStretches: unknown(),
    pressedLows: unknown(),
    fingersticks: unasked('none-noted'),
    medicinesNoted: unasked('none-noted'),
    alarms: unasked('none-noted'),
    thenAndNow: unasked('not-asked'),
    noteLog: unknown(),
    meals: unknown(),
    exercise: unknown(),
    corrections: unknown(),
    comparisons: unknown(),
    notedBefore: unknown(),
    fixedTimes: unknown(),
    weekParts: unknown(),
    lowsLined: unknown(),
    insulinNoted: unasked('none-noted'),
    pregnancy: unasked('not-asked'),
    remarks: unasked('none-noted'),
    ...given,
  };
}

/** Nothing could be measured, but for what is given. */
export function onlyMeasured(given: Partial<Measures>): Measures {
  const nothing = Object.fromEntries(Object.keys(measuresWith()).map((id) => [id, unknown()]));
  return { ...(nothing as unknown as Measures), ...given };
}
