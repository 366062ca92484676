import { DAY_MS } from '../time/calendar.ts';
import { beginningOf } from './evidence/episodes.ts';
import { count } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

/** Lows that began in the first 24 hours of a sensor, when it can be less exact. They stay in every count. */
export const lowsOnFirstDay: Finding<'lows-on-first-day'> = {
  id: 'lows-on-first-day',
  source: 'ours (less exact on the first day: from memory)',
  look({ lows, sensors }) {
    if (!lows.ok) return quiet(lows.why);
    if (!sensors.ok) return quiet(sensors.why);
    const starts = sensors.value.worn.filter(({ begun }) => begun).map(({ from }) => from);
    const early = lows.value.list.filter(({ start }) => starts.some((from) => start >= from && start < from + DAY_MS));
    if (early.length === 0) return absent;
    return holds(
      { count: count(early.length), lows: count(lows.value.list.length), sensors: count(starts.length) },
      early.flatMap(beginningOf),
    );
  },
};
