import type { FindingId, Found } from '../findings/index.ts';
import type { Topic } from './topic.ts';

/** Findings of notes lined up with glucose, in the order of print; they stand on a page of their own. */
/** What was noted before lows, highs and unsteady days. */
export const AROUND_BEFORE = ['before-lows', 'before-highs', 'before-unsteady'] as const satisfies readonly FindingId[];
export const AROUND_MOVEMENT = [
  'extra-carbs-first',
  'exercise-or-rest',
  'low-after-exercise',
  'exercise-kinds',
] as const satisfies readonly FindingId[];
export const AROUND_MEALS = [
  'low-after-meal',
  'low-after-insulin-only',
  'food-longer-high',
  'food-shorter-high',
  'larger-meals',
  'insulin-after-meal',
  'weekend-meals',
  'high-after-meals',
] as const satisfies readonly FindingId[];
export const AROUND_LOG = ['few-notes', 'late-notes'] as const satisfies readonly FindingId[];
export const AROUND_NOTES = [...AROUND_BEFORE, ...AROUND_MOVEMENT, ...AROUND_MEALS, ...AROUND_LOG] as const;

type Around = (typeof AROUND_NOTES)[number];

const LOWS: readonly Around[] = [
  'before-lows',
  'extra-carbs-first',
  'exercise-or-rest',
  'low-after-exercise',
  'low-after-meal',
  'low-after-insulin-only',
];
const HIGHS: readonly Around[] = [
  'before-highs',
  'food-longer-high',
  'larger-meals',
  'insulin-after-meal',
  'weekend-meals',
  'food-shorter-high',
];
const SPREAD: readonly Around[] = ['before-unsteady', ...HIGHS];
const NIGHTS: readonly Around[] = ['before-lows', 'extra-carbs-first', 'exercise-or-rest'];

/** Which of them may stand beside a topic. A topic of the night takes only what tells of nights. */
const FITTING: Readonly<Partial<Record<FindingId, readonly Around[]>>> = {
  'very-low': LOWS,
  'long-lows': LOWS,
  'lows-at-night': NIGHTS,
  'lows-clustered': LOWS,
  'lows-seen': LOWS,
  'time-low-over-goal': LOWS,
  'lows-averages-hide': LOWS,
  'long-very-high': HIGHS,
  'high-after-window': HIGHS,
  'time-in-range': HIGHS,
  'wide-spread': SPREAD,
  'cv-over-limit': SPREAD,
  'best-window': ['food-shorter-high'],
  'best-days': ['food-shorter-high'],
};

/** What was noted before what the first topic is about, where it stands out: its story, for page 1 and the draft. */
export function storyOf(found: readonly Found[], topics: readonly Topic[]): (typeof AROUND_BEFORE)[number] | null {
  const [first] = topics;
  const story = AROUND_BEFORE.find((id) => id === first?.id) ?? besideTopic(found, topics.slice(0, 1));
  return AROUND_BEFORE.find((id) => id === story) ?? null;
}

/** The one finding about notes that fits what the visit is about, or null: the patient paper has room for no more. */
export function besideTopic(found: readonly Found[], topics: readonly Topic[]): Around | null {
  const holding = (id: FindingId) => found.some((one) => one.id === id && one.look.case === 'holds');
  for (const { id } of topics) {
    const fits = FITTING[id]?.find(holding);
    if (fits !== undefined) return fits;
  }
  return null;
}
