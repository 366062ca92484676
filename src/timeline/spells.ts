import type { Instant } from '../model/glucose.ts';
import type { Day, Spell } from '../model/timeline.ts';
import { DAY_MS, MINUTE_MS } from '../time/calendar.ts';
import { CLEAR_SHARE, type UsualStep, usualStep } from './steps.ts';

/** A spell of at least this many days may end with a change of sensor (rule ours). */
const WORN_DAYS = 5;

/** A pause at least this long after such a spell is taken for a change of sensor and its warm-up (rule ours). */
const CHANGE_MINUTES = 60;

/**
 * A pause under so many minutes, behind which the readings go on at the very minutes of the same grid, is a hole in the wear
 * of one sensor: a new one begins a grid of its own (rule ours). Told only where the grid is coarse enough to differ.
 */
const SHORT_CHANGE = 90;
const TELLING_GRID = 5;
/** Share of the interval by which such a reading may be off the grid. */
const OFF_GRID = 0.1;

/** No sensor is worn on through a pause longer than any of them lasts (days; common practice, no source). */
const LONGEST_WEAR = 16;

/** Fewer readings than this tell no interval of their own. */
const FEWEST = 12;

/** From this share of its steps on, a spell or a whole day has an interval of its own. */
const DAY_SHARE = 0.5;

/** The same for a part of a day. */
const PART_SHARE = 0.8;

/** For a lone reading, which tells nothing of its interval. */
const FALLBACK_INTERVAL = 5;

/** A spell as an index range `[from, to)` into the readings. */
export interface SpellRange {
  from: number;
  to: number;
  interval: number;
}

/**
 * Stretches worn as one sensor, as far as the data show: a new one begins where the usual interval changes from one
 * day to another, or in a day at a pause of an hour or more; after a pause of an hour or more that follows five or more days
 * of one spell; and after a pause longer than a sensor lasts.
 */
export function findSpells(at: Float64Array, days: Day[]): SpellRange[] {
  const count = at.length;
  if (count === 0) return [];
  const changes = new Set(intervalChanges(at, days));
  const usual = usualStep(at, 0, count);
  const bounds = [0];
  let began = at[0]!;
  for (let i = 1; i < count; i++) {
    const pause = at[i]! - at[i - 1]!;
    const worn = pause >= CHANGE_MINUTES * MINUTE_MS && at[i - 1]! - began >= WORN_DAYS * DAY_MS;
    const ended = (worn && !goesOn(pause / MINUTE_MS, usual)) || pause > LONGEST_WEAR * DAY_MS;
    if (!ended && (changes.size === 0 || !changes.has(i))) continue;
    bounds.push(i);
    began = at[i]!;
  }
  // A spell too short to tell its interval has that of the one before.
  let before: number | undefined;
  return bounds.map((from, k) => {
    const to = bounds[k + 1] ?? count;
    const own = clearStep(at, from, to, DAY_SHARE)?.interval;
    const interval = own ?? before ?? usual?.interval ?? FALLBACK_INTERVAL;
    before = interval;
    return { from, to, interval };
  });
}

/** Whether the grid of readings runs on behind a short pause. */
function goesOn(pause: number, usual: UsualStep | undefined): boolean {
  if (pause >= SHORT_CHANGE || !usual || usual.interval < TELLING_GRID || usual.share < CLEAR_SHARE) return false;
  const off = Math.abs(pause - Math.round(pause / usual.interval) * usual.interval);
  return off <= OFF_GRID * usual.interval;
}

/** The spells as shown to others. */
export function asSpells(ranges: SpellRange[], at: Float64Array): Spell[] {
  return ranges.map(({ from, to, interval }) => ({
    from: at[from]! as Instant,
    to: at[to - 1]! as Instant,
    interval,
    count: to - from,
  }));
}

/** The interval that covers most time, in all its spells together. */
export function mainInterval(ranges: SpellRange[]): number {
  const covered = new Map<number, number>();
  for (const { from, to, interval } of ranges)
    covered.set(interval, (covered.get(interval) ?? 0) + (to - from) * interval);
  let main = FALLBACK_INTERVAL;
  for (const [interval, minutes] of covered) if (minutes > (covered.get(main) ?? 0)) main = interval;
  return main;
}

/** Where the usual interval of a day, or of a part of it, is another than before. Only those with a clear one count. */
function intervalChanges(at: Float64Array, days: Day[]): number[] {
  const changes: number[] = [];
  let before = 0;
  let since = 0;
  for (const { from, to, interval } of days.flatMap((day) => pacesOf(at, day))) {
    if (before > 0 && interval !== before) changes.push(bestSplit(at, since, to, before, interval));
    before = interval;
    since = from;
  }
  return changes;
}

/**
 * The interval of a day, or of its parts between pauses as long as the change of a sensor: so a new one tells its interval
 * on the day it begins, which may be the last. A part is short, and lost readings make one interval look like two of them,
 * so nearly all of its steps must agree, from one reading to the next.
 */
function pacesOf(at: Float64Array, { from, to }: Day): SpellRange[] {
  const parts: SpellRange[] = [];
  let begin = from;
  for (let i = from + 1; i <= to; i++) {
    if (i < to && at[i]! - at[i - 1]! < CHANGE_MINUTES * MINUTE_MS) continue;
    const usual = clearStep(at, begin, i, PART_SHARE);
    if (usual?.lag === 1) parts.push({ from: begin, to: i, interval: usual.interval });
    begin = i;
  }
  if (parts.length > 0) return parts;
  const usual = clearStep(at, from, to, DAY_SHARE);
  return usual ? [{ from, to, interval: usual.interval }] : [];
}

/** The usual step where there are enough readings to tell one and at least this share of the steps keeps it. */
function clearStep(at: Float64Array, from: number, to: number, least: number): UsualStep | undefined {
  const usual = to - from < FEWEST ? undefined : usualStep(at, from, to);
  return usual && usual.share >= least ? usual : undefined;
}

/**
 * The index in `(from, to)` at which the old interval gives way to the new with the fewest steps on the wrong side; of
 * equals the one after the longest pause, in which the new sensor warmed up.
 */
function bestSplit(at: Float64Array, from: number, to: number, old: number, next: number): number {
  let score = 0;
  let best = Number.NEGATIVE_INFINITY;
  let split = from + 1;
  let pause = 0;
  for (let i = from + 1; i < to; i++) {
    const step = Math.round((at[i]! - at[i - 1]!) / (MINUTE_MS / 2)) / 2;
    // The step that leads to the split belongs to neither side.
    if (step === next) score--;
    if (score > best || (score === best && step > pause)) {
      best = score;
      split = i;
      pause = step;
    }
    if (step === old) score++;
  }
  return split;
}
