import type { Analysis } from '../analyse.ts';
import type { Facts, TopicWent } from '../model/clinic.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { LongHighs } from '../model/highs.ts';
import type { Measured } from '../model/measured.ts';
import type { Episode } from '../model/measures.ts';
import type { Times } from '../model/occasions.ts';
import type { Directed, ThenAndNow } from '../model/thenAndNow.ts';
import type { LastTime, MeasureThenAndNow } from '../model/visits.ts';

const known = <T>(measured: Measured<T>): T | null => (measured.ok ? measured.value : null);
const dates = (episodes: readonly Episode[]): LocalDate[] => [...new Set(episodes.map(({ date }) => date))];

/** So many nights are shown beside a person. */
const NIGHTS = 14;

/** The few numbers of an analysis that a worklist and a table over many people need. */
export function factsOf(analysis: Analysis): Facts {
  const { measures, timeline, ledger, targets, settings } = analysis;
  const coverage = known(measures.coverage);
  const mean = known(measures.mean);
  const bands = known(measures.timeInBands);
  const lows = known(measures.lows);
  const highs = known(measures.highs);
  return {
    hash: analysis.hash,
    targets: targets.id,
    unit: timeline.unit,
    from: timeline.from,
    to: timeline.to,
    days: timeline.days.length,
    interval: timeline.interval,
    readings: timeline.readings.count,
    rows: ledger.rows,
    setAside: ledger.setAside,
    losses: lossesIn(analysis),
    missing: analysis.missing,
    coverage: {
      share: coverage?.share ?? 0,
      hours: coverage?.hours ?? 0,
      ofHours: coverage?.ofHours ?? 0,
      nightShare: coverage?.night.share ?? 0,
      days: coverage?.daysWithReadings ?? 0,
      enough: coverage?.enough ?? false,
    },
    mean: mean && { mgdl: mean.mgdl.value, low: mean.mgdl.low, high: mean.mgdl.high },
    sd: known(measures.sd),
    cv: known(measures.cv),
    gmi: known(measures.gmi)?.percent ?? null,
    shares: bands && {
      veryLow: bands.exclusive['very-low'].value,
      low: bands.exclusive.low.value,
      inRange: bands.exclusive['in-range'].value,
      high: bands.exclusive.high.value,
      veryHigh: targets.limits['mg/dL'].veryHigh === null ? null : bands.exclusive['very-high'].value,
    },
    below: bands?.cumulative.low.value ?? null,
    above: bands?.cumulative.high.value ?? null,
    unmet: bands?.goals.filter(({ met }) => !met).map(({ of }) => of) ?? [],
    lows: lows && {
      count: lows.list.length,
      level2: lows.level2,
      night: lows.night,
      longest: lows.list.reduce((most, { minutes }) => Math.max(most, minutes), 0),
      dates: dates(lows.list),
      level2Dates: dates(lows.list.filter(({ level }) => level === 2)),
    },
    highs: highs && {
      count: highs.list.length,
      level2: highs.level2,
      longestLevel2: known(measures.longHighs)?.unbroken ?? 0,
      withoutInsulin: withoutInsulin(known(measures.longHighs)),
      level2Dates: dates(highs.list.filter(({ level }) => level === 2)),
    },
    lastReading: lastReadingOf(analysis.timeline),
    nights:
      known(measures.nights)
        ?.slice(-NIGHTS)
        .map(({ state }) => state) ?? [],
    topic: topicOf(analysis),
    change: settings.compare === undefined ? null : changeOf(measures.thenAndNow),
    lastTime: lastTimeOf(measures.lastTime),
    failed: failedIn(analysis),
    withheld: Object.fromEntries(
      Object.entries(measures).flatMap(([id, measured]) => (measured.ok ? [] : [[id, measured.why]])),
    ),
  };
}

const withoutInsulin = (highs: LongHighs | null): number | null =>
  highs && highs.insulinDays > 0 ? highs.list.filter(({ insulin }) => insulin === 0).length : null;

function lastReadingOf({ readings, days }: Analysis['timeline']): NonNullable<Facts['lastReading']> | null {
  const last = readings.count - 1;
  const day = days[readings.day[last] ?? -1];
  return day === undefined ? null : { date: day.date, minute: readings.minute[last]! };
}

/** More time in range is for the better, more of anything below or above it for the worse; mean and CV say neither. */
const WAY: Record<Directed, 1 | -1> = {
  'in-range': 1,
  low: -1,
  'very-low': -1,
  high: -1,
  'very-high': -1,
  lows: -1,
  'very-lows': -1,
  highs: -1,
};

function changeOf(measured: Measured<ThenAndNow>): Facts['change'] {
  if (!measured.ok) return { with: null, worse: [], better: [], told: false };
  const { before, changes } = measured.value;
  const real = changes.flatMap(({ verdict, of, change }) =>
    verdict === 'more-than-noise' && of !== 'mean' && of !== 'cv' ? [{ of, way: WAY[of] * change }] : [],
  );
  return {
    with: before.to,
    worse: real.filter(({ way }) => way < 0).map(({ of }) => of),
    better: real.filter(({ way }) => way > 0).map(({ of }) => of),
    told: changes.some(({ verdict }) => verdict !== 'cannot-tell'),
  };
}

function lastTimeOf(measured: Measured<LastTime>): NonNullable<Facts['lastTime']> | null {
  if (!measured.ok) return null;
  const { agreed, measure } = measured.value;
  const { goal, step } = agreed ?? {};
  return {
    ...(goal === undefined ? {} : { goal }),
    ...(step === undefined ? {} : { step }),
    measure: measure && { of: measure.of, way: wayOf(measure) },
  };
}

/** Fewer nights, days and hours of what the visit was about are for the better, and less swing; only of time in range more is. */
function wayOf(measure: MeasureThenAndNow): TopicWent['way'] {
  const { verdict } = 'change' in measure ? measure.change : measure;
  if (verdict !== 'more-than-noise') return verdict === 'cannot-tell' ? 'cannot-tell' : 'within-noise';
  const more = 'change' in measure ? measure.change.change > 0 : shareOf(measure.now!) > shareOf(measure.before);
  return more === (measure.of === 'in-range') ? 'better' : 'worse';
}

const shareOf = ({ k, n }: Times): number => k / n;

/** Measures and findings that could not be worked out because of a fault of ours. */
export const failedIn = ({ measures, found }: Analysis): string[] => [
  ...Object.entries(measures)
    .filter(([, measured]) => !measured.ok && measured.why === 'failed')
    .map(([id]) => id),
  ...found.filter(({ look }) => look.case === 'untold' && look.why === 'failed').map(({ id }) => id),
];

/** What the visit is about; of what fills its name only words, which stay the same in any unit. */
function topicOf({ topics, found }: Analysis): NonNullable<Facts['topic']> | null {
  const [first] = topics;
  const look = found.find(({ id }) => id === first?.id)?.look;
  if (!first || look?.case !== 'holds') return null;
  const words = Object.entries(look.params).flatMap(([name, it]) => (it?.q === 'word' ? [[name, it.value]] : []));
  return { id: first.id, words: Object.fromEntries(words) };
}

function lossesIn({ losses }: Analysis): NonNullable<Facts['losses']> | null {
  if (losses.length === 0) return null;
  const sum = (of: 'lost' | 'of'): number => losses.reduce((all, loss) => all + loss[of], 0);
  return { lost: sum('lost'), of: sum('of') };
}
