import type { Issue, ReadFile } from '../model/input.ts';
import type { PeriodChoice } from '../model/settings.ts';
import { DAY_MS, isLocalDate, MINUTE_MS, midnightBefore, midnightOf } from '../time/calendar.ts';
import { AS_WRITTEN, type LocalClock } from '../time/clock.ts';
import { NO_OFFSET, offsetText } from '../time/offset.ts';
import { isZone, zoneClock } from '../time/zone.ts';
import { DEFAULT_DAYS } from './days.ts';
import type { PlacedFile } from './placed.ts';
import type { Pool } from './pool.ts';
import { sampleOf } from './samples.ts';
import { worldTimeUnclear } from './worldTime.ts';

/** How the wearer's clock is known: by a zone, by the offsets in the rows, or only as written. */
export interface ClockChoice {
  zone: string | null;
  by: 'zone' | 'offsets' | 'written';
  /** The clock for rows without an offset. */
  clock: LocalClock;
  issues: Issue[];
}

/** Which clock to use. A refusal is among the issues when the files leave it open. */
export function chooseClock(files: ReadFile[], settings: { zone?: string; period?: PeriodChoice }): ClockChoice {
  const named = [...new Set(files.flatMap(({ zone }) => (zone === undefined ? [] : [zone])))];
  const zones = settings.zone === undefined ? named : [settings.zone];
  const { withOffset, without } = countOffsets(files);
  const open = (issue: Issue): ClockChoice => ({ zone: null, by: 'written', clock: AS_WRITTEN, issues: [issue] });
  const unknown = zones.find((zone) => !isZone(zone));
  if (unknown !== undefined) {
    return open({ code: 'unknown-zone', level: 'refusal', actual: unknown.slice(0, 120), question: { of: 'zone' } });
  }
  if (zones.length > 1) {
    const samples = zones.map((zone) => ({
      ...sampleOf(files, (file) => file.zone === zone),
      is: 'zone-row' as const,
      zone,
    }));
    return open({ code: 'zones-differ', level: 'refusal', actual: zones, expected: samples, question: { of: 'zone' } });
  }
  const [zone] = zones;
  if (zone !== undefined) {
    const { from, to } = stretch(files, settings.period);
    return { zone, by: 'zone', clock: zoneClock(zone, from, to), issues: [] };
  }
  if (withOffset > 0 && without > 0) {
    return open({
      code: 'offsets-missing',
      level: 'refusal',
      actual: sampleOf(files, ({ readings }, i) => readings.offset[i] !== NO_OFFSET),
      expected: sampleOf(files, ({ readings }, i) => readings.offset[i] === NO_OFFSET),
      count: without,
      question: { of: 'zone' },
    });
  }
  // Beside readings as written, notes in world time would stand at the wrong hour; beside offsets they are instants.
  const unclear = worldTimeUnclear(files, withOffset === 0);
  if (unclear) return open(unclear);
  return { zone: null, by: withOffset === 0 ? 'written' : 'offsets', clock: AS_WRITTEN, issues: [] };
}

/** The wearer's clock as the offsets of the rows (at least one) tell it: a new piece wherever the offset changes. */
export function clockOfOffsets(pool: Pool, files: PlacedFile[]): { clock: LocalClock; issues: Issue[] } {
  const clock: LocalClock = { from: [Number.NEGATIVE_INFINITY], offset: [] };
  for (let k = 0; k < pool.count; k++) {
    const offset = files[pool.file[k]!]!.file.readings.offset[pool.index[k]!]! * MINUTE_MS;
    const earlier = clock.offset.at(-1);
    if (offset === earlier) continue;
    if (earlier !== undefined) clock.from.push(changeBetween(pool.at[k - 1]!, pool.at[k]!, earlier));
    clock.offset.push(offset);
  }
  const changes = clock.offset.length - 1;
  if (changes === 0) return { clock, issues: [] };
  const days = (pool.at[pool.count - 1]! - pool.at[0]!) / DAY_MS;
  const actual = [...new Set(clock.offset)].slice(0, 8).map(offsetText);
  // A traveller changes clocks now and then; two clocks in turns are two exports that disagree.
  const change = { actual, count: changes, question: { of: 'zone' } } as const;
  if (changes <= 2 + days) return { clock, issues: [{ code: 'offsets-change', level: 'note', ...change }] };
  const read = files.map(({ file }) => file);
  const expected = clock.offset
    .slice(0, 2)
    .map((one) => sampleOf(read, ({ readings }, i) => readings.offset[i]! * MINUTE_MS === one));
  return { clock, issues: [{ code: 'offsets-disagree', level: 'refusal', ...change, expected }] };
}

/**
 * When the clock changed between two readings: at the second, unless the first clock would have passed midnight before.
 * Then at that midnight: what a clock that went back shows in the evening would otherwise stand in the day after.
 */
function changeBetween(before: number, at: number, offset: number): number {
  const midnight = midnightBefore(before + offset) + DAY_MS - offset;
  return Math.min(at, midnight);
}

function countOffsets(files: ReadFile[]): { withOffset: number; without: number } {
  let without = 0;
  let all = 0;
  for (const { readings } of files) {
    all += readings.count;
    for (let i = 0; i < readings.count; i++) if (readings.offset[i] === NO_OFFSET) without++;
  }
  return { withOffset: all - without, without };
}

/** Instants between which the clock must be right: readings, notes and the days asked for, with room on both sides. */
function stretch(files: ReadFile[], period: PeriodChoice | undefined): { from: number; to: number } {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  const include = (wall: number) => {
    if (wall < from) from = wall;
    if (wall > to) to = wall;
  };
  for (const { readings, notes } of files) {
    for (let i = 0; i < readings.count; i++) include(readings.wall[i]!);
    for (const note of notes) include(note.wall);
  }
  const days = period && 'days' in period ? period.days : DEFAULT_DAYS;
  if (to >= from) include(to - days * DAY_MS);
  if (period && !('days' in period)) {
    for (const date of [period.from, period.to]) if (date !== undefined && isLocalDate(date)) include(midnightOf(date));
  }
  return { from: from - 16 * DAY_MS, to: to + 3 * DAY_MS };
}
