import type { PageContext } from '../context.ts';

/** One sheet is enough where fewer than 72 hours were read, or no night can be told (72 h: Battelino 2019, as coverage has it). */
export function isThin({ analysis }: PageContext): boolean {
  const { coverage, nights } = analysis.measures;
  const night = nights.ok && nights.value.some(({ state }) => state !== 'unknown');
  return !coverage.ok || !coverage.value.reached72h || !night;
}
