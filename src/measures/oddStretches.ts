import type { Readings, Timeline } from '../model/timeline.ts';
import type { OddStretches, StillStretch } from '../model/trust.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl } from '../units.ts';
import type { Measure } from './measure.ts';

const FLAT_MINUTES = 60;
const FLAT_READINGS = 5;
/**
 * The last value some sensors send instead of "below" or "above", in the unit of the file (common practice, no source): flat
 * there, with no reading beyond, is the end of what the sensor can show.
 */
const ENDS = { low: [[39, 40], [2.2]], high: [[400, 401], [22.2]] } as const;
/** Glucose holds no value, and stays beyond no end of the sensor, for half a day (ours): whoever reads it has to ask. */
const STILL_MINUTES = 720;
const JUMP_RATE = 6;
const JUMP_LEAST = 30;

/**
 * Values that stand still for an hour, jumps, and readings at the sensor's limits. Where the lines are drawn is ours; to be
 * looked at, never taken out.
 */
export const oddStretches: Measure<'oddStretches'> = {
  id: 'oddStretches',
  source: 'Daybands',
  needs: { readings: 1 },
  definition: {
    flatMinutes: FLAT_MINUTES,
    flatReadings: FLAT_READINGS,
    stillMinutes: STILL_MINUTES,
    jumpPerMinute: JUMP_RATE,
    jumpLeast: JUMP_LEAST,
  },
  compute({ timeline }) {
    const { at, mgdl, native, unit, limit, day, minute, count, weight } = timeline.readings;
    const found: OddStretches = { flat: [], jumps: [], belowLimit: 0, aboveLimit: 0, ...stillIn(timeline) };
    const { low, high } = furthest(timeline.readings);
    const endAt = (i: number): -1 | 0 | 1 => {
      const u = unit[i]!;
      if (isEnd(ENDS.low[u]!, native[i]!) && native[i] === low[u]) return -1;
      return isEnd(ENDS.high[u]!, native[i]!) && native[i] === high[u] ? 1 : 0;
    };
    let run = 0;
    const closeRun = (next: number) => {
      const minutes = (at[next - 1]! - at[run]!) / MINUTE_MS + weight[next - 1]!;
      if (next - run < FLAT_READINGS || minutes < FLAT_MINUTES || limit[run] !== 0) return;
      const end = endAt(run);
      if (end !== 0) {
        found[end < 0 ? 'belowLimit' : 'aboveLimit'] += next - run;
        return;
      }
      found.flat.push({
        date: timeline.days[day[run]!]!.date,
        minute: minute[run]!,
        minutes,
        value: mgPerDl(mgdl[run]!),
      });
    };
    for (let i = 0; i < count; i++) {
      if (limit[i]! < 0) found.belowLimit++;
      else if (limit[i]! > 0) found.aboveLimit++;
      if (i === 0) continue;
      const step = (at[i]! - at[i - 1]!) / MINUTE_MS;
      if (step > timeline.gapMinutes || native[i] !== native[i - 1] || limit[i] !== limit[i - 1]) {
        closeRun(i);
        run = i;
      }
      if (step > timeline.gapMinutes || limit[i] !== 0 || limit[i - 1] !== 0) continue;
      const change = Math.abs(mgdl[i]! - mgdl[i - 1]!);
      if (change < JUMP_LEAST || change <= JUMP_RATE * step) continue;
      found.jumps.push({
        date: timeline.days[day[i - 1]!]!.date,
        minute: minute[i - 1]!,
        from: mgPerDl(mgdl[i - 1]!),
        to: mgPerDl(mgdl[i]!),
        minutes: step,
      });
    }
    closeRun(count);
    return { ok: true, value: found, n: count, of: 'readings' };
  },
};

/** Which end of the sensor a reading lies beyond, or its own value: readings that share it stand still. */
function stillIn({ readings, days, gapMinutes }: Timeline): Pick<OddStretches, 'still' | 'stillShare'> {
  const { at, mgdl, native, limit, day, minute, count, weight } = readings;
  const isSame = (a: number, b: number): boolean =>
    limit[a] === limit[b] && (limit[a] !== 0 || native[a] === native[b]) && at[b]! - at[a]! <= gapMinutes * MINUTE_MS;
  const still: StillStretch[] = [];
  let all = 0;
  let own = 0;
  let from = 0;
  for (let i = 0; i < count; i++) {
    all += weight[i]!;
    if (i + 1 < count && isSame(i, i + 1)) continue;
    const minutes = (at[i]! - at[from]!) / MINUTE_MS + weight[i]!;
    if (minutes >= STILL_MINUTES - 0.5) {
      own += minutes;
      const end = limit[from]!;
      still.push({
        date: days[day[from]!]!.date,
        minute: minute[from]!,
        toDate: days[day[i]!]!.date,
        minutes,
        side: end === 0 ? 'value' : end < 0 ? 'below' : 'above',
        value: end === 0 ? mgPerDl(mgdl[from]!) : null,
      });
    }
    from = i + 1;
  }
  return { still, stillShare: all > 0 ? Math.min(1, own / all) : 0 };
}

const isEnd = (ends: readonly number[], value: number): boolean => ends.includes(value);

/** The lowest and the highest plain reading in each unit, or beyond any where a reading is marked as beyond. */
function furthest({ native, unit, limit, count }: Readings): { low: number[]; high: number[] } {
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = [0, 0];
  for (let i = 0; i < count; i++) {
    const u = unit[i]!;
    // Where the file marks what is beyond, the number itself is a reading.
    if (limit[i]! < 0) low[u] = Number.NEGATIVE_INFINITY;
    if (limit[i]! > 0) high[u] = Number.POSITIVE_INFINITY;
    if (limit[i] !== 0) continue;
    if (native[i]! < low[u]!) low[u] = native[i]!;
    if (native[i]! > high[u]!) high[u] = native[i]!;
  }
  return { low, high };
}
