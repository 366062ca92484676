import { statisticOf } from '../comparing/statistics.ts';
import { drawDays } from '../stats/resample.ts';
import { statisticInterval } from '../stats/statisticInterval.ts';
import { daySums } from './daySums.ts';
import { DRAWS, fullDays, INTERVAL_DAYS, LEVEL, SEED, WHOLE_DAYS } from './estimate.ts';
import type { Measure } from './measure.ts';

/** The coefficient of variation with its interval. Fourteen days are short for it: a review of 2023 asks for 28 to 35. */
export const cvRange: Measure<'cvRange'> = {
  id: 'cvRange',
  source: 'Monnier 2017, Diabetes Care 40:832-838; doi 10.1089/dia.2023.0476 ({four-to-five-weeks}); Daybands',
  needs: { days: INTERVAL_DAYS },
  definition: { level: LEVEL, method: WHOLE_DAYS },
  compute(shared) {
    if (fullDays(shared) < INTERVAL_DAYS) return { ok: false, why: 'too-few-days' };
    const days = daySums(shared).filter(({ known }) => known > 0);
    if (days.length < INTERVAL_DAYS) return { ok: false, why: 'bound-unknown' };
    const statistic = statisticOf('cv', days);
    const interval = statisticInterval(statistic, drawDays(days.length, DRAWS, SEED, LEVEL));
    const value = statistic.of(statistic.columns.map((column) => column.reduce((sum, each) => sum + each, 0)));
    return {
      ok: true,
      value: {
        value,
        low: interval?.low ?? null,
        high: interval?.high ?? null,
        level: LEVEL,
        method: WHOLE_DAYS,
        days: days.length,
      },
      n: days.length,
      of: 'days',
    };
  },
};
