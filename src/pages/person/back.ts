import type { FindingId } from '../../findings/index.ts';
import { isolated } from '../../language/index.ts';
import type { Block } from '../../model/report.ts';
import { besideTopic } from '../../topics/index.ts';
import { dotted, findingText, heading, type PageContext, type PageMaker, paragraph, word } from '../context.ts';
import { agreedTyped, signed } from '../visit/written.ts';
import { agreedLastTime } from './lastTime.ts';
import { isLarge } from './sides.ts';
import { since, topic } from './topic.ts';

const MOST_QUESTIONS = 3;
const LEAST_QUESTIONS = 2;

/** The second side: what to look at together, room to ask and to answer, what was agreed, how to stay safe. */
export const patientBack: PageMaker = (context) => {
  const title = context.speaker.say('pages.patientBack.title');
  const before = agreedLastTime(context);
  return {
    id: 'patient-back',
    title,
    blocks: [
      ...before,
      ...topic(context),
      ...changed(context, before.length > 0),
      ...questions(context),
      ...(isLarge(context) ? [own(context)] : [...side(context), ...last(context)]),
    ],
  };
};

/** What changed besides gives way to what was agreed, then or now. */
function changed(context: PageContext, agreed: boolean): Block[] {
  const lines = since(context, agreed);
  const gives = agreed || agreedTyped(context).length > 0;
  return gives && lines.length > 0 ? [{ kind: 'fit', gives: 1, forms: [() => lines, () => []] }] : lines;
}

/** Of large print: what the third side has no room for. */
export const patientSafe: PageMaker = (context) => {
  if (!isLarge(context)) return null;
  const title = context.speaker.say('pages.patientBack.last');
  const room: Block = { kind: 'fit', gives: 1, forms: [3, 2, 1].map((lines) => () => [agreed(context, lines)]) };
  const filled = agreedTyped(context).length > 0;
  return { id: 'patient-safe', title, blocks: [...(filled ? typed(context) : [room]), ...last(context)] };
};

const last = (context: PageContext): Block[] => [
  ...leftOut(context),
  safe(context),
  paragraph(context.speaker.say('cautions.C13'), 'small'),
];

/** Open questions of the findings that hold, the topic's first. */
function questions(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const second = besideTopic(analysis.found, analysis.topics);
  const first = [...analysis.topics.map(({ id }) => id), ...(second === null ? [] : [second])];
  const order = [...first, ...analysis.found.map(({ id }) => id).filter((id) => !isIdle(id, context))];
  const asked = [...new Set(order.flatMap((id) => findingText(context, id, 'ask') ?? []))].slice(0, MOST_QUESTIONS);
  if (asked.length === 0) return [];
  const title = heading(2, speaker.say('pages.patientBack.questions'));
  const boxes = (items: string[]) => (): Block[] => [title, { kind: 'boxes', items }];
  const answered = (items: string[]) => (): Block[] => [
    title,
    ...items.map((label): Block => ({ kind: 'writeIn', label, lines: 1 })),
  ];
  const few = asked.slice(0, LEAST_QUESTIONS);
  // Beside what was agreed these give way to lines for the person's own.
  const fewer = agreedTyped(context).length > 0 ? [boxes(asked.slice(0, 1)), () => []] : [];
  return [{ kind: 'fit', gives: 3, forms: [answered(asked), answered(few), boxes(asked), boxes(few), ...fewer] }];
}

/** What went well needs no answer, and without a low of a quarter of an hour nights raise no question of their own. */
function isIdle(id: FindingId, { analysis }: PageContext): boolean {
  const { lows } = analysis.measures;
  return id.startsWith('best-') || (id === 'lows-at-night' && lows.ok && lows.value.list.length === 0);
}

const own = ({ speaker }: PageContext): Block => ({
  kind: 'writeIn',
  label: speaker.say('pages.patientBack.own'),
  lines: 3,
});

const agreed = ({ speaker }: PageContext, lines = 3): Block => ({
  kind: 'writeIn',
  label: speaker.say('pages.patientBack.agreed'),
  lines,
});

/** One under the other where there is room, else side by side; what was typed has the whole width. */
function side(context: PageContext): Block[] {
  if (agreedTyped(context).length > 0) return typed(context);
  return [
    {
      kind: 'fit',
      gives: 2,
      forms: [
        () => [own(context), agreed(context)],
        () => [{ kind: 'columns', widths: [0.5, 0.5], columns: [[own(context)], [agreed(context)]] }],
      ],
    },
  ];
}

/** What was agreed, as it was typed in, with who did and when; at last the goal and the step alone, as all of it stands in the report. */
function typed(context: PageContext): Block[] {
  const { speaker } = context;
  const lines = agreedTyped(context);
  const main = lines.filter(({ name }) => name === 'goals' || name === 'step');
  const said = (some: typeof lines) => some.map(({ label, text }) => `${label}: ${text}`);
  const list = (dense: boolean): Block => ({ kind: 'list', ordered: false, dense, items: said(lines) });
  const title = heading(2, speaker.say('pages.patientBack.agreed'));
  const by = signed(context).flatMap((block) => (block.kind === 'paragraph' ? [block.text] : []));
  const running = (some: typeof lines): Block => paragraph([`${dotted(said(some))}.`, ...by].join(' '), 'small');
  return [
    {
      kind: 'fit',
      gives: 7,
      forms: [
        () => [own(context), title, list(false), ...signed(context)],
        () => [own(context), title, list(true), ...signed(context)],
        () => [own(context), title, running(lines)],
        () => [title, list(true), ...signed(context)],
        () => [title, running(lines)],
        ...(main.length > 0 ? [() => [title, running(main)]] : []),
      ],
    },
  ];
}

function leftOut({ speaker, analysis }: PageContext): Block[] {
  const { rows, duplicate, setAside } = analysis.ledger;
  if (duplicate + setAside === 0) return [];
  return [
    paragraph(
      speaker.say('pages.patientBack.leftOut', {
        out: { q: 'count', value: duplicate + setAside },
        rows: { q: 'count', value: rows },
        duplicate: { q: 'count', value: duplicate },
        setAside: { q: 'count', value: setAside },
      }),
      'small',
    ),
  ];
}

function safe({ speaker, analysis }: PageContext): Block {
  const { phone } = analysis.settings.person;
  return {
    kind: 'panel',
    blocks: [
      heading(2, speaker.say('pages.patientBack.safe')),
      {
        kind: 'list',
        ordered: false,
        items: (['C3', 'C4', 'C5', 'C6'] as const).map((id) => speaker.say(`cautions.${id}`)),
      },
      ...(phone ? [paragraph(speaker.say('pages.patientBack.phone', { phone: word(isolated(phone)) }), 'strong')] : []),
    ],
  };
}
