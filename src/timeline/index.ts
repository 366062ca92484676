import type { Issue, Ledger, ReadFile } from '../model/input.ts';
import type { Settings } from '../model/settings.ts';
import type { Day, Readings, Timeline } from '../model/timeline.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { UNITS } from '../units.ts';
import { fillColumns } from './columns.ts';
import { choosePeriod, datesWithReadings, makeDays } from './days.ts';
import { settleDuplicates } from './duplicates.ts';
import { findGaps, gapRule } from './gaps.ts';
import { settleLedger, sumLedgers } from './ledger.ts';
import { acceptance, contradictionsIn } from './losses.ts';
import { placeNotes } from './notes.ts';
import { clockSetBack, onePerson } from './order.ts';
import { settleOverlaps } from './overlaps.ts';
import { placeFile } from './place.ts';
import { poolFiles } from './pool.ts';
import { listSetAside, type SetAside } from './setAside.ts';
import { chooseClock, clockOfOffsets } from './shownClock.ts';
import { asSpells, findSpells, mainInterval } from './spells.ts';
import { settleTwoSensors } from './twoSensors.ts';
import { fillWeights, isMixed } from './weights.ts';

export type TimelineSettings = Pick<Settings, 'zone' | 'period' | 'acceptLosses'> & Partial<Pick<Settings, 'person'>>;

/** What the intake made of all the files together. */
export interface Intake {
  /** null when there is a refusal among the issues. */
  timeline: Timeline | null;
  issues: Issue[];
  ledgers: { file: string; ledger: Ledger }[];
  total: Ledger;
  /** Every place that was not used, complete. */
  setAside: SetAside[];
  /** Readings and notes used, but on days outside the period. */
  readingsOutside: number;
  notesOutside: number;
}

/**
 * One person's readings and notes from all files in one order, in local days, every row accounted for. The order of
 * files and rows changes nothing, except inside an hour that the clocks showed twice.
 */
export function buildTimeline(files: ReadFile[], settings: TimelineSettings): Intake {
  const refused = (issues: Issue[]): Intake => {
    const ledgers = files.map((file) => ({ file: file.name, ledger: settleLedger(file) }));
    const total = sumLedgers(ledgers.map(({ ledger }) => ledger));
    return {
      timeline: null,
      issues,
      ledgers,
      total,
      setAside: listSetAside(files),
      readingsOutside: 0,
      notesOutside: 0,
    };
  };
  const strangers = onePerson(files);
  if (strangers) return refused([strangers]);

  const choice = chooseClock(files, settings);
  const issues = [...choice.issues];
  if (isRefused(issues)) return refused(issues);

  const placed = files.map((file) => placeFile(file, choice.clock));
  const pool = poolFiles(placed);
  const changes = settleOverlaps(pool, placed);
  const doubles = settleDuplicates(pool, placed);
  const both = settleTwoSensors(pool, placed);
  for (const file of placed) {
    issues.push(...file.issues, ...clockSetBack(file, choice.zone !== null));
  }
  const accepted = acceptance(settings.acceptLosses, settings.person?.code);
  issues.push(...contradictionsIn(placed, doubles.times, accepted), ...doubles.issues, ...changes, ...both);
  if (isRefused(issues)) return refused(issues);
  if (pool.count === 0) return refused([...issues, { code: 'no-readings', level: 'refusal' }]);

  let { clock } = choice;
  if (choice.by === 'offsets') {
    const found = clockOfOffsets(pool, placed);
    clock = found.clock;
    issues.push(...found.issues);
    if (isRefused(issues)) return refused(issues);
  }

  const allDays = datesWithReadings(pool, clock);
  const period = choosePeriod(allDays, settings.period);
  if ('code' in period) return refused([...issues, period]);
  const days = makeDays(period.from, period.to, clock, pool);
  const readings = fillColumns(pool, placed, days, clock);
  if (readings.count === 0) {
    const actual = `${allDays[0]} / ${allDays.at(-1)}`;
    return refused([
      ...issues,
      { code: 'no-readings-in-period', level: 'refusal', actual, question: { of: 'period', by: 'dates' } },
    ]);
  }
  const notes = placeNotes(files, clock, choice.by, days);
  issues.push(...notes.issues);

  const { unit, others } = majorityUnit(readings);
  if (others > 0) issues.push({ code: 'units-mixed', level: 'note', expected: unit, count: others });
  const timeline: Timeline = {
    zone: choice.zone,
    placed: choice.by !== 'written',
    unit,
    ...period,
    chosenBy: settings.period ? 'user' : 'default',
    days,
    readings,
    notes: notes.notes,
    ...rhythmOf(readings, days),
    allDays,
    issues,
  };
  const outcomes = placed.map(({ lost }, f) => ({ readings: lost, notes: notes.lost[f]! }));
  const ledgers = files.map((file, f) => ({ file: file.name, ledger: settleLedger(file, outcomes[f]) }));
  return {
    timeline,
    issues,
    ledgers,
    total: sumLedgers(ledgers.map(({ ledger }) => ledger)),
    setAside: listSetAside(files, outcomes),
    readingsOutside: pool.count - readings.count,
    notesOutside: notes.outside,
  };
}

/** Spells, gaps and intervals; writes the weights into the readings. */
function rhythmOf(readings: Readings, days: Day[]) {
  const { at, weight } = readings;
  const ranges = findSpells(at, days);
  const interval = mainInterval(ranges);
  const gapMinutes = gapRule(interval);
  const mixed = isMixed(at, ranges, gapMinutes);
  fillWeights(weight, at, ranges, mixed);
  const last = days.at(-1)!;
  const period = { start: days[0]!.start, end: last.start + last.minutes * MINUTE_MS };
  const gaps = findGaps(at, ranges, period, gapMinutes);
  return { gaps, spells: asSpells(ranges, at), interval, gapMinutes, mixed };
}

function majorityUnit({ unit, count }: Readings) {
  let mmol = 0;
  for (let i = 0; i < count; i++) mmol += unit[i]!;
  const most = mmol * 2 > count ? 1 : 0;
  return { unit: UNITS[most]!, others: most === 1 ? count - mmol : mmol };
}

function isRefused(issues: Issue[]): boolean {
  return issues.some(({ level }) => level === 'refusal');
}
