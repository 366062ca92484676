import { mgPerDl } from '../units.ts';
import { stretchFrom } from './evidence/places.ts';
import { count, date, glucose, minutes, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, quiet } from './finding.ts';

/** From half of the time with readings on, nothing that went well can be told of the rest (ours). */
const MOST = 0.5;

/** Half a day and more at one value or beyond one end of the sensor: sensor, place or export may have stood still. */
export const standingStill: Finding<'standing-still'> = {
  id: 'standing-still',
  source: 'ours',
  look({ oddStretches }) {
    if (!oddStretches.ok) return quiet(oddStretches.why);
    const { still, stillShare } = oddStretches.value;
    const [first] = still;
    if (first === undefined) return absent;
    const longest = still.reduce((most, one) => (one.minutes > most.minutes ? one : most), first);
    return holds(
      {
        side: word(longest.side),
        value: glucose(longest.value ?? mgPerDl(0)),
        length: minutes(longest.minutes),
        span: word(longest.date === longest.toDate ? 'day' : 'days'),
        from: date(longest.date),
        to: date(longest.toDate),
        more: count(still.length - 1),
      },
      still.map((one) => stretchFrom(one, one.minutes)),
      stillShare >= MOST ? 'most' : 'part',
    );
  },
};
