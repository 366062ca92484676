import type { Note, Timeline } from '../model/timeline.ts';
import type { Fingersticks, GridZone, StickPair } from '../model/trust.ts';
import { meanOf } from '../stats/moments.ts';
import { median } from '../stats/quantile.ts';
import { firstFrom } from '../stats/sorted.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { mgPerDl, toMgPerDl } from '../units.ts';
import { gridZone } from './consensusGrid.ts';
import type { Measure } from './measure.ts';
import { hoursWorn } from './sensors.ts';

const NEAR = 5;
const NEAR_SLOW = 15;
/** From here on per cent count, below it mg/dL (ISO 15197:2013; for 20/20 papers differ). */
export const SWITCH = 100;
const MOST = 1000;

/**
 * Fingersticks beside the sensor reading nearest in time: within 5 minutes, or 15 where the sensor reads every 15. No
 * value between readings is made up, a reading is used once, readings at the sensor's limit and calibrations not at all.
 */
export const fingersticks: Measure<'fingersticks'> = {
  id: 'fingersticks',
  source: 'ISO 15197:2013 (15/15); Parkes 2000, Diabetes Care 23:1143-1148 ({borders-from-memory}); {pairing-ours}',
  needs: {},
  definition: { near: NEAR, nearSlow: NEAR_SLOW, switch: SWITCH },
  compute({ timeline }) {
    const noted = timeline.notes.filter(isStick);
    if (noted.length === 0) return { ok: false, why: 'none-noted' };
    const pairs = pairUp(noted, timeline);
    if (pairs.length === 0) return { ok: false, why: 'no-pairs' };
    return {
      ok: true,
      value: { ...agreement(pairs), noted: noted.length, alone: noted.length - pairs.length },
      n: pairs.length,
      of: 'pairs',
    };
  },
};

function isStick({ kind, timed, amount, unit }: Note): boolean {
  return (
    kind === 'fingerstick' &&
    timed &&
    amount !== undefined &&
    amount > 0 &&
    amount < MOST &&
    (unit === undefined || unit === 'mg/dL' || unit === 'mmol/L')
  );
}

function pairUp(noted: readonly Note[], timeline: Timeline): StickPair[] {
  const { readings, interval, unit: usual } = timeline;
  const near = (interval >= NEAR_SLOW ? NEAR_SLOW : NEAR) * MINUTE_MS;
  const used = new Set<number>();
  return noted.flatMap((note) => {
    const i = nearest(readings.at, readings.count, note.at, near, (k) => readings.limit[k] === 0 && !used.has(k));
    if (i < 0) return [];
    used.add(i);
    const finger = toMgPerDl(note.amount!, note.unit === 'mg/dL' || note.unit === 'mmol/L' ? note.unit : usual);
    const sensor = mgPerDl(readings.mgdl[i]!);
    const { date } = timeline.days[note.day]!;
    const zone = gridZone(finger, sensor);
    return [{ at: note.at, date, minute: note.minute, finger, sensor, hoursWorn: hoursWorn(timeline, note.at), zone }];
  });
}

/** Index of the allowed reading nearest in time, the earlier of two as near; -1 without one as near as `near`. */
function nearest(
  at: Float64Array,
  count: number,
  wanted: number,
  near: number,
  allowed: (i: number) => boolean,
): number {
  let best = -1;
  for (let i = firstFrom(at, count, wanted - near); i < count && at[i]! <= wanted + near; i++) {
    if (!allowed(i)) continue;
    if (best < 0 || Math.abs(at[i]! - wanted) < Math.abs(at[best]! - wanted)) best = i;
  }
  return best;
}

type Agreement = Omit<Fingersticks, 'noted' | 'alone'>;

/** The figures over pairs, at least one. */
export function agreement(pairs: StickPair[]): Agreement {
  const differences = pairs.map(({ finger, sensor }) => sensor - finger);
  const relative = pairs.map(({ finger, sensor }) => Math.abs(sensor - finger) / finger);
  const within = (k: number) =>
    pairs.filter(({ finger, sensor }) => Math.abs(sensor - finger) <= (finger < SWITCH ? k : (k * finger) / 100) + 1e-9)
      .length / pairs.length;
  const zones: Record<GridZone, number> = { A: 0, B: 0, C: 0, D: 0, E: 0 };
  for (const { zone } of pairs) zones[zone]++;
  const known = pairs.some(({ hoursWorn }) => hoursWorn !== null);
  const later = pairs.flatMap(({ hoursWorn }, i) => (hoursWorn === null || hoursWorn >= 24 ? [relative[i]!] : []));
  return {
    pairs,
    mard: meanOf(relative),
    medianArd: median(relative),
    bias: meanOf(differences),
    relativeBias: meanOf(pairs.map(({ finger, sensor }) => (sensor - finger) / finger)),
    mad: meanOf(differences.map(Math.abs)),
    within15: within(15),
    within20: within(20),
    zones,
    afterFirstDay: known && later.length > 0 ? { pairs: later.length, mard: meanOf(later) } : null,
  };
}
