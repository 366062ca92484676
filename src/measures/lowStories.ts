import type { LocalDate } from '../model/glucose.ts';
import type { LowStory, NotedNear } from '../model/lowStories.ts';
import type { Episode } from '../model/measures.ts';
import type { Correction, Session } from '../model/occasions.ts';
import type { Remark } from '../model/remarks.ts';
import type { Note } from '../model/timeline.ts';
import { NIGHT_END } from '../targets/consensus.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import type { Context } from './context.ts';
import { lows } from './episodes.ts';
import type { Measure } from './measure.ts';
import { pressedLows } from './pressedLows.ts';

/** How near a low something noted belongs to it, minutes (ours; 12 hours after exercise as in what is noted before lows). */
const NEAR = {
  exerciseBefore: 720,
  foodBefore: 240,
  insulinBefore: 240,
  alarmBeside: 15,
  foodAfter: 30,
};

const NOON = 720;

/** Each low with what was noted around it. */
export const lowStories: Measure<'lowStories'> = {
  id: 'lowStories',
  source: 'Daybands',
  needs: { readings: 1 },
  definition: { ...NEAR, nightEnd: NIGHT_END },
  compute(shared) {
    const found = lows.compute(shared);
    if (!found.ok) return found;
    const { list } = found.value;
    const pressed = pressedLows.compute(shared);
    const marked = new Set(pressed.ok ? pressed.value.list.map(({ low }) => low.start) : []);
    const log = logOf(shared);
    const stories = evenings(shared, list).map((lows): LowStory => {
      const gravest = [...lows].sort((a, b) => graver(list[a]!, list[b]!, marked))[0]!;
      const low = list[gravest]!;
      return { lows, gravest, ...notedNear(log, low, gravest), pressed: marked.has(low.start) };
    });
    const order = (place: number): Episode => list[stories[place]!.gravest]!;
    return {
      ok: true,
      value: { stories, gravestFirst: stories.map((_, i) => i).sort((a, b) => graver(order(a), order(b), marked)) },
      n: list.length,
      of: 'episodes',
    };
  },
};

/** What may stand near a low, each kind in order of time. */
interface Log {
  sessions: readonly Session[];
  corrections: readonly Correction[];
  foods: readonly Note[];
  alarms: readonly Note[];
  remarks: readonly Remark[];
  dateOf(note: Note): LocalDate;
}

function logOf({ timeline, occasions }: Context): Log {
  const { sessions, corrections, remarks } = occasions();
  const notes = timeline.notes.filter(({ timed }) => timed);
  return {
    sessions,
    corrections,
    foods: notes.filter(({ kind }) => kind === 'meal'),
    alarms: notes.filter(({ kind }) => kind === 'alarm'),
    remarks,
    dateOf: ({ day }) => timeline.days[day]!.date,
  };
}

/** Places of lows by the noon after which they began: an evening and its night are one story. */
function evenings({ timeline }: Context, list: readonly Episode[]): number[][] {
  const day = new Map(timeline.days.map(({ date }, i) => [date, i]));
  const found = new Map<number, number[]>();
  list.forEach(({ date, startMinute }, i) => {
    const noon = day.get(date)! - (startMinute < NOON ? 1 : 0);
    found.set(noon, [...(found.get(noon) ?? []), i]);
  });
  return [...found.values()];
}

function notedNear(log: Log, low: Episode, place: number): Omit<LowStory, 'lows' | 'gravest' | 'pressed'> {
  const before = <T extends { at: number }>(all: readonly T[], minutes: number): T | undefined =>
    all.findLast(({ at }) => at < low.start && at >= low.start - minutes * MINUTE_MS);
  const around = (all: readonly Note[], minutesBefore: number, minutesAfter: number): Note | undefined =>
    all.find(({ at }) => at >= low.start - minutesBefore * MINUTE_MS && at <= low.end + minutesAfter * MINUTE_MS);
  const near = (note: Note | undefined, name = ''): NotedNear | null =>
    note === undefined ? null : { date: log.dateOf(note), minute: note.minute, name };
  const session = before(log.sessions, NEAR.exerciseBefore);
  const alone = before(log.corrections, NEAR.insulinBefore);
  const food = before(log.foods, NEAR.foodBefore);
  const remark = log.remarks.find((one) => one.near.some((it) => it.of === 'low' && it.index === place));
  return {
    exercise: session ? { date: session.date, minute: session.minute, name: session.kind ?? '' } : null,
    food: near(food, food?.label?.trim()),
    insulinOnly: alone ? { date: alone.date, minute: alone.minute, name: '' } : null,
    alarm: near(around(log.alarms, NEAR.alarmBeside, NEAR.alarmBeside)),
    eaten: near(around(log.foods, 0, NEAR.foodAfter)),
    remark: remark?.minute == null ? null : { date: remark.date, minute: remark.minute, name: remark.text },
  };
}

/** Level 2 before level 1, a low in a night before one by day, one that looks like pressure on the sensor after others, the longer before the shorter. */
function graver(a: Episode, b: Episode, pressed: ReadonlySet<number>): number {
  return (
    b.level - a.level ||
    Number(atNight(b)) - Number(atNight(a)) ||
    Number(pressed.has(a.start)) - Number(pressed.has(b.start)) ||
    b.minutes - a.minutes ||
    a.start - b.start
  );
}

const atNight = ({ days }: Episode): boolean => days.some(({ fromMinute }) => fromMinute < NIGHT_END);
