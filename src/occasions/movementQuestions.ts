import type { Session, UntilMorning } from '../model/occasions.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { type NotedAt, notedBetween } from './noted.ts';
import type { RestDay } from './restDays.ts';
import { daysIn, type Question, type Seen } from './sides.ts';

/** Sessions are compared within the half of the day that holds more of them on both sides (ours). */
const LATE = 900;
/** So long before exercise food and insulin are still under way (ours). */
const BEFORE_FALL = 240;

/** Extra food first or not, exercise days or rest days, one kind of exercise or the other. */
export function movementQuestions(
  sessions: readonly Session[],
  rests: readonly RestDay[],
  noted: readonly NotedAt[],
): Question[] {
  if (sessions.length === 0) return [];
  return [extraCarbs(sessions, noted), exerciseOrRest(sessions, rests, noted), ...exerciseKind(sessions, noted)];
}

const QUESTION = { slot: null, grams: null, fromMinute: null, names: ['', ''] as [string, string] };

/** What was written down as light is set apart: like is compared with like. */
const isHarder = ({ effort }: Session): boolean => effort !== 'light';

/** Sessions with extra food first and without, of the half of the day that holds more of both. */
function extraCarbs(sessions: readonly Session[], noted: readonly NotedAt[]): Question {
  const all = (first: Session['carbsFirst']) => sessions.filter(({ carbsFirst }) => carbsFirst === first);
  const halves = [true, false].map((late) => {
    const side = (first: Session['carbsFirst']) =>
      all(first)
        .filter((one) => isHarder(one) && one.minute >= LATE === late)
        .flatMap((one) => seenUntilMorning(one, noted));
    return { a: side('extra'), b: side('none-noted') };
  });
  const [first, second] = halves as [(typeof halves)[0], (typeof halves)[0]];
  const size = ({ a, b }: typeof first) => [Math.min(daysIn(a), daysIn(b)), a.length + b.length] as const;
  const [least, most] = size(first);
  const [otherLeast, otherMost] = size(second);
  const { a, b } = otherLeast > least || (otherLeast === least && otherMost > most) ? second : first;
  const leftOut: Question['leftOut'] = [all('extra').length - a.length, all('none-noted').length - b.length];
  return { ...QUESTION, id: 'extra-carbs', of: 'lowest', a, b, leftOut, given: ['exercise'] };
}

interface FromThen {
  at: number;
  date: Session['date'];
  minute: number;
  untilMorning: UntilMorning;
}

/** One value from a start to 6 in the morning; none where a hole leaves open whether there was a low. */
function seenUntilMorning({ at, date, minute, untilMorning }: FromThen, noted: readonly NotedAt[]): Seen[] {
  const { low, lowest, minutes } = untilMorning;
  if (low === null || lowest === null) return [];
  const nearby = () => notedBetween(noted, at, at + minutes * MINUTE_MS);
  return [{ date, minute, value: lowest, low, nearby }];
}

/** The first session of each day beside days with notes and none, looked at from the middle start time on. */
function exerciseOrRest(sessions: readonly Session[], rests: readonly RestDay[], noted: readonly NotedAt[]): Question {
  const firsts = sessions.filter(
    (one, i) =>
      isHarder(one) && !sessions.slice(0, i).some((earlier) => isHarder(earlier) && earlier.date === one.date),
  );
  const a = firsts.flatMap((one) => seenUntilMorning(one, noted));
  const b = rests.flatMap((one) => seenUntilMorning(one, noted));
  return {
    ...QUESTION,
    id: 'exercise-or-rest',
    fromMinute: rests[0]?.minute ?? null,
    of: 'lowest',
    a,
    b,
    leftOut: [new Set(sessions.map(({ date }) => date)).size - a.length, rests.length - b.length],
    given: ['exercise', 'exercise-kind'],
  };
}

/** The two kinds noted most. */
function exerciseKind(sessions: readonly Session[], noted: readonly NotedAt[]): Question[] {
  const kinds = new Map<string, Session[]>();
  for (const one of sessions) if (one.kind !== null) kinds.set(one.kind, [...(kinds.get(one.kind) ?? []), one]);
  const sides = [...kinds].map(([name, all]) => {
    const seen = all.flatMap((one) => fallOf(one, noted));
    return { name, seen, leftOut: all.length - seen.length };
  });
  sides.sort((one, other) => daysIn(other.seen) - daysIn(one.seen) || (one.name < other.name ? -1 : 1));
  const [first, second] = sides;
  if (!first?.seen.length || !second?.seen.length) return [];
  return [
    {
      ...QUESTION,
      id: 'exercise-kind',
      of: 'fall',
      names: [first.name, second.name],
      a: first.seen,
      b: second.seen,
      leftOut: [first.leftOut, second.leftOut],
      given: ['exercise', 'exercise-kind'],
    },
  ];
}

function fallOf({ at, date, minute, start, lowestSoon, lowSoon }: Session, noted: readonly NotedAt[]): Seen[] {
  if (start === null || lowestSoon === null || lowSoon === null) return [];
  const nearby = () => notedBetween(noted, at - BEFORE_FALL * MINUTE_MS, at);
  return [{ date, minute, value: start - lowestSoon, low: lowSoon, nearby }];
}
