import { HIGH, IN_RANGE, LOW } from '../targets/bands.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import type { Index } from './indexOf.ts';
import type { Trace } from './trace.ts';

/** A part of the time: mean in mg/dL of the readings with a number, shares in percent of the time with readings. */
interface Part {
  mean?: number;
  inRange: number;
  low: number;
  high: number;
}

/** Over the readings that are wanted; null without any. */
function partOf({ mgdl, weight, band }: Trace['every'], wanted: (i: number) => boolean): Part | null {
  const sums = { all: 0, numbered: 0, value: 0, inRange: 0, low: 0, high: 0 };
  for (let i = 0; i < mgdl.length; i++) {
    if (!wanted(i)) continue;
    sums.all += weight[i]!;
    if (!Number.isNaN(mgdl[i]!)) {
      sums.numbered += weight[i]!;
      sums.value += mgdl[i]! * weight[i]!;
    }
    if (band[i] === IN_RANGE) sums.inRange += weight[i]!;
    if (band[i]! <= LOW) sums.low += weight[i]!;
    if (band[i]! >= HIGH) sums.high += weight[i]!;
  }
  if (sums.all === 0) return null;
  const percent = (part: number) => (100 * part) / sums.all;
  return {
    ...(sums.numbered > 0 && { mean: sums.value / sums.numbered }),
    inRange: percent(sums.inRange),
    low: percent(sums.low),
    high: percent(sums.high),
  };
}

/** Two parts side by side under the names given, one number each. */
function underNames(
  names: readonly [string, string],
  parts: readonly [Part | null, Part | null],
): Record<string, number> {
  return Object.fromEntries(
    names.flatMap((name, i) =>
      Object.entries(parts[i] ?? {}).map(([key, value]) => [
        `${name}${key[0]!.toUpperCase()}${key.slice(1)}`,
        value as number,
      ]),
    ),
  );
}

/** The two clock blocks that the consensus of 2017 asks for beside the whole day: sleep and wake. */
export const clockBlocks: Index<Record<string, number>> = {
  id: 'clockBlocks',
  source: 'Danne 2017, Diabetes Care 40:1631-1640 ({sleep-and-wake})',
  unit: '%',
  definition: { nightEnd: NIGHT_END },
  compute({ every }) {
    const night = partOf(every, (i) => every.minuteOfDay[i]! < NIGHT_END);
    const day = partOf(every, (i) => every.minuteOfDay[i]! >= NIGHT_END);
    if (night === null && day === null) return { ok: false, why: 'no-readings' };
    return { ok: true, value: underNames(['sleep', 'wake'], [night, day]), n: every.mgdl.length, of: 'readings' };
  },
};

/** Monday to Friday beside Saturday and Sunday, without a verdict: a fortnight holds four days of weekend. */
export const weekParts: Index<Record<string, number>> = {
  id: 'weekParts',
  source: 'Daybands',
  unit: '%',
  definition: {},
  compute({ every, weekend }) {
    const week = partOf(every, (i) => !weekend[every.day[i]!]!);
    const end = partOf(every, (i) => weekend[every.day[i]!]!);
    if (week === null || end === null) return { ok: false, why: 'too-few-days' };
    return { ok: true, value: underNames(['weekdays', 'weekend'], [week, end]), n: every.mgdl.length, of: 'readings' };
  },
};
