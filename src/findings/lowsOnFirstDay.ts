import { DAY_MS } from '../time/calendar.ts';
import { lowsLike } from './episodeExamples.ts';
import { beginningOf } from './episodes.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';
import { count } from './quantities.ts';
import { sensorsLike } from './trustExamples.ts';

/** Lows that began in the first 24 hours of a sensor, when it can be less exact. They stay in every count. */
export const lowsOnFirstDay: Finding = {
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
  examples: [
    ['a low in hour 10', { lows: lowsLike({}), sensors: sensorsLike(0) }, 'holds'],
    [
      'a low in hour 24',
      { lows: lowsLike({ startMinute: 0, date: '2024-01-02' as never }), sensors: sensorsLike(0) },
      'absent',
    ],
    ['no new sensor', { lows: lowsLike({}), sensors: sensorsLike() }, 'absent'],
    ['no readings', { lows: { ok: false, why: 'no-readings' } }, 'untold'],
  ],
};
