import { topicsToChoose } from '../topics/index.ts';
import { findingText, held, nameOf, type PageContext } from './context.ts';

/** A topic that could be chosen for the visit, in words. */
export interface TopicChoice {
  id: string;
  name: string;
  /** What it rests on. */
  why: string;
  /** Whether it leads now, and whether the rules gave it. */
  led: boolean;
  ruled: boolean;
}

/** Every topic that was found, what leads by the rules first. */
export function topicChoices(context: PageContext): TopicChoice[] {
  const { found, topics, topicByRule, settings } = context.analysis;
  const ruled = topicByRule === undefined ? topics[0]?.id : topicByRule?.id;
  const choices = topicsToChoose(found, settings.topicOrder).flatMap(({ id }): TopicChoice[] => {
    const look = held(context, id);
    if (!look) return [];
    const why = findingText(context, id, 'what') ?? findingText(context, id, 'why') ?? '';
    return [{ id, name: nameOf(context, id, 'topic', look), why, led: id === topics[0]?.id, ruled: id === ruled }];
  });
  return choices.sort((a, b) => Number(b.ruled) - Number(a.ruled));
}
