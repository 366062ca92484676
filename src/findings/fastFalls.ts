import { WINDOW } from '../measures/rates.ts';
import { stretchFrom } from './evidence/places.ts';
import { clock, dates, glucose, minutes, rise, share } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

const LEAST_SHARE = 0.01;
const FAST = 2;

/** One per cent of the time or more glucose fell by over 2 mg/dL a minute. Told as from what to what, never as an arrow. */
export const fastFalls: Finding<'fast-falls'> = {
  id: 'fast-falls',
  source: '2 mg/dL a minute widely used (from memory); how much of the time: ours',
  look({ rates }) {
    if (!rates.ok) return quiet(rates.why);
    const { falling, largest } = rates.value;
    if (falling.over2 < LEAST_SHARE || largest === null) return absent;
    return holds(
      {
        share: share(falling.over2),
        fast: rise(FAST * WINDOW),
        window: minutes(WINDOW),
        date: dates([largest.date]),
        at: clock(largest.minute),
        from: glucose(largest.from, largest.limits.from),
        to: glucose(largest.to, largest.limits.to),
        length: minutes(largest.minutes),
      },
      [stretchFrom(largest, WINDOW)],
    );
  },
};
