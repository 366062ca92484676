import { isolated } from '../../language/index.ts';
import type { Remark } from '../../model/remarks.ts';
import type { Block } from '../../model/report.ts';
import { NIGHT_END } from '../../targets/consensus.ts';
import { storyOf, type Topic } from '../../topics/index.ts';
import {
  dotted,
  findingText,
  heading,
  held,
  heldTopics,
  nameOf,
  type PageContext,
  paragraph,
  word,
} from '../context.ts';
import { remarkLine } from './remarkLine.ts';

/** So many remarks stand with the topic; the others on the back. */
const MOST_QUOTED = 2;
/** A longer one stands whole on the back. */
const LONGEST_QUOTED = 90;

/** One topic with what was noted before it, the person's own words and one question; where room is short without the rule. */
export function topicBox(context: PageContext): Block[] {
  return [{ kind: 'fit', gives: 5, forms: FORMS.map((form) => () => box(context, form)) }];
}

/** What the person wrote near the lows, where the topic is about lows. */
export function quoted({ analysis }: PageContext): Remark[] {
  const { remarks } = analysis.measures;
  const first = analysis.topics[0]?.id ?? '';
  if (!remarks.ok || !/low/.test(first)) return [];
  return remarks.value
    .filter(({ near, text }) => text.length <= LONGEST_QUOTED && near.some(({ of }) => of === 'low'))
    .sort((a, b) => Number(b.felt) - Number(a.felt) || a.at - b.at)
    .slice(0, MOST_QUOTED);
}

/** Why this topic; where somebody chose it, also what the rules gave. */
function ruleSaid(context: PageContext, rule: Topic['rule']): string {
  const { speaker } = context;
  const said = speaker.say(`findings.rules.${rule}`);
  if (rule !== 'chosen') return said;
  return `${said} ${speaker.say('pages.visit.byRule', { topic: word(ruledName(context)) })}`;
}

/** What the rules gave where another topic was chosen; `none`: nothing. */
export function ruledName(context: PageContext): string {
  const { topicByRule } = context.analysis;
  const look = topicByRule ? held(context, topicByRule.id) : null;
  return topicByRule && look ? nameOf(context, topicByRule.id, 'topic', look) : 'none';
}

/** Whether the topic was chosen, as a word of a sentence. */
export const chosenOr = ({ analysis }: PageContext) => word(analysis.topics[0]?.rule === 'chosen' ? 'yes' : 'no');

const FORMS = ['whole', 'short'] as const;

function box(context: PageContext, form: (typeof FORMS)[number]): Block[] {
  const { speaker, analysis } = context;
  const [first, second] = heldTopics(context);
  if (!first) {
    const none = [
      heading(2, speaker.say('pages.overview.topic.title')),
      paragraph(speaker.say('pages.overview.topic.none')),
    ];
    return [{ kind: 'panel', blocks: none }];
  }
  const story = storyOf(analysis.found, analysis.topics);
  // What was noted before says more than why the topic matters in general.
  const lines = [
    story ? findingText(context, story, 'what') : findingText(context, first.id, 'why'),
    // A night belongs to the day before it, so these days are not those of the calendar that the line of lows counts.
    ...(story ? [speaker.say('pages.visit.storyDay', { six: { q: 'clock', value: NIGHT_END } })] : []),
    findingText(context, first.id, 'ask'),
  ];
  if (form === 'whole' || first.rule === 'chosen') lines.push(ruleSaid(context, first.rule));
  if (second) lines.push(`${speaker.say('pages.overview.topic.second', { topic: word(second.name) })}.`);
  // Treatment in pregnancy rests on fingersticks: where they disagree, that stands with the topic.
  const pregnant = analysis.targets.id.startsWith('pregnancy');
  const sticks = pregnant ? findingText(context, 'fingersticks-differ', 'what') : null;
  const own = quoted(context).map((remark) => remarkLine(context, [remark]));
  return [
    {
      kind: 'panel',
      blocks: [
        heading(2, speaker.say('pages.overview.topic.first', { topic: word(first.name) })),
        paragraph(lines.filter((line) => line !== null).join(' ')),
        ...(sticks === null ? [] : [paragraph(sticks)]),
        ...(own.length > 0
          ? [paragraph(speaker.say('pages.visit.ownWords', { remarks: word(isolated(dotted(own))) }))]
          : []),
      ],
    },
  ];
}
