import { factsOf } from '../comparing/thenAndNow.ts';
import type { PeriodSums } from '../model/thenAndNow.ts';
import type { Visit, VisitRow } from '../model/visits.ts';
import { DAY_MS, midnightOf } from '../time/calendar.ts';
import { LEAST_VISITS, LEVEL, trendOf } from '../visits/trend.ts';
import { periodSums } from './daySums.ts';
import type { Measure } from './measure.ts';
import { visitNumbers } from './visitNumbers.ts';

/** Every visit in a row, and the one trend over them. */
export const visitByVisit: Measure<'visitByVisit'> = {
  id: 'visitByVisit',
  source: 'Birge 1932, Phys Rev 40:207-227 ({from-memory}); Kendall 1954; Daybands',
  needs: {},
  definition: { level: LEVEL, visits: LEAST_VISITS },
  compute(shared) {
    const { earlier } = shared.visits;
    if (earlier.length === 0) return { ok: false, why: 'not-asked' };
    const now = periodSums(shared);
    const all = [...earlier, { sums: now, numbers: visitNumbers(shared), agreed: null }];
    const rows = all.map((one, i) => row(one, all[i - 1]?.sums, now));
    return {
      ok: true,
      value: { rows, trend: trendOf(comparable(all, now)) },
      n: rows.reduce((sum, { days }) => sum + days, 0),
      of: 'days',
    };
  },
};

/** Shares of the time under other limits are other shares. */
const comparable = (all: { sums: PeriodSums }[], now: PeriodSums): PeriodSums[] =>
  all.map(({ sums }) => sums).filter(({ targets }) => targets === now.targets);

function row(
  { sums, numbers, agreed }: Pick<Visit, 'sums' | 'numbers' | 'agreed'>,
  before: PeriodSums | undefined,
  now: PeriodSums,
): VisitRow {
  const { from, to, days, fullDays, share } = factsOf(sums);
  const pause = before && (midnightOf(from) - midnightOf(before.days.at(-1)!.date)) / DAY_MS - 1;
  return {
    from,
    to,
    days,
    fullDays,
    share,
    pauseDays: pause === undefined ? null : Math.max(0, pause),
    differs: (['interval', 'targets', 'unit'] as const).filter((what) => sums[what] !== now[what]),
    numbers,
    agreed,
  };
}
