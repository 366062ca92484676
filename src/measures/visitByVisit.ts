import type { PeriodSums } from '../model/thenAndNow.ts';
import type { Visit, VisitNumbers, VisitRow } from '../model/visits.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
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
    const all = [...earlier.map(rowOf), { sums: now, numbers: visitNumbers(shared), agreed: null }];
    const rows = all.map((one, i) => row(one, all[i - 1]?.sums, now));
    return {
      ok: true,
      value: { rows, trend: trendOf(comparable(all, now)) },
      n: rows.reduce((sum, { days }) => sum + days, 0),
      of: 'days',
    };
  },
};

const rowOf = ({ sums, numbers, agreed }: Visit) => ({ sums, numbers, agreed });

/** Shares of the time under other limits are other shares. */
const comparable = (all: { sums: PeriodSums }[], now: PeriodSums): PeriodSums[] =>
  all.map(({ sums }) => sums).filter(({ targets }) => targets === now.targets);

function row(
  { sums, numbers, agreed }: { sums: PeriodSums; numbers: VisitNumbers; agreed: VisitRow['agreed'] },
  before: PeriodSums | undefined,
  now: PeriodSums,
): VisitRow {
  const { days } = sums;
  const [from, to] = [days[0]!.date, days.at(-1)!.date];
  const length = days.reduce((sum, day) => sum + day.length, 0);
  const pause = before && (midnightOf(from) - midnightOf(before.days.at(-1)!.date)) / DAY_MS - 1;
  return {
    from,
    to,
    days: days.length,
    fullDays: days.filter((day) => day.minutes >= SEEN_SHARE * day.length).length,
    share: days.reduce((sum, day) => sum + Math.min(day.length, day.minutes), 0) / length,
    pauseDays: pause === undefined ? null : Math.max(0, pause),
    differs: (['interval', 'targets', 'unit'] as const).filter((what) => sums[what] !== now[what]),
    numbers,
    agreed,
  };
}
