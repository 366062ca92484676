import { intake } from '../../analyse.ts';
import { speakerOf } from '../../language/index.ts';
import { addDays } from '../../time/calendar.ts';
import type { DaySeen } from '../messages.ts';
import type { Current } from './reading.ts';

/** So many days, the last ones, have room on a strip. */
const MOST = 366;

/** All days from the first to the last with a reading, each with how much of it was read. */
export function daysOf({ analysis, inputs, words }: Current): DaySeen[] {
  const { settings, timeline, targets } = analysis;
  const [first, last] = [timeline.allDays[0]!, timeline.allDays.at(-1)!];
  const earliest = addDays(last, 1 - MOST);
  const all = intake(inputs, { ...settings, period: { from: [first, earliest].sort().at(-1)!, to: last } });
  if (!all.ok) return [];
  const { days, readings } = all.timeline;
  const speaker = speakerOf(words, { unit: timeline.unit, voice: 'clinic', targets });
  return days.map(({ date, minutes, from, to }) => {
    let seen = 0;
    for (let i = from; i < to; i++) seen += readings.weight[i]!;
    const share = Math.min(1, seen / minutes);
    const day = (['weekday', 'compact'] as const).map((style) => speaker.value({ q: 'date', value: date }, style));
    return { date, share, label: `${day.join(' ')} (${speaker.value({ q: 'share', value: share })})` };
  });
}
