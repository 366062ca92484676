import type { Analysis } from '../analyse.ts';
import { leftBy } from '../measures/earlier.ts';
import type { LocalDate } from '../model/glucose.ts';
import type { CompareChoice } from '../model/settings.ts';
import type { Agreed, TopicMeasure, Visit } from '../model/visits.ts';
import { storyOf } from '../topics/index.ts';

/**
 * What this visit leaves for the next: code and clinic, and no name. `file` is the name it will have; `agreed` is null until
 * somebody has typed it in.
 */
export function visitOf(analysis: Analysis, file: string, agreed: Agreed | null): Visit {
  const { timeline, targets, settings, version, hash, found, topics, topicByRule } = analysis;
  const { code, clinic } = settings.person;
  const { compare } = settings;
  return {
    file,
    // The day of printing was checked to be one.
    origin: { by: version, hash, on: settings.today as LocalDate },
    person: {
      ...(code === undefined ? {} : { code }),
      ...(clinic === undefined ? {} : { clinic }),
    },
    ...leftBy(timeline, targets, analysis.measures),
    goals: targets.goals,
    topic: topics[0] ?? null,
    ...(topicByRule === undefined ? {} : { topicByRule }),
    topicMeasure: measureOf(analysis),
    held: found.flatMap(({ id, look }) => (look.case === 'holds' ? [id] : [])),
    agreed,
    changed: changedIn(compare),
  };
}

function changedIn(compare: CompareChoice | undefined): Visit['changed'] {
  const marked = compare?.with === 'change' ? compare : compare?.with === 'visits' ? compare.changed : undefined;
  return marked === undefined ? [] : [{ on: marked.date, what: marked.text }];
}

/** What shows at the next visit whether this topic's step helped. A topic of data has none. */
const BY_TOPIC: Readonly<Partial<Record<string, TopicMeasure['of']>>> = {
  'very-low': 'low',
  'long-lows': 'low',
  'lows-at-night': 'nights-low',
  'lows-clustered': 'low',
  'lows-seen': 'low',
  'time-low-over-goal': 'low',
  'lows-averages-hide': 'low',
  'rebound-after-lows': 'low',
  'long-very-high': 'very-high',
  'high-after-window': 'high',
  'dawn-rise': 'high',
  'time-in-range': 'in-range',
  'wide-spread': 'cv',
  'cv-over-limit': 'cv',
  'best-window': 'in-range',
  'best-days': 'in-range',
};

/** Where a note stands out before what the topic is about, the days with that note; they are what a step is about. */
function measureOf({ found, topics, measures, targets }: Analysis): TopicMeasure | null {
  const { nights, notedBefore } = measures;
  const story = storyOf(found, topics);
  if (story !== null && notedBefore.ok) {
    const outcomes = notedBefore.value.filter(({ of }) => STORIES[story].includes(of));
    const best = outcomes.find(({ notes }) => notes[0]?.verdict === 'hint');
    const note = best?.notes[0];
    if (best && note)
      return { of: 'after-note', outcome: best.of, note: { id: note.id, name: note.name }, count: note.withIt };
  }
  const of = BY_TOPIC[topics[0]?.id ?? ''];
  if (of === undefined || of === 'after-note') return null;
  if (of !== 'nights-low') return { of: of === 'very-high' && targets.limits['mg/dL'].veryHigh === null ? 'high' : of };
  const tellable = nights.ok ? nights.value.filter(({ state }) => state !== 'unknown') : [];
  if (tellable.length === 0) return { of: 'low' };
  return { of, count: { k: tellable.filter(({ state }) => state !== 'none-seen').length, n: tellable.length } };
}

/** Outcomes that each of these findings looks at, in its own order. */
const STORIES: Record<NonNullable<ReturnType<typeof storyOf>>, readonly string[]> = {
  'before-lows': ['lows', 'night-lows', 'very-lows'],
  'before-highs': ['very-highs', 'much-high'],
  'before-unsteady': ['unsteady'],
};
