import type { FindingId, Found } from '../findings/index.ts';
import type { Below } from '../model/words.ts';

/** What to talk about, and the rule that chose it; the rule's words are `findings.rules.<rule>`. */
export interface Topic {
  id: FindingId;
  rule: Below<'findings.rules'>;
}

interface Ranked extends Topic {
  /** Only when the finding holds in this way. */
  variant?: string;
}

/** Lows before data, data before highs, highs before spread: published reading orders put safety first. */
const ORDER: readonly Ranked[] = [
  { id: 'very-low', rule: 'very-low-first' },
  { id: 'long-lows', rule: 'lows-first' },
  { id: 'lows-at-night', rule: 'lows-first', variant: 'repeated' },
  { id: 'lows-clustered', rule: 'lows-first' },
  { id: 'time-low-over-goal', rule: 'lows-first' },
  { id: 'lows-averages-hide', rule: 'lows-first' },
  { id: 'not-enough-data', rule: 'data-before-highs' },
  { id: 'nights-without-data', rule: 'data-before-highs' },
  { id: 'long-very-high', rule: 'highs-after-lows' },
  // A single low is printed first, yet is no reason to pass over highs that lasted for hours (ours).
  { id: 'lows-at-night', rule: 'single-low', variant: 'once' },
  { id: 'lows-seen', rule: 'single-low' },
  { id: 'high-after-window', rule: 'highs-after-lows' },
  { id: 'rebound-after-lows', rule: 'highs-after-lows' },
  { id: 'dawn-rise', rule: 'highs-after-lows' },
  { id: 'time-in-range', rule: 'highs-after-lows', variant: 'missed' },
  { id: 'wide-spread', rule: 'spread-last' },
  { id: 'cv-over-limit', rule: 'spread-last' },
  { id: 'best-window', rule: 'repeat-what-works' },
  { id: 'best-days', rule: 'repeat-what-works' },
];

/**
 * One topic for the visit, so that the effect of a change can be seen (Szmuilowicz & Aleppo 2022, Postgrad Med
 * 134:743-751); a second one only beside a very low glucose. None when no finding of the list holds.
 */
export function topics(found: readonly Found[]): Topic[] {
  const [first, second] = ORDER.filter(({ id, variant }) =>
    found.some(
      (one) => one.id === id && one.look.case === 'holds' && (variant ?? one.look.variant) === one.look.variant,
    ),
  ).map(({ id, rule }) => ({ id, rule }));
  if (!first) return [];
  return first.id === 'very-low' && second && second.rule !== 'repeat-what-works'
    ? [first, { ...second, rule: 'second-beside-very-low' }]
    : [first];
}
