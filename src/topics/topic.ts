import type { FindingId, Found } from '../findings/index.ts';
import type { Measures } from '../model/measures.ts';
import type { TargetSet } from '../model/targets.ts';
import type { Furthest, TopicRow } from '../model/topics.ts';
import type { Below } from '../model/words.ts';
import { USUAL_ORDER } from './order.ts';

/** What to talk about, and the rule that chose it; the rule's words are `findings.rules.<rule>`. */
export interface Topic {
  id: FindingId;
  rule: Below<'findings.rules'>;
}

/**
 * One topic for the visit, so that the effect of a change can be seen (Szmuilowicz & Aleppo 2022, Postgrad Med
 * 134:743-751); a second one only beside a very low glucose. None when no finding of the list holds.
 */
export function topics(
  found: readonly Found[],
  furthest: Furthest | null,
  order: readonly TopicRow[] = USUAL_ORDER,
): Topic[] {
  const highs = furthest === 'far-highs' ? 'highs' : furthest;
  const rows = order.filter((row) => row.furthest === undefined || row.furthest === furthest || row.furthest === highs);
  const holding = rows.flatMap(({ topic, rule }): Topic[] => {
    const one = heldFor(found, topic);
    return one ? [{ id: one.id, rule: rule as Topic['rule'] }] : [];
  });
  const [first] = holding;
  if (!first) return [];
  // Beside a very low glucose nothing matters more than whether most of it was the sensor.
  const second =
    holding.find(({ id }) => id !== first.id && id === 'standing-still') ?? holding.find(({ id }) => id !== first.id);
  return first.id === 'very-low' && second && second.rule !== 'repeat-what-works'
    ? [first, { ...second, rule: 'second-beside-very-low' }]
    : [first];
}

/**
 * Every finding that could lead a visit and holds, in order, each with the first rule that would name it; what lies furthest beyond
 * its goal decides which of them does lead, and is no reason against the others.
 */
export function topicsToChoose(found: readonly Found[], order: readonly TopicRow[] = USUAL_ORDER): Topic[] {
  const all = order.flatMap(({ topic, rule }): Topic[] => {
    const one = heldFor(found, topic);
    return one ? [{ id: one.id, rule: rule as Topic['rule'] }] : [];
  });
  return all.filter(({ id }, i) => all.findIndex((other) => other.id === id) === i);
}

/** The finding of a row that holds, in the row's own way. */
function heldFor(found: readonly Found[], topic: string): Found | null {
  const [id, variant] = topic.split('/');
  const one = found.find((each) => each.id === id && each.look.case === 'holds');
  return one?.look.case === 'holds' && (variant === undefined || variant === one.look.variant) ? one : null;
}

/** Hours with readings from which a goal that is missed by far is believed, and by how much it is (ours; docs/decisions.md). */
const FAR = { hours: 48, points: 20 };

/**
 * What lies furthest beyond its goal, in points of a hundred: too little time in range, or too much above it, against
 * the spread over its limit (ours). Null where no goal is missed, or too little was seen to judge one; of equals, highs.
 * Highs 20 points beyond a goal in 48 hours or more are far, whether the period is judged or not.
 */
export function furthestFromGoal({ timeInBands, cv, coverage }: Measures, { cvLimit }: TargetSet): Furthest | null {
  if (!timeInBands.ok) return null;
  const { goals, exclusive, cumulative, judged } = timeInBands.value;
  const shares = {
    'in-range': exclusive['in-range'].value,
    high: cumulative.high.value,
    'very-high': exclusive['very-high'].value,
  };
  const beyond = goals.flatMap(({ of, share, met }) =>
    met || of === 'low' || of === 'very-low' ? [] : [100 * Math.abs(shares[of] - share)],
  );
  const highs = Math.max(0, ...beyond);
  const seen = coverage.ok ? coverage.value.hours : 0;
  if (highs >= FAR.points - 1e-9 && seen >= FAR.hours) return 'far-highs';
  if (!judged) return null;
  const spread = cv.ok && cvLimit !== null && coverage.ok && coverage.value.enough ? cv.value - cvLimit : 0;
  if (beyond.length === 0 && spread <= 0) return null;
  return beyond.length > 0 && highs >= spread ? 'highs' : 'spread';
}
