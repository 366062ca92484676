import { count } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

const LEAST = 3;

/** Alarms are noted, yet beside fewer than half of the lows. An alarm that was not noted may still have sounded. */
export const lowsWithoutAlarm: Finding<'lows-without-alarm'> = {
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
};
