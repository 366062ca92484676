import type { FindingId } from '../../findings/index.ts';
import type { Block } from '../../model/report.ts';
import type { Below } from '../../model/words.ts';
import { besideTopic, notesWorthWriting } from '../../topics/index.ts';
import {
  dotted,
  findingText,
  heading,
  held,
  heldTopics,
  type PageContext,
  paragraph,
  tellAll,
  word,
} from '../context.ts';
import { ruledName } from '../visit/topicBox.ts';
import { isSaidWithAgreed } from './lastTime.ts';
import { weekdayAnd } from './sides.ts';

/** What already stands on the first side is not said twice. */
const SAID: readonly FindingId[] = [
  'very-low',
  'lows-seen',
  'lows-at-night',
  'long-lows',
  'not-enough-data',
  'nights-without-data',
  'best-window',
  'best-days',
];

/** What can be done about a topic by two people at a table; lows where nothing else is said. */
const TOGETHER: Partial<Record<FindingId, Below<'pages.patientBack.together'>>> = {
  'not-enough-data': 'readings',
  'nights-without-data': 'readings',
  'long-very-high': 'highs',
  'high-after-window': 'highs',
  'rebound-after-lows': 'highs',
  'time-in-range': 'highs',
  'dawn-rise': 'mornings',
  'wide-spread': 'spread',
  'cv-over-limit': 'spread',
  'best-window': 'well',
  'best-days': 'well',
};

/** One thing, what was noted beside it, and a way to look at it together. */
export function topic(context: PageContext): Block[] {
  const { speaker } = context;
  const [first] = heldTopics(context);
  if (!first) return notes(context).map((line) => paragraph(line));
  const what = SAID.includes(first.id) ? null : findingText(context, first.id, 'what');
  const way = TOGETHER[first.id] ?? 'lows';
  // What to write down helps nobody to wear a sensor.
  const lines = [...(what === null ? [] : [what]), ...(way === 'readings' ? [] : notes(context))];
  const together = speaker.say(`pages.patientBack.together.${way}`);
  return [
    heading(2, speaker.say('pages.patientBack.topic', { topic: word(first.name) })),
    ...(lines.length > 0 ? [paragraph(lines.join(' '))] : []),
    ...(what === null ? [] : daysOf(first.id, context)),
    paragraph(together),
    ...chosen(context),
    {
      kind: 'fit',
      gives: 4,
      forms: [() => [{ kind: 'writeIn', label: speaker.say('pages.patientBack.think'), lines: 1 }], () => []],
    },
  ];
}

/** That somebody chose it, and what would have stood here. */
function chosen(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  if (analysis.topics[0]?.rule !== 'chosen') return [];
  return [paragraph(speaker.say('pages.patientBack.chosen', { topic: word(ruledName(context)) }), 'small')];
}

/** So many days to pick one from are enough. */
const MOST_DAYS = 4;

/** The days a statement rests on, the last of them where they are many. */
function daysOf(id: FindingId, context: PageContext): Block[] {
  const { speaker } = context;
  const all = [...new Set(held(context, id)?.where.map(({ date }) => date))].sort();
  if (all.length === 0) return [];
  const shown = all.slice(-MOST_DAYS).map((date) => weekdayAnd(date, speaker));
  return [
    paragraph(
      speaker.say('pages.patientBack.days', {
        dates: word(dotted(shown)),
        all: word(all.length > shown.length ? 'no' : 'yes'),
      }),
      'small',
    ),
  ];
}

/** The one thing notes tell that fits the topic; without one, the note that would help most next time. */
function notes(context: PageContext): string[] {
  const { speaker, analysis } = context;
  const second = besideTopic(analysis.found, analysis.topics);
  const look = second === null ? null : held(context, second);
  // Said once, with what was agreed.
  if (look !== null && isSaidWithAgreed(context, look)) return [];
  const text = second && findingText(context, second, 'what');
  const [wish] = notesWorthWriting(analysis.measures, analysis.topics);
  const line = text ?? (wish ? speaker.say(`coach.${wish}.patient`) : null);
  return line === null ? [] : [line];
}

/** What changed since the earlier period, when one was compared: real or chance, lows first. Where what was agreed is told, only what is real. */
export function since(context: PageContext, agreed: boolean): Block[] {
  const all = ['changed-lows', 'goals-then-and-now', 'changed-range', 'change-not-told'] as const;
  const [line] = tellAll(context, agreed ? all.slice(0, -1) : all);
  return line === undefined ? [] : [heading(2, context.speaker.say('pages.patientBack.since')), paragraph(line)];
}
