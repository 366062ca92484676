import { nightOf } from './evidence/places.ts';
import { count, dates } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

const LEAST_NIGHTS = 3;

/** Alarms are noted on three nights or more: sleep is a thing to ask about. */
export const alarmsAtNight: Finding<'alarms-at-night'> = {
  id: 'alarms-at-night',
  source: 'ours',
  look({ alarms }) {
    if (!alarms.ok) return quiet(alarms.why);
    const { nights } = alarms.value;
    if (nights.length < LEAST_NIGHTS) return absent;
    const most = nights.reduce((a, b) => (b.alarms > a.alarms ? b : a));
    return holds(
      {
        nights: count(nights.length),
        alarms: count(nights.reduce((sum, night) => sum + night.alarms, 0)),
        most: count(most.alarms),
        dates: dates(nights.map(({ date }) => date)),
      },
      nights.map(({ date }) => nightOf(date)),
    );
  },
};
