import type { MgPerDl } from '../model/glucose.ts';
import { median } from '../stats/quantile.ts';
import { modalDayLike } from './examples.ts';
import { absent, type Finding, holds, untold } from './finding.ts';
import { clock, count, glucose, rise } from './quantities.ts';

const TIMES_USUAL = 1.5;

/** The time of day at which days differ most: the middle half of them spreads 1.5 times as wide as it usually does. */
export const wideSpread: Finding = {
  id: 'wide-spread',
  source: 'ours; middle half by percentiles of type 7 (Hyndman & Fan 1996, Am Stat 50:361-365)',
  look({ modalDay }) {
    if (!modalDay.ok) return untold(modalDay.why);
    const known = modalDay.value.bins.flatMap(({ minute, p25, p75 }) =>
      p25 === null || p75 === null ? [] : [{ minute, p25, p75, width: p75 - p25 }],
    );
    if (known.length === 0) return untold('too-few-readings');
    const widest = known.reduce((a, b) => (b.width > a.width ? b : a));
    const usual = median(known.map(({ width }) => width));
    if (widest.width < TIMES_USUAL * usual || widest.width === 0) return absent;
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
  examples: [
    ['1.5 times as wide at 19:00', { modalDay: modalDayLike(100, { 19: 75 }) }, 'holds'],
    ['1.48 times as wide', { modalDay: modalDayLike(100, { 19: 74 }) }, 'absent'],
    ['too few days', { modalDay: { ok: false, why: 'too-few-days' } }, 'untold'],
  ],
};
