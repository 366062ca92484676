import type { Facts, Reason, Tier } from '../model/clinic.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Below, Filled } from '../model/words.ts';
import type { Thresholds } from '../schemas/thresholds.ts';

const count = (value: number): Quantity => ({ q: 'count', value });
/** A date in a list is the shorter for being one of many: so many are named, the rest stand in the papers. */
const NAMED = 4;

function on(dates: readonly LocalDate[]) {
  const named: Quantity = { q: 'dates', value: dates.slice(0, NAMED) };
  return { dates: named, more: count(Math.max(0, dates.length - NAMED)) };
}

/** Everything about a person that passes a threshold, in order of tiers. Values are compared unrounded. */
export function reasonsOf(facts: Facts, { veryLow, lows, veryHigh, data }: Thresholds): Reason[] {
  const reasons: Reason[] = [];
  const add = <Code extends Below<'clinic.reasons'>>(
    tier: Tier,
    code: Code,
    ...[params]: Filled<`clinic.reasons.${Code}`>
  ): void => {
    reasons.push({ tier, key: `clinic.reasons.${code}`, params: params ?? {} });
  };
  const share = (value: number | null, threshold: number | 'goals' | null, goal: Facts['unmet'][number]): boolean => {
    if (value === null || threshold === null) return false;
    return threshold === 'goals' ? facts.unmet.includes(goal) : value > threshold;
  };
  const shareOf = (value: number) => ({ share: { q: 'share', value } as const });

  if (facts.lows && veryLow.events !== null && facts.lows.level2 >= veryLow.events) {
    add('very-low', 'veryLowEvents', { n: count(facts.lows.level2), ...on(facts.lows.level2Dates) });
  }
  const veryLowShare = facts.shares?.veryLow ?? null;
  if (share(veryLowShare, veryLow.share, 'very-low')) add('very-low', 'veryLowShare', shareOf(veryLowShare!));
  if (facts.highs && veryHigh.minutes !== null && facts.highs.longestLevel2 >= veryHigh.minutes) {
    add('long-high', 'veryHighLong', { minutes: { q: 'minutes', value: facts.highs.longestLevel2 } });
  }
  if (share(facts.below, lows.share, 'low')) {
    add('lows', 'lowShare', { ...shareOf(facts.below!), n: count(facts.lows?.count ?? 0) });
  }
  if (facts.lows && lows.nightEvents !== null && facts.lows.night >= lows.nightEvents) {
    add('lows', 'nightLows', { n: count(facts.lows.night) });
  }
  const veryHighShare = facts.shares?.veryHigh ?? null;
  if (share(veryHighShare, veryHigh.share, 'very-high')) {
    add('very-high', 'veryHighShare', {
      ...shareOf(veryHighShare!),
      n: count(facts.highs?.level2 ?? 0),
      ...on(facts.highs?.level2Dates ?? []),
    });
  }
  for (const of of facts.change?.worse ?? []) add('worse', `worse.${of}`);
  // Shares of the time are told above; nights and days with a note are counts of their own.
  const went = facts.lastTime?.measure;
  if (went?.way === 'worse' && (went.of === 'nights-low' || went.of === 'after-note')) add('worse', `worse.${went.of}`);
  const few = data.days !== null && facts.coverage.days < data.days;
  const thin = data.share !== null && facts.coverage.share < data.share;
  if (few || thin) {
    add('not-enough', 'notEnough', {
      days: count(facts.coverage.days),
      of: count(facts.days),
      share: { q: 'share', value: facts.coverage.share },
    });
  }
  // Told wherever someone stands; by themselves they move nobody.
  if (facts.losses) add('steady', 'rowsLost', { lost: count(facts.losses.lost), of: count(facts.losses.of) });
  if (facts.missing && facts.missing.length > 0)
    add('steady', 'filesMissing', { files: { q: 'word', value: facts.missing.join(', ') } });
  return reasons;
}
