import { renames } from './renamed.ts';

// Inside, a name is as short as its room allows, as its type tells the unit. A file has no types: its names carry the unit.
// Instants are milliseconds since 1970; shares 0 to 1.

const EPISODE = {
  start: 'startEpochMs',
  end: 'endEpochMs',
  extreme: 'extremeMgPerDl',
  extremeAt: 'extremeAtEpochMs',
} as const;

const BIN = { p5: 'p5MgPerDl', p25: 'p25MgPerDl', p50: 'p50MgPerDl', p75: 'p75MgPerDl', p95: 'p95MgPerDl' } as const;
const WINDOW = { inRange: 'inRangeShare', low: 'lowShare', high: 'highShare' } as const;
const STRETCH = { from: 'fromHours', to: 'toHours' } as const;
const AT_TIME = { mgdl: 'mgPerDl' } as const;
const GOAL = { median: 'medianMgPerDl', goal: 'goalMgPerDl' } as const;
const SLOPES = {
  over1: 'over1MgPerDlPerMinute',
  over2: 'over2MgPerDlPerMinute',
  over3: 'over3MgPerDlPerMinute',
} as const;
const FROM_TO = { from: 'fromMgPerDl', to: 'toMgPerDl' } as const;
const STAY = { from: 'fromEpochMs', to: 'toEpochMs' } as const;
const INTERVAL = { interval: 'intervalMinutes' } as const;

/** Sums of days, in `settings.compare` as in a visit file. */
const PERIOD_SUMS = renames({
  ...INTERVAL,
  days: {
    length: 'lengthMinutes',
    known: 'knownMinutes',
    sum: 'sumMgPerDlMinutes',
    squares: 'squaresMgPerDl2Minutes',
    bands: 'bandMinutes',
  },
});

