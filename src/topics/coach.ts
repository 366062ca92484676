import type { FindingId } from '../findings/index.ts';
import type { Slot } from '../model/logbook.ts';
import type { Measures } from '../model/measures.ts';
import type { Topic } from './topic.ts';

/** A note worth writing next time; its words are `coach.<id>`. */
export type NoteWish =
  | 'any'
  | 'morning-meal'
  | 'evening-meal'
  | 'meal'
  | 'grams'
  | 'insulin-time'
  | 'exercise'
  | 'minutes'
  | 'extra-food'
  | 'on-time';

const MOST = 3;
/** Noted on so many days, a thing is well noted (ours). */
const WELL = 0.7;

const NIGHT: readonly NoteWish[] = ['evening-meal', 'exercise', 'extra-food', 'grams'];
const LOWS: readonly NoteWish[] = ['exercise', 'extra-food', 'insulin-time', 'meal', 'grams'];
const HIGHS: readonly NoteWish[] = ['meal', 'grams', 'insulin-time', 'on-time'];

/** What would help most with each topic. */
const HELPS: Readonly<Partial<Record<FindingId, readonly NoteWish[]>>> = {
  'very-low': LOWS,
  'long-lows': LOWS,
  'lows-at-night': NIGHT,
  'lows-clustered': LOWS,
  'lows-seen': LOWS,
  'time-low-over-goal': LOWS,
  'lows-averages-hide': LOWS,
  'before-lows': LOWS,
  'long-very-high': ['insulin-time', ...HIGHS],
  'rebound-after-lows': ['extra-food', 'grams'],
  'dawn-rise': ['evening-meal', 'morning-meal'],
};

/** At most three notes that are often not in the log and would help with the topic; the first helps most. */
export function notesWorthWriting({ noteLog }: Measures, topics: readonly Topic[]): NoteWish[] {
  if (!noteLog.ok || topics.length === 0) return [];
  const { days, noted, byKind, mealDays, meals, withCarbs, late, sessions, withMinutes } = noteLog.value;
  const daysOf = (kind: string) => byKind.find((one) => one.kind === kind)?.days ?? 0;
  const often = (k: number, n: number) => n > 0 && k / n >= WELL;
  const mealIn = (slot: Slot) => often(mealDays[slot] ?? 0, days);
  const wanting: Record<NoteWish, boolean> = {
    any: noted === 0,
    'morning-meal': !mealIn('morning'),
    'evening-meal': !mealIn('evening'),
    meal: !often(daysOf('meal'), days),
    grams: meals > 0 && !often(withCarbs, meals),
    // Not everybody takes insulin: its times are asked for where some are noted.
    'insulin-time': daysOf('insulin') > 0 && !often(daysOf('insulin'), days),
    // Nobody exercises every day: it is asked for where none at all was noted.
    exercise: sessions === 0,
    minutes: sessions > 0 && !often(withMinutes, sessions),
    'extra-food': sessions > 0,
    'on-time': late > 0 && late / meals >= 1 / 3,
  };
  if (wanting.any) return ['any'];
  const helps = topics.flatMap(({ id }) => HELPS[id] ?? HIGHS);
  return [...new Set<NoteWish>([...helps, 'minutes'])].filter((wish) => wanting[wish]).slice(0, MOST);
}
