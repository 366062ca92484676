import type { Night } from '../model/measures.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { feltNights } from './evidence/felt.ts';
import { nightOf } from './evidence/places.ts';
import { clock, count, dates, glucose, limit, minutes, often, word } from './evidence/quantities.ts';
import { absent, type Finding, holds, untold } from './finding.ts';

/** Nights with any reading below the low limit. */
export const lowsAtNight: Finding<'lows-at-night'> = {
  id: 'lows-at-night',
  source: 'night: Danne 2017, Diabetes Care 40:1631-1640; counted by night: ours',
  look(measures) {
    const { nights } = measures;
    if (!nights.ok) return untold(nights.why);
    const low = nights.value.filter((night) => night.state === 'low' || night.state === 'very-low');
    const known = nights.value.filter((night) => night.state !== 'unknown');
    if (low.length === 0) return known.length === 0 ? untold('too-few-nights') : absent;
    const deepest = low.reduce((a, b) => (isDeeper(b, a) ? b : a));
    const longest = Math.max(...low.map((night) => night.longestLow));
    return holds(
      {
        often: often(low.length, known.length, 'nights'),
        count: count(low.length),
        veryLow: count(low.filter((night) => night.state === 'very-low').length),
        unknown: count(nights.value.filter(({ outside }) => !outside).length - known.length),
        dates: dates(low.map(({ date }) => date)),
        length: word(longest > 0 ? 'episode' : 'brief'),
        longest: minutes(longest),
        lowest: deepest.lowest === null ? limit('low') : glucose(deepest.lowest, deepest.lowestLimit),
        lowestAt: clock(deepest.lowestMinute ?? 0),
        from: clock(0),
        to: clock(NIGHT_END),
        limit: limit('low'),
        ...feltNights(
          measures,
          low.map(({ date }) => date),
        ),
      },
      low.map(({ date }) => nightOf(date)),
      longest === 0 ? 'brief' : low.length > 1 ? 'repeated' : 'once',
    );
  },
};

function isDeeper(a: Night, than: Night): boolean {
  const [x, y] = [a.lowest ?? Number.POSITIVE_INFINITY, than.lowest ?? Number.POSITIVE_INFINITY];
  return x < y || (x === y && a.lowestLimit !== 0 && than.lowestLimit === 0);
}
