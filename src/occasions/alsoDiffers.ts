import type { AlsoDiffers, Noted } from '../model/occasions.ts';

/** Differing by less than this share of the occasions is not named (ours). */
const LEAST = 1 / 3;

/** What stands beside each occasion of one side. */
export type BesideEach = readonly (readonly Noted[])[];

/**
 * The note that differs most between the occasions of two sides; null when none differs by a third. Alarms follow
 * glucose and are none. Of equals the first in order of names, so that the same log names the same.
 */
export function alsoDiffers(
  first: BesideEach,
  second: BesideEach,
  without: readonly Noted['id'][],
): AlsoDiffers | null {
  const keys = new Map<string, Noted>();
  for (const noted of [...first, ...second].flat())
    if (noted.id !== 'alarm' && !without.includes(noted.id))
      keys.set(`${noted.id} ${noted.name}`, { id: noted.id, name: noted.name });
  const times = (side: BesideEach, key: string) => ({
    k: side.filter((all) => all.some(({ id, name }) => `${id} ${name}` === key)).length,
    n: side.length,
  });
  if (Math.min(first.length, second.length) === 0) return null;
  let best: AlsoDiffers | null = null;
  for (const [key, noted] of [...keys].sort(([one], [other]) => (one < other ? -1 : 1))) {
    const one = { ...noted, a: times(first, key), b: times(second, key) };
    if (differenceOf(one) >= LEAST && (best === null || differenceOf(one) > differenceOf(best))) best = one;
  }
  return best;
}

const differenceOf = ({ a, b }: AlsoDiffers): number => Math.abs(a.k / a.n - b.k / b.n);
