import type { NightAfter, Session } from '../model/occasions.ts';
import { addDays } from '../time/calendar.ts';
import { daysIn, type Question, type Seen } from './sides.ts';

/** Sessions are compared within the half of the day that holds more of them on both sides (ours). */
const LATE = 900;

/** Extra food first or not, exercise days or rest days for the night, one kind of exercise or the other. */
export function movementQuestions(
  sessions: readonly Session[],
  nights: readonly NightAfter[],
  notedDays: ReadonlySet<string>,
): Question[] {
  if (sessions.length === 0) return [];
  // What was written down as light is set apart: like is compared with like.
  const harder = sessions.filter(({ effort }) => effort !== 'light');
  return [...extraCarbs(harder), exerciseNight(sessions, harder, nights, notedDays), ...exerciseKind(sessions)];
}

function extraCarbs(harder: readonly Session[]): Question[] {
  const ask = (id: Question['id'], of: (session: Session) => Seen[]): Question => ({
    id,
    slot: null,
    grams: null,
    of: 'lowest',
    names: ['', ''],
    ...fuller(harder, of),
  });
  return [ask('extra-carbs-night', nightAfter), ask('extra-carbs-soon', soonAfter)];
}

/** Sessions with extra food first and without, of the half of the day that holds more of both. */
function fuller(harder: readonly Session[], of: (session: Session) => Seen[]): Pick<Question, 'a' | 'b'> {
  const halves = [true, false].map((late) => {
    const some = harder.filter(({ minute }) => minute >= LATE === late);
    return {
      a: some.filter(({ carbsFirst }) => carbsFirst === 'extra').flatMap(of),
      b: some.filter(({ carbsFirst }) => carbsFirst === 'none-noted').flatMap(of),
    };
  });
  const [first, second] = halves as [(typeof halves)[0], (typeof halves)[0]];
  const size = ({ a, b }: typeof first) => [Math.min(daysIn(a), daysIn(b)), a.length + b.length] as const;
  const [least, all] = size(first);
  const [otherLeast, otherAll] = size(second);
  return otherLeast > least || (otherLeast === least && otherAll > all) ? second : first;
}

const soonAfter = ({ date, minute, lowestSoon: value, lowSoon: low }: Session): Seen[] =>
  value === null || low === null ? [] : [{ date, minute, value, low }];

const nightAfter = ({ date, minute, night }: Session): Seen[] =>
  night === null || night.low === null || night.lowest === null
    ? []
    : [{ date, minute, value: night.lowest, low: night.low }];

/** A day without any note is no rest day: nothing is known of it. */
function exerciseNight(
  sessions: readonly Session[],
  harder: readonly Session[],
  nights: readonly NightAfter[],
  notedDays: ReadonlySet<string>,
): Question {
  const moved = new Set<string>(harder.map(({ date }) => date));
  const movedAtAll = new Set<string>(sessions.map(({ date }) => date));
  const after = nights.flatMap(({ date, low, lowest, lowestMinute }): Seen[] =>
    low === null || lowest === null ? [] : [{ date: addDays(date, -1), minute: lowestMinute ?? 0, value: lowest, low }],
  );
  return {
    id: 'exercise-night',
    slot: null,
    grams: null,
    of: 'lowest',
    names: ['', ''],
    a: after.filter(({ date }) => moved.has(date)),
    b: after.filter(({ date }) => notedDays.has(date) && !movedAtAll.has(date)),
  };
}

/** The two kinds noted most. */
function exerciseKind(sessions: readonly Session[]): Question[] {
  const kinds = new Map<string, Seen[]>();
  for (const { kind, date, minute, start, lowestSoon, lowSoon } of sessions) {
    if (kind === null || start === null || lowestSoon === null || lowSoon === null) continue;
    const seen = { date, minute, value: start - lowestSoon, low: lowSoon };
    kinds.set(kind, [...(kinds.get(kind) ?? []), seen]);
  }
  const [first, second] = [...kinds].sort(([one, a], [other, b]) => daysIn(b) - daysIn(a) || (one < other ? -1 : 1));
  if (!first || !second) return [];
  const names: [string, string] = [first[0], second[0]];
  return [{ id: 'exercise-kind', slot: null, grams: null, of: 'fall', names, a: first[1], b: second[1] }];
}
