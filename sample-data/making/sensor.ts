import type { Random } from './random.ts';

export interface Wear {
  /** Minutes since the story began at which a sensor was put on; the first may be negative. */
  puton: number[];
  /** Stretches without contact, minutes since the story began. */
  holes: { from: number; to: number }[];
  /** Lying on the sensor: the reading sinks by `depth` (a share) and comes back. */
  pressed: { from: number; to: number; depth: number }[];
  /** What the first day reads, as a share too high or too low. */
  firstDay: number;
  /** Standard deviation of the noise, mg/dL at 100. */
  noise: number;
}

export const STEP_MINUTES = 3;
const WARM_UP_MINUTES = 180;
/** The noise remembers itself between readings (autoregressive, after Facchinetti 2014; the figures are ours). */
const MEMORY = 0.88;

export interface Sensor {
  /** mg/dL as the sensor would tell it, or null when it tells nothing. */
  read(at: number, tissue: number): number | null;
}

/** A sensor that lags (the body's `tissue` already does), drifts, hums, starts biased, drops out and can be lain on. */
export function sensor(wear: Wear, random: Random): Sensor {
  let hum = 0;
  const gains = wear.puton.map(() => 0.02 * random.normal());
  return {
    read(at, tissue) {
      hum = MEMORY * hum + Math.sqrt(1 - MEMORY * MEMORY) * random.normal();
      const wobble = random.normal();
      let worn = -1;
      for (const [i, start] of wear.puton.entries()) if (at >= start) worn = i;
      const age = at - (wear.puton[worn] ?? Number.POSITIVE_INFINITY);
      if (!(age >= WARM_UP_MINUTES)) return null;
      if (wear.holes.some((hole) => at >= hole.from && at < hole.to)) return null;
      const bias = wear.firstDay * Math.max(0, 1 - age / 1440);
      let value = tissue * (1 + gains[worn]! + bias);
      value += wear.noise * (0.5 + tissue / 200) * (0.95 * hum + 0.2 * wobble);
      for (const { from, to, depth } of wear.pressed) {
        if (at < from || at >= to) continue;
        value *= 1 - depth * Math.min(1, (at - from) / 9, (to - at) / 9);
      }
      return Math.round(value);
    },
  };
}
