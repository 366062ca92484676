import type { TopicRow } from '../model/topics.ts';
import { once } from '../once.ts';
import { checkTopicOrder, USUAL_ORDER } from '../topics/index.ts';
import { WrongUse } from './exits.ts';
import { ownPath } from './home.ts';
import { ownJson } from './json.ts';

const PATH = 'templates/topics.json';

/** The order of topics that stands in templates, where a clinic has changed it; undefined for the usual one. */
export const topicOrder = once((): readonly TopicRow[] | undefined => {
  const checked = checkTopicOrder(ownJson(PATH, 'wrongTopics'));
  if ('problems' in checked)
    throw new WrongUse('wrongTopics', { path: ownPath(PATH), problem: checked.problems.join(', ') });
  return JSON.stringify(checked.order) === JSON.stringify(USUAL_ORDER) ? undefined : checked.order;
});
