import type { Found } from '../findings/index.ts';
import type { Issue } from '../model/issues.ts';
import type { Measures } from '../model/measures.ts';
import type { Settings } from '../model/settings.ts';
import type { TargetSet } from '../model/targets.ts';
import { furthestFromGoal, type Topic, topics, topicsToChoose } from './topic.ts';

/** What a visit is about: the topics, and, where somebody chose another, what the rules gave (null: none). */
export interface About {
  topics: Topic[];
  topicByRule?: Topic | null;
  issues: Issue[];
}

/**
 * By the rules, or what somebody chose among what was found; a choice that was not is told, and the rules hold. Chosen or not, what page
 * 1 says of lows, highs and safety rests on measures and stays.
 */
export function aboutOf(
  found: readonly Found[],
  measures: Measures,
  targets: TargetSet,
  { topicOrder, topic }: Pick<Settings, 'topicOrder' | 'topic'>,
): About {
  const ruled = topics(found, furthestFromGoal(measures, targets), topicOrder);
  const [first = null] = ruled;
  if (topic === undefined || first?.id === topic) return { topics: ruled, issues: [] };
  const choices = topicsToChoose(found, topicOrder);
  const chosen = choices.find(({ id }) => id === topic);
  if (chosen) return { topics: [{ id: chosen.id, rule: 'chosen' }], topicByRule: first, issues: [] };
  const expected = choices.map(({ id }) => id);
  return { topics: ruled, issues: [{ code: 'topic-not-found', level: 'warning', actual: topic, expected }] };
}
