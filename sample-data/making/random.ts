/** Chance with a seed, so that the same story always comes out with the same bytes. */
export interface Random {
  /** 0 <= x < 1. */
  uniform(): number;
  between(low: number, high: number): number;
  /** Mean 0, standard deviation 1. */
  normal(): number;
  chance(share: number): boolean;
  pick<T>(list: readonly T[]): T;
}

/** A 32-bit generator with additive state and two mixing rounds (the public-domain "mulberry32", from memory). */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  // Sum of twelve uniforms: near enough to normal here, and it needs no logarithm, so no platform can differ in a bit.
  const normal = (): number => {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += uniform();
    return sum;
  };
  return {
    uniform,
    normal,
    between: (low, high) => low + (high - low) * uniform(),
    chance: (share) => uniform() < share,
    pick: (list) => list[Math.floor(uniform() * list.length)]!,
  };
}
