import type { NoteBefore, Outcome, OutcomeNotes } from '../model/notedBefore.ts';
import type { Noted, Times } from '../model/occasions.ts';
import { exactTable } from '../stats/exactTable.ts';
import { standOut } from '../stats/many.ts';
import { HOUR_MS } from '../time/calendar.ts';
import type { DayStretch, Events } from './dayStretches.ts';
import { type NotedAt, notedBetween, ofTheDay } from './noted.ts';
import { LEAST_DAYS } from './sides.ts';

/** Where nothing is there, a note stands out beside an outcome in at most so many reports (ours; see the simulation). */
export const FALSE_STORIES = 0.01;

/** So many hours after a note an event follows it. 12 after exercise: raised need found for 7 to 11 (McMahon 2007); others ours. */
export const FOLLOWS: Record<Noted['id'], number> = {
  exercise: 12,
  'exercise-kind': 12,
  food: 4,
  'bedtime-food': 9,
  insulin: 4,
  'insulin-only': 4,
  'insulin-after': 4,
  'more-carbs': 4,
  alarm: 1,
  weekend: 24,
  'first-sensor-day': 24,
};

const OUTCOMES: readonly Outcome[] = ['lows', 'very-lows', 'night-lows', 'very-highs', 'much-high', 'unsteady'];
/** Of these there are many, and of most only a few: too few are not listed. */
const NAMED: readonly Noted['id'][] = ['food', 'exercise-kind'];
/** Known of every day, whether or not anything was written down. */
const KNOWN: readonly Noted['id'][] = ['weekend', 'first-sensor-day'];

/** For each outcome every note that stands on enough days to be counted with it and without it. */
export function notedBefore(days: readonly DayStretch[], events: Events, noted: readonly NotedAt[]): OutcomeNotes[] {
  const all = standing(days, noted);
  return OUTCOMES.map((of): OutcomeNotes => {
    const starts = of in events ? events[of as keyof Events] : [];
    const inside = starts.filter((at) => days.some(({ from, to }) => at >= from && at < to));
    const knownDays = days.filter(({ came }) => came[of] !== null);
    const counted = all.map((one) => count(one, of, days, inside));
    return {
      of,
      days: knownDays.length,
      dates: knownDays.filter(({ came }) => came[of]).map(({ date }) => date),
      events: inside.length,
      leftOut: starts.length - inside.length,
      notes: judged(counted),
    };
  });
}

/** A note with every time it stands, and whether on each day. */
interface Standing extends Noted {
  times: readonly NotedAt[];
  on: boolean[];
}

function standing(days: readonly DayStretch[], noted: readonly NotedAt[]): Standing[] {
  const found = new Map<string, Noted & { times: NotedAt[]; on: boolean[] }>();
  const at = ({ id, name }: Noted) => {
    const key = `${id} ${name}`;
    let one = found.get(key);
    if (!one) {
      one = { id, name, times: [], on: days.map(() => false) };
      found.set(key, one);
    }
    return one;
  };
  for (const one of noted) at(one).times.push(one);
  days.forEach(({ date, from, to }, day) => {
    for (const one of [...notedBetween(noted, from, to), ...ofTheDay(date)]) at(one).on[day] = true;
  });
  const onAny = [...found].filter(([, { on }]) => on.includes(true));
  return onAny.sort(([one], [other]) => (one < other ? -1 : 1)).map(([, one]) => one);
}

interface Counted {
  note: Omit<NoteBefore, 'p' | 'verdict'>;
  p: number;
  least: number;
}

function count(
  { times, on, ...one }: Standing,
  of: Outcome,
  days: readonly DayStretch[],
  events: readonly number[],
): Counted {
  const side = (wanted: boolean): Times => {
    const some = days.filter(
      (day, i) => on[i] === wanted && day.came[of] !== null && (day.noted || KNOWN.includes(one.id)),
    );
    return { k: some.filter(({ came }) => came[of]).length, n: some.length };
  };
  const [withIt, without] = [side(true), side(false)];
  const hours = FOLLOWS[one.id];
  const follows = (at: number): boolean =>
    one.id === 'weekend'
      ? days.some(({ from, to }, i) => on[i] && at >= from && at < to)
      : times.some((each) => at > each.at && at <= each.end + hours * HOUR_MS);
  const followed = { k: events.filter(follows).length, n: events.length };
  const note = { ...one, hours, followed, withIt, without };
  return { note, ...exactTable(withIt.k, withIt.n, without.k, without.n) };
}

/** Alarms follow glucose, and a few days tell nothing: neither takes part where all are looked at together. */
function judged(counted: readonly Counted[]): NoteBefore[] {
  const asks = ({ note }: Counted) => note.id !== 'alarm' && Math.min(note.withIt.n, note.without.n) >= LEAST_DAYS;
  const asked = counted.filter(asks);
  const stands = standOut(asked, FALSE_STORIES);
  const found = counted.map((one): NoteBefore => {
    const place = asked.indexOf(one);
    if (place < 0) return { ...one.note, p: null, verdict: one.note.id === 'alarm' ? 'follows' : 'too-few' };
    return { ...one.note, p: one.p, verdict: stands[place] && inOrder(one.note) ? 'hint' : 'not-told-apart' };
  });
  const hints = found.filter(({ verdict }) => verdict === 'hint').sort((a, b) => a.p! - b.p!);
  return [
    ...hints,
    ...found.filter(({ id, verdict }) => verdict !== 'hint' && (verdict !== 'too-few' || !NAMED.includes(id))),
  ];
}

/** Where it comes with the note more often, it also has to come after it. */
function inOrder({ withIt, without, followed }: Counted['note']): boolean {
  const more = withIt.k * without.n > without.k * withIt.n;
  return !more || followed.n === 0 || 2 * followed.k >= followed.n;
}
