import { choice, count, limit, share, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

/**
 * A goal that was met then and is not met now, or the other way, where both periods hold 14 days and 70 % of their time;
 * what is no longer met first, and lows before highs.
 */
export const goalsThenAndNow: Finding<'goals-then-and-now'> = {
  id: 'goals-then-and-now',
  source: 'goals, and 14 days to judge them: Battelino 2019, Diabetes Care 42:1593-1603; then and now: ours',
  look({ thenAndNow }) {
    if (!thenAndNow.ok) return quiet(thenAndNow.why);
    const { goals, changes } = thenAndNow.value;
    const lost = goals.filter(({ metBefore, metNow }) => metBefore && !metNow);
    const won = goals.filter(({ metBefore, metNow }) => !metBefore && metNow);
    const [first, ...others] = [...lost, ...won];
    if (!first) return absent;
    const verdict = changes.find(({ of }) => of === first.of)?.verdict ?? 'cannot-tell';
    return holds(
      {
        of: choice(first.of),
        way: word(first.metNow ? 'now' : 'then'),
        before: share(first.before, first.share),
        now: share(first.now, first.share),
        goal: share(first.share),
        from: limit('low'),
        to: limit('high'),
        limit: limit(first.of === 'in-range' ? 'high' : first.of),
        sure: word(verdict === 'more-than-noise' ? 'yes' : 'no'),
        more: count(others.length),
      },
      [],
      first.metNow ? 'now' : 'then',
    );
  },
};