const MEASURES = {
  coverage: { value: { byHour: 'byHourShare', missing: 'missingMinutes' } },
  mean: { value: { mgdl: 'meanMgPerDl' } },
  sd: 'sdMgPerDl',
  cv: 'cvPercent',
  cvRange: 'cvRangePercent',
  labA1c: { value: { eag: 'eagMgPerDl', mean: 'meanMgPerDl', gmi: 'gmiPercent', difference: 'differencePercent' } },
  timeInBands: { value: { exclusive: 'exclusiveShare', cumulative: 'cumulativeShare' } },
  modalDay: { value: { bins: BIN, raw: BIN } },
  curveRanges: { value: { p25: 'p25MgPerDl', p50: 'p50MgPerDl', p75: 'p75MgPerDl' } },
  lows: { value: { list: EPISODE } },
  highs: { value: { list: EPISODE } },
  longHighs: {
    value: {
      level: 'levelMgPerDl',
      list: {
        high: EPISODE,
        unbroken: 'unbrokenMinutes',
        insulin: 'insulinNotes',
        basal: 'basalNotes',
        food: 'foodNotes',
      },
      unbroken: 'unbrokenMinutes',
      mostInDay: 'mostInDayMinutes',
    },
  },
  nights: { value: { lowest: 'lowestMgPerDl', longestLow: 'longestLowMinutes' } },
  daily: {
    value: {
      mean: 'meanMgPerDl',
      lowest: 'lowestMgPerDl',
      highest: 'highestMgPerDl',
      inRange: 'inRangeShare',
    },
  },
  windows: { value: { best: WINDOW, hardest: WINDOW, all: WINDOW } },
  dawnRise: {
    value: {
      nights: { nadir: 'nadirMgPerDl', before: 'beforeMgPerDl', rise: 'riseMgPerDl' },
      median: 'medianMgPerDl',
    },
  },
  rebounds: { value: { list: { low: EPISODE, highStart: 'highStartEpochMs', peak: 'peakMgPerDl' } } },
  overnight: {
    value: {
      nights: { start: 'startMgPerDl', end: 'endMgPerDl', change: 'changeMgPerDl', range: 'rangeMgPerDl' },
      median: 'medianMgPerDl',
    },
  },
  rates: {
    value: {
      falling: ['fallingShare', SLOPES],
      rising: ['risingShare', SLOPES],
      steepest: { rate: 'rateMgPerDlPerMinute', ...FROM_TO },
      largest: FROM_TO,
    },
  },
  sensors: {
    value: {
      worn: { ...STAY, ...INTERVAL },
      byDay: { mean: 'meanMgPerDl', low: 'lowShare', inRange: 'inRangeShare' },
    },
  },
  oddStretches: { value: { flat: { value: 'valueMgPerDl' }, still: { value: 'valueMgPerDl' }, jumps: FROM_TO } },
  pressedLows: { value: { list: { low: EPISODE, fall: 'fallMgPerDl', back: 'backMgPerDl' } } },
  fingersticks: {
    value: {
      pairs: { at: 'atEpochMs', finger: 'fingerMgPerDl', sensor: 'sensorMgPerDl' },
      mard: 'mardShare',
      medianArd: 'medianArdShare',
      bias: 'biasMgPerDl',
      relativeBias: 'relativeBiasShare',
      mad: 'madMgPerDl',
      within15: 'within15Share',
      within20: 'within20Share',
      afterFirstDay: { mard: 'mardShare' },
    },
  },
  thenAndNow: { value: { before: INTERVAL, now: INTERVAL } },
  meals: {
    value: {
      at: 'atEpochMs',
      carbs: 'carbsGrams',
      riseBefore: 'riseBeforeMinutes',
      course: {
        baseline: 'baselineMgPerDl',
        oneHour: 'oneHourMgPerDl',
        twoHours: 'twoHoursMgPerDl',
        peak: 'peakMgPerDl',
        increment: 'incrementMgPerDl',
        area: 'areaMgPerDlMinutes',
      },
    },
  },
  exercise: {
    value: {
      at: 'atEpochMs',
      carbs: 'carbsGrams',
      start: 'startMgPerDl',
      steepest: 'steepestFallMgPerDl',
      lowestDuring: 'lowestDuringMgPerDl',
      lowestSoon: 'lowestSoonMgPerDl',
      untilMorning: { lowest: 'lowestMgPerDl', lowestAfter: 'lowestAfterMinutes' },
    },
  },
  corrections: {
    value: {
      at: 'atEpochMs',
      start: 'startMgPerDl',
      change2h: 'change2hMgPerDl',
      change4h: 'change4hMgPerDl',
    },
  },
  fixedTimes: {
    value: {
      fasting: AT_TIME,
      bedtime: AT_TIME,
      fastingMedian: 'fastingMedianMgPerDl',
      bedtimeMedian: 'bedtimeMedianMgPerDl',
    },
  },
  weekParts: { value: { hours: { weekday: 'weekdayMgPerDl', weekend: 'weekendMgPerDl' } } },
  lowsLined: { value: { exercise: STRETCH, bedtime: STRETCH } },
  insulinNoted: {
    value: { median: 'medianUnits', longActing: { median: 'medianUnits' }, others: { median: 'medianUnits' } },
  },
  pregnancy: {
    value: {
      weeks: { inRange: 'inRangeShare', low: 'lowShare', mean: 'meanMgPerDl' },
      fasting: GOAL,
      oneHour: GOAL,
      twoHours: GOAL,
    },
  },
  remarks: { value: { at: 'atEpochMs' } },
} as const;

export const READINGS = { at: 'atEpochMs', mgdl: 'mgPerDl', weight: 'weightMinutes' } as const;

/** Of the analysis as it is written, without its readings. */
export const ANALYSIS = renames({
  settings: {
    compare: { visits: { sums: PERIOD_SUMS } },
    pregnancyGoals: { fasting: 'fastingMgPerDl', oneHour: 'oneHourMgPerDl', twoHours: 'twoHoursMgPerDl' },
  },
  targets: { cvLimit: 'cvLimitPercent' },
  measures: MEASURES,
  timeline: {
    ...INTERVAL,
    days: { start: 'startEpochMs', from: 'fromReading', to: 'toReading' },
    gaps: STAY,
    spells: { ...STAY, ...INTERVAL },
    notes: { at: 'atEpochMs', wall: 'wallEpochMs', offset: 'offsetMinutes' },
  },
});
