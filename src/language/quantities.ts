import type { Quantity } from '../model/quantity.ts';
import { DAY_MINUTES } from '../time/calendar.ts';
import { against } from './against.ts';
import { duration, percentNumber, share } from './durations.ts';
import { glucose, inUnit, limit, withUnit } from './glucose.ts';
import { isolated } from './isolated.ts';
import type { Style } from './locale.ts';
import { frequency } from './often.ts';
import { optionText, shownText } from './shown.ts';
import type { Telling } from './telling.ts';

/** Within a sentence a time may need its article, as in Spanish: "las 2:40", "la 1:00". */
function clock(telling: Telling, minute: number, inText: boolean): string {
  const whole = Math.round(minute);
  const ofDay = whole % DAY_MINUTES;
  const say = (name: 'midnight' | 'noon'): string =>
    telling.fill(inText ? `units.inText.${name}` : `units.${name}`, {});
  if (ofDay === 0) return say('midnight');
  if (ofDay === DAY_MINUTES / 2) return say('noon');
  const text = telling.forms.clock(ofDay);
  return inText
    ? telling.fill('units.inText.clock', { clock: text, hour: '' }, { hour: telling.forms.hour(ofDay) })
    : text;
}

function estimate(telling: Telling, q: Quantity & { q: 'estimate' }, style: Style): string {
  const { value, as } = q;
  const plain = (number: number, last: boolean): string => {
    if (as === 'minutes') return duration(telling, number, style);
    if (as === 'glucose') return withUnit(telling, inUnit(telling, number), last ? style : 'short');
    return share(telling, number, style);
  };
  const first =
    as === 'share' && q.goal !== undefined
      ? against(telling, value.value, { share: q.goal })
      : plain(value.value, true);
  if (value.low === null || value.high === null) return first;
  // In percent and glucose the unit stands once, at the estimate; times carry their own.
  const bare = (number: number): string =>
    as === 'share' && telling.voice === 'clinic' ? percentNumber(telling, Math.max(0, number)) : plain(number, false);
  return telling.fill(`units.estimate.${telling.voice}`, {
    value: first,
    level: telling.fill('units.percent', { value: telling.forms.number(value.level * 100) }),
    low: bare(value.low),
    high: bare(value.high),
  });
}

function often(telling: Telling, { k, n, of }: Quantity & { q: 'often' }): string {
  const texts = { k: telling.forms.number(k), n: telling.forms.number(n) };
  return telling.fill(`units.often.${of}`, { ...texts, word: '' }, { k, n, word: frequency(k, n) });
}

/** Clinic text is terse and carries units; the patient paper names the unit once a block and spells words out. */
function usualStyle(q: Quantity, voice: 'clinic' | 'patient'): Style {
  const terse = q.q === 'glucose' || q.q === 'limit' || q.q === 'rise' || q.q === 'estimate';
  if (q.q === 'estimate' && q.as !== 'glucose') return voice === 'clinic' ? 'short' : 'long';
  if (terse) return voice === 'clinic' ? 'long' : 'short';
  return voice === 'clinic' ? 'short' : 'long';
}

/** A quantity as text, for a cell or for a sentence: the one place where numbers are rounded. */
export function quantityText(telling: Telling, q: Quantity, asked?: Style, inText = false): string {
  const style = asked ?? usualStyle(q, telling.voice);
  switch (q.q) {
    case 'count':
      return telling.forms.number(q.value);
    case 'share':
      return q.goal === undefined ? share(telling, q.value, style) : against(telling, q.value, { share: q.goal });
    case 'percent':
      return telling.fill('units.percent', { value: telling.forms.number(q.value, 1) });
    case 'often':
      return often(telling, q);
    case 'minutes':
      return duration(telling, q.value, style);
    case 'glucose':
      return glucose(telling, q.value, q.limit ?? 0, style);
    case 'rise':
      return withUnit(telling, inUnit(telling, q.value), style);
    case 'limit':
      return limit(telling, q.of, style);
    case 'clock':
      return clock(telling, q.value, inText);
    case 'date':
      return telling.forms.date(q.value, style);
    case 'dates':
      // A person knows a day by its weekday.
      return telling.forms.list(
        q.value.map((date) => telling.forms.date(date, telling.voice === 'patient' ? 'long' : 'plain')),
      );
    case 'estimate':
      return estimate(telling, q, style);
    case 'word':
      return isolated(q.value);
    case 'shown':
      return shownText(telling, q.value);
    case 'question':
      return optionText(q.value);
  }
}

/** What plural and select arms look at: a count's number, a frequency word, how many dates there are to name, a word itself. */
export function quantityChoice(q: Quantity): string | number | undefined {
  // Whole, as it is printed, or "1 hours" could stand there.
  if (q.q === 'count') return Math.round(q.value);
  if (q.q === 'word') return q.value;
  if (q.q === 'often') return frequency(q.k, q.n);
  if (q.q === 'dates') return q.value.length <= 3 ? 'few' : 'many';
  if (q.q === 'estimate') return q.value.low === null ? 'point' : 'interval';
  return undefined;
}
