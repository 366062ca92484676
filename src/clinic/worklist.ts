import type { Facts, Outcome, Reason, Tier, WorklistLine } from '../model/clinic.ts';
import type { Thresholds } from '../schemas/thresholds.ts';
import { reasonsOf } from './reasons.ts';
import { TIERS } from './tiers.ts';

/** Which tier a person stands in, and all reasons for it. */
export function place(outcome: Outcome, thresholds: Thresholds): WorklistLine {
  if (!outcome.facts) {
    const reasons = outcome.refusals.map((said): Reason => ({ tier: 'unread', ...said }));
    return { tier: 'unread', reasons, outcome };
  }
  const reasons = reasonsOf(outcome.facts, thresholds);
  return { tier: reasons[0]?.tier ?? 'steady', reasons, outcome };
}

/** Everybody, the most pressing first; within a tier the graver first, then by code. Nobody is left out or told twice. */
export function rank(outcomes: readonly Outcome[], thresholds: Thresholds): WorklistLine[] {
  return outcomes
    .map((outcome) => place(outcome, thresholds))
    .sort(
      (a, b) =>
        TIERS.indexOf(a.tier) - TIERS.indexOf(b.tier) ||
        gravity(b) - gravity(a) ||
        compareCodes(a.outcome.code, b.outcome.code),
    );
}

/** By day and time of the visit, those without one last; who comes at the same time in the order there was. */
export const byVisit = (lines: readonly WorklistLine[]): WorklistLine[] =>
  lines
    .map((line) => ({
      line,
      at: line.outcome.visit === null ? '~' : `${line.outcome.visit} ${line.outcome.time ?? '~'}`,
    }))
    .sort((a, b) => Number(a.at > b.at) - Number(a.at < b.at))
    .map(({ line }) => line);

/** How many people stand in each tier. */
export function countTiers(lines: readonly WorklistLine[]): Record<Tier, number> {
  const counts = Object.fromEntries(TIERS.map((tier) => [tier, 0])) as Record<Tier, number>;
  for (const { tier } of lines) counts[tier]++;
  return counts;
}

/** Within its tier only: more is graver. */
function gravity({ tier, outcome: { facts } }: WorklistLine): number {
  return facts ? GRAVITY[tier](facts) : 0;
}

const GRAVITY: Record<Tier, (facts: Facts) => number> = {
  unread: () => 0,
  'very-low': ({ shares, lows }) => (lows?.level2 ?? 0) + (shares?.veryLow ?? 0),
  'long-high': ({ highs }) => highs?.longestLevel2 ?? 0,
  lows: ({ below }) => below ?? 0,
  'very-high': ({ shares }) => shares?.veryHigh ?? 0,
  worse: () => 0,
  'not-enough': ({ coverage }) => -coverage.hours,
  steady: ({ below }) => below ?? 0,
};

/** P-2 before P-10, the same on every machine. */
const collator = new Intl.Collator('en', { numeric: true });
export const compareCodes = (a: string, b: string): number => collator.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
