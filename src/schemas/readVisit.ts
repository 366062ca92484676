import type { LocalDate } from '../model/glucose.ts';
import type { PeriodSums } from '../model/thenAndNow.ts';
import type { Visit, VisitNumber } from '../model/visits.ts';
import { withDays } from './agreed.ts';
import { check } from './problems.ts';
import { faultIn, SNAPSHOT_FORMAT, snapshot } from './snapshot.ts';
import { VISIT_FORMAT, VISIT_VERSION, type VisitJson, visit } from './visit.ts';

/**
 * `problem`: the place that does not fit and what stands there. `newer`: written by a later program in a form that this one
 * does not know (`known` is the latest it does).
 */
export type ReadVisit = { visit: Visit } | { problem: string } | { newer: string; known: string };

/** Reads the text of a visit file, or of a snapshot as earlier versions wrote it. `file`: its name, for what is told of it. */
export function readVisit(text: string, file: string): ReadVisit {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    return { problem: 'JSON' };
  }
  const { format, version } = (content ?? {}) as { format?: unknown; version?: unknown };
  const old = format === SNAPSHOT_FORMAT;
  if ((old || format === VISIT_FORMAT) && typeof version === 'number' && version > (old ? 1 : VISIT_VERSION))
    return { newer: String(version), known: String(VISIT_VERSION) };
  const read = old ? ofSnapshot(content, file) : ofVisit(content, file);
  if ('problem' in read) return read;
  const { sums, numbers } = read.visit;
  const fault = faultIn(sums) ?? (old ? null : otherNumbers(numbers, sums));
  return fault === null ? read : { problem: fault };
}

const problemsOf = ({ problems }: { problems: string[] }) => ({ problem: problems.slice(0, 3).join('; ') });

function ofVisit(content: unknown, file: string): { visit: Visit } | { problem: string } {
  const checked = check(visit, content, 'visit');
  if (!checked.ok) return problemsOf(checked);
  const { period, origin, targets, unit, sensors, intervalMinutes, days, agreed, changed, ...rest } = checked.value;
  if (period.from !== days[0]!.date) return { problem: `period.from: ${period.from}` };
  if (period.to !== days.at(-1)!.date) return { problem: `period.to: ${period.to}` };
  const { format: _, version: __, ...kept } = rest;
  const sums = { targets, unit, interval: intervalMinutes, sensors, days: days.map(dayOf) };
  return {
    visit: {
      file,
      origin: { ...origin, on: day(origin.on) },
      ...kept,
      sums,
      agreed: agreed && withDays(agreed),
      changed: changed.map(({ on, what }) => ({ on: day(on), what })),
    },
  };
}

/** Checked to be a day of the calendar. */
const day = (date: string) => date as LocalDate;

const dayOf = (of: VisitJson['days'][number]): PeriodSums['days'][number] => ({
  date: day(of.date),
  length: of.lengthMinutes,
  minutes: of.minutes,
  known: of.knownMinutes,
  sum: of.sumMgPerDlMinutes,
  squares: of.squaresMgPerDl2Minutes,
  bands: of.bandMinutes,
  lows: of.lows,
  veryLows: of.veryLows,
  highs: of.highs,
  nightLow: of.nightLow,
});

function ofSnapshot(content: unknown, file: string): { visit: Visit } | { problem: string } {
  const checked = check(snapshot, content, 'snapshot');
  if (!checked.ok) return problemsOf(checked);
  const { made: origin, targets, unit, interval, sensors, days } = checked.value;
  const sums: PeriodSums = {
    targets,
    unit,
    interval,
    sensors,
    days: days.map((each) => ({ ...each, date: day(each.date), nightLow: null })),
  };
  const bare = (value: number | null): VisitNumber | null => (value === null ? null : { value, low: null, high: null });
  const { inRangeShare, lowShare, highShare, meanMgPerDl } = given(sums);
  return {
    visit: {
      file,
      origin: { ...origin, on: day(origin.on) },
      person: {},
      sums,
      goals: [],
      numbers: {
        inRangeShare: bare(inRangeShare),
        lowShare: bare(lowShare),
        highShare: bare(highShare),
        meanMgPerDl: bare(meanMgPerDl),
        nightsLowShare: null,
      },
      topic: null,
      topicMeasure: null,
      held: [],
      agreed: null,
      changed: [],
    },
  };
}

/** The numbers that sums of days give; null without readings. */
function given({ days }: PeriodSums) {
  const sum = (of: (day: PeriodSums['days'][number]) => number): number => days.reduce((all, one) => all + of(one), 0);
  const ratio = (top: number, bottom: number): number | null => (bottom > 0 ? top / bottom : null);
  const minutes = sum((one) => one.minutes);
  const inBands = (...bands: number[]) =>
    ratio(
      sum((one) => bands.reduce((all, band) => all + one.bands[band]!, 0)),
      minutes,
    );
  return {
    inRangeShare: inBands(2),
    lowShare: inBands(0, 1),
    highShare: inBands(3, 4),
    meanMgPerDl: ratio(
      sum((one) => one.sum),
      sum((one) => one.known),
    ),
    nightsLowShare: ratio(
      days.filter(({ nightLow }) => nightLow === true).length,
      days.filter(({ nightLow }) => nightLow !== null).length,
    ),
  };
}

/** A head that tells other numbers than its days would be believed before them. */
function otherNumbers(numbers: Visit['numbers'], sums: PeriodSums): string | null {
  const days = given(sums);
  for (const name of Object.keys(days) as (keyof typeof days)[]) {
    const [said, own] = [numbers[name], days[name]];
    if (said === null) continue;
    const near = own !== null && Math.abs(said.value - own) <= 1e-6 * Math.max(1, Math.abs(own));
    const inside = (said.low === null || said.low <= said.value) && (said.high === null || said.high >= said.value);
    if (!near || !inside) return `numbers.${name}: ${said.value}`;
  }
  return null;
}
