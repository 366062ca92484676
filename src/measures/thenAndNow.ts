import { compare, DRAWS, LEVEL, NEEDED_DAYS, NEEDED_EVEN } from '../comparing/thenAndNow.ts';
import type { PeriodSums } from '../model/thenAndNow.ts';
import { comparedTo } from './comparedTo.ts';
import { periodSums } from './daySums.ts';
import type { Measure } from './measure.ts';

/** This period beside an earlier one, an earlier visit, or itself before a marked change. */
export const thenAndNow: Measure<'thenAndNow'> = {
  id: 'thenAndNow',
  source:
    'Battelino 2019, Diabetes Care 42:1593-1603 ({five-points}); Politis & Romano 1992; Zou & Donner 2008 ({from-memory}); Daybands',
  needs: { days: NEEDED_DAYS },
  definition: { level: LEVEL, draws: DRAWS, days: NEEDED_DAYS, evenDays: NEEDED_EVEN },
  compute(shared) {
    const { comparedWith } = shared;
    if (comparedWith === null) return { ok: false, why: 'not-asked' };
    if (comparedWith.with !== 'change') {
      if (comparedWith.before === null) return { ok: false, why: 'no-earlier-readings' };
      const compared = comparedTo(shared, comparedWith.before);
      return compared.ok ? { ...compared, value: { with: comparedWith.with, text: '', ...compared.value } } : compared;
    }
    const all = periodSums(shared);
    const side = (isThen: boolean): PeriodSums => ({
      ...all,
      sensors: sensorsWorn(shared.timeline, comparedWith.date, isThen),
      days: all.days.filter(({ date }) => date < comparedWith.date === isThen),
    });
    const [before, now] = [side(true), side(false)];
    if (before.days.length === 0 || now.days.length === 0) return { ok: false, why: 'no-earlier-readings' };
    const compared = compare(before, now);
    return compared.ok
      ? { ...compared, value: { with: 'change', text: comparedWith.text, ...compared.value } }
      : compared;
  },
};

/** Sensors worn before a day, or from it on. */
function sensorsWorn(
  { spells, days }: { spells: { from: number; to: number }[]; days: { date: string; start: number }[] },
  date: string,
  before: boolean,
): number {
  const start = days.find((day) => day.date >= date)?.start ?? Number.POSITIVE_INFINITY;
  return spells.filter(({ from, to }) => (before ? from < start : to >= start)).length;
}
