import { absent } from '../findings/finding.ts';
import type { FindingId, Found } from '../findings/index.ts';
import type { Evidence } from '../model/look.ts';

interface Rule {
  /** What gives way, and to which findings, so that no paper says two things that cannot both be meant. */
  yields: FindingId;
  to: readonly FindingId[];
  /** Only where both are told of the same part of the day. */
  sameWindow?: boolean;
  /** Only to this variant of them. */
  variant?: string;
}

/** Safety goes before praise, an event before its absence, a change told before "may be chance". */
export const CONTRADICTIONS: readonly Rule[] = [
  {
    yields: 'no-lows-seen',
    to: ['very-low', 'lows-seen', 'long-lows', 'lows-at-night', 'brief-lows', 'lows-clustered'],
  },
  { yields: 'brief-lows', to: ['very-low', 'lows-seen'] },
  { yields: 'steady-nights', to: ['very-low', 'lows-at-night', 'overnight-fall', 'dawn-rise', 'nights-without-data'] },
  { yields: 'best-window', to: ['lows-clustered', 'high-after-window'], sameWindow: true },
  // A sensor that stood still for most of the time shows nothing that went well.
  ...(['no-lows-seen', 'steady-nights', 'best-window', 'best-days'] as const).map((yields) => ({
    yields,
    to: ['standing-still'] as const,
    variant: 'most',
  })),
  { yields: 'change-not-told', to: ['changed-lows', 'changed-range'] },
];

/** What was found, without statements that others contradict: those are absent. Lows give way to nothing. */
export function settled(found: readonly Found[]): Found[] {
  const held = (id: FindingId) => found.find((one) => one.id === id && one.look.case === 'holds')?.look;
  return found.map((one) => {
    const { look } = one;
    if (look.case !== 'holds') return one;
    const gives = CONTRADICTIONS.some(
      ({ yields, to, sameWindow, variant }) =>
        yields === one.id &&
        to.some((id) => {
          const other = held(id);
          return (
            other?.case === 'holds' &&
            (variant === undefined || other.variant === variant) &&
            (!sameWindow || overlap(look.where, other.where))
          );
        }),
    );
    return gives ? { ...one, look: absent } : one;
  });
}

/** Whether two statements speak of the same minutes of the clock, on whatever days. */
function overlap(a: readonly Evidence[], b: readonly Evidence[]): boolean {
  return a.some(({ fromMinute: f = 0, toMinute: t = 1440 }) =>
    b.some(({ fromMinute = 0, toMinute = 1440 }) => f < toMinute && fromMinute < t),
  );
}
