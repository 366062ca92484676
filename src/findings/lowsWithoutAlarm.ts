import { absent, type Finding, holds, quiet } from './finding.ts';
import { count } from './quantities.ts';
import { alarmsLike } from './trustExamples.ts';

const LEAST = 3;

/** Alarms are noted, yet beside fewer than half of the lows. An alarm that was not noted may still have sounded. */
export const lowsWithoutAlarm: Finding = {
  id: 'lows-without-alarm',
  source: 'ours',
  look({ alarms }) {
    if (!alarms.ok) return quiet(alarms.why);
    const { lows, lowsWith, noted } = alarms.value;
    if (lows < LEAST || lowsWith * 2 >= lows) return absent;
    return holds(
      { lows: count(lows), lowsWith: count(lowsWith), without: count(lows - lowsWith), noted: count(noted) },
      [],
    );
  },
  examples: [
    ['1 of 3 lows', { alarms: alarmsLike([1], 1, 3) }, 'holds'],
    ['2 of 4 lows', { alarms: alarmsLike([1], 2, 4) }, 'absent'],
    ['2 lows', { alarms: alarmsLike([1], 0, 2) }, 'absent'],
    ['none noted', { alarms: { ok: false, why: 'none-noted' } }, 'absent'],
  ],
};
