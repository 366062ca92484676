/** Gives numbers from 0 up to but not including 1. */
export type Chance = () => number;

/**
 * The mulberry32 generator (T. Ettinger, public domain): 32 bits of state, one multiply-and-mix a number. The same
 * seed gives the same numbers on every machine, so a report can be made again byte by byte.
 */
export function chance(seed: number): Chance {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
