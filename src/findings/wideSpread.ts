import type { MgPerDl } from '../model/glucose.ts';
import { median } from '../stats/quantile.ts';
import { clock, count, glucose, rise } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

const TIMES_USUAL = 1.5;

/**
 * The time of day at which days differ most: the middle half of them spreads 1.5 times as wide as it usually does, and
 * reaches out of range. Wholly in range, it asks for nothing (98 to 130 mg/dL was told of a person at 99 % in range).
 */
export const wideSpread: Finding<'wide-spread'> = {
  id: 'wide-spread',
  source: 'ours; middle half by percentiles of type 7 (Hyndman & Fan 1996, Am Stat 50:361-365)',
  look({ modalDay }, { limits }) {
    if (!modalDay.ok) return untold(modalDay.why);
    const known = modalDay.value.bins.flatMap(({ minute, p25, p75 }) =>
      p25 === null || p75 === null ? [] : [{ minute, p25, p75, width: p75 - p25 }],
    );
    if (known.length === 0) return untold('too-few-readings');
    const widest = known.reduce((a, b) => (b.width > a.width ? b : a));
    const usual = median(known.map(({ width }) => width));
    if (widest.width < TIMES_USUAL * usual || widest.width === 0) return absent;
    const { low, high } = limits['mg/dL'];
    if (widest.p25 >= low && widest.p75 <= high) return absent;
    return holds(
      {
        at: clock(widest.minute),
        low: glucose(widest.p25 as MgPerDl),
        high: glucose(widest.p75 as MgPerDl),
        width: rise(widest.width),
        usual: rise(usual),
        days: count(modalDay.n),
      },
      [],
    );
  },
};
