import type { Facts, Outcome, Reason, Tier, WorklistLine } from '../model/clinic.ts';
import type { Thresholds } from '../schemas/thresholds.ts';
import { daysBetween } from '../time/calendar.ts';
import { reasonsOf } from './reasons.ts';
import { NOTHING, severityOf } from './severity.ts';
import { FLAGGED, TIERS } from './tiers.ts';

/** Visits in a row with nothing to tell, this one among them, after which a person stands last. Ours. */
const IN_A_ROW = 3;
/** Days between the ends of two periods, so that one visit does not count twice. Ours. */
const BETWEEN = 7;

/** Which tier a person stands in, all reasons for it, and how much presses. */
export function place(outcome: Outcome, thresholds: Thresholds): WorklistLine {
  const { facts } = outcome;
  if (!facts) {
    const reasons = outcome.refusals.map((said): Reason => ({ tier: 'unread', ...said }));
    return { tier: 'unread', reasons, severity: NOTHING, number: 0, outcome };
  }
  const reasons = reasonsOf(facts, thresholds);
  const tier = reasons[0]?.tier ?? 'steady';
  const last = tier === 'steady' && isQuiet([facts, ...(outcome.before ?? [])], thresholds) ? 'quiet' : tier;
  return { tier: last, reasons, severity: severityOf(facts), number: 0, outcome };
}

function isQuiet(visits: readonly Facts[], thresholds: Thresholds): boolean {
  const row = visits.slice(0, IN_A_ROW);
  const isSteady = (facts: Facts): boolean => (reasonsOf(facts, thresholds)[0]?.tier ?? 'steady') === 'steady';
  return (
    row.length === IN_A_ROW &&
    row.every(({ to }, i) => i === 0 || daysBetween(to, row[i - 1]!.to) >= BETWEEN) &&
    row.every(isSteady)
  );
}

/**
 * Everybody in one order: who could not be read, then who is to be looked at by severity, whatever the group, then the steady.
 * Of the same points the graver group first, then the longer time very low, then the longer time low, then by code. Nobody is left out or told twice.
 */
export function rank(outcomes: readonly Outcome[], thresholds: Thresholds): WorklistLine[] {
  return outcomes
    .map((outcome) => place(outcome, thresholds))
    .sort(
      (a, b) =>
        part(a) - part(b) ||
        b.severity.points - a.severity.points ||
        TIERS.indexOf(a.tier) - TIERS.indexOf(b.tier) ||
        finer(b) - finer(a) ||
        compareCodes(a.outcome.code, b.outcome.code),
    )
    .map((line, i) => ({ ...line, number: i + 1 }));
}

const part = ({ tier }: WorklistLine): number =>
  tier === 'unread' ? 0 : FLAGGED.includes(tier) ? 1 : tier === 'steady' ? 2 : 3;

const finer = ({ outcome: { facts } }: WorklistLine): number =>
  1000 * (facts?.shares?.veryLow ?? 0) + (facts?.below ?? 0);

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

/** P-2 before P-10, the same on every machine. */
const collator = new Intl.Collator('en', { numeric: true });
export const compareCodes = (a: string, b: string): number => collator.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
