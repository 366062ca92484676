import { modalDayChart } from '../charts/modalDay.ts';
import type { Block } from '../model/report.ts';
import { besideTopic, notesWorthWriting } from '../topics/index.ts';
import { heading, type PageContext, type PageMaker, paragraph, tellAll, told } from './context.ts';

const MOST_QUESTIONS = 3;
/** Text of charts above this is that of large print, points. */
const LARGE = 14;
/** Points of the usual day's curve; lower where notes are told too, as both sides are full. */
const CURVE = { alone: 92, besideNotes: 58, besideChange: 58, large: 150 };

/** The second side: the usual day, questions to bring, what was left out, how to stay safe. */
export const patientBack: PageMaker = (context) => {
  const { speaker } = context;
  return {
    id: 'patient-back',
    title: speaker.say('pages.patientBack.title'),
    blocks: [
      ...usual(context),
      ...sinceOrNotes(context),
      ...questions(context),
      ...leftOut(context),
      ...safe(context),
      ...agreed(context),
      paragraph(speaker.say('cautions.C13'), 'small'),
    ],
  };
};

function usual(context: PageContext): Block[] {
  const { speaker, analysis, chart } = context;
  const height =
    chart.text > LARGE
      ? CURVE.large
      : sinceThen(context).length > 0
        ? CURVE.besideChange
        : notes(context).length > 0
          ? CURVE.besideNotes
          : CURVE.alone;
  const { modalDay } = analysis.measures;
  const title = heading(2, speaker.say('pages.patientBack.usual'));
  if (!modalDay.ok) return [title, paragraph(speaker.say('pages.patientFront.cannotTell'))];
  const gap = modalDay.value.bins.some(({ p50 }) => p50 === null);
  const key = ['pages.patientBack.usualKey', ...(gap ? (['cautions.C11'] as const) : [])] as const;
  return [
    title,
    { kind: 'chart', drawing: modalDayChart(modalDay.value, chart, { height, outer: false }) },
    paragraph(key.map((each) => speaker.say(each)).join(' ')),
  ];
}

/** Both sides are full: a comparison that was asked for takes the place of what notes tell. */
function sinceOrNotes(context: PageContext): Block[] {
  const since = sinceThen(context);
  return since.length > 0 ? since : notes(context);
}

/** What changed since the earlier period, when one was compared: real or chance, lows first. */
function sinceThen(context: PageContext): Block[] {
  const [line] = tellAll(context, ['changed-lows', 'goals-then-and-now', 'changed-range', 'change-not-told']);
  return line === undefined ? [] : [heading(2, context.speaker.say('pages.patientBack.since')), paragraph(line)];
}

/** The one thing notes tell that fits the topic; without one, the note that would help most next time. */
function notes(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const beside = besideTopic(analysis.found, analysis.topics);
  const text = beside && told(context, beside, 'what');
  const [wish] = notesWorthWriting(analysis.measures, analysis.topics);
  const line = text ?? (wish ? speaker.say(`coach.${wish}.patient`) : null);
  return line === null ? [] : [heading(2, speaker.say('pages.patientBack.notes')), paragraph(line)];
}

/** Open questions of the findings that hold, the topic's first, then room for one's own. */
function questions(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const beside = besideTopic(analysis.found, analysis.topics);
  const first = [...analysis.topics.map(({ id }) => id), ...(beside === null ? [] : [beside])];
  const order = [...first, ...analysis.found.map(({ id }) => id)];
  const asked = [...new Set(order.flatMap((id) => told(context, id, 'ask') ?? []))].slice(0, MOST_QUESTIONS);
  return [
    heading(2, speaker.say('pages.patientBack.questions')),
    { kind: 'boxes', items: asked },
    { kind: 'writeIn', label: speaker.say('pages.patientBack.own'), lines: 1 },
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

function safe(context: PageContext): Block[] {
  const { speaker } = context;
  return [
    {
      kind: 'panel',
      blocks: [
        heading(2, speaker.say('pages.patientBack.safe')),
        {
          kind: 'list',
          ordered: false,
          items: (['C3', 'C4', 'C5', 'C6'] as const).map((id) => speaker.say(`cautions.${id}`)),
        },
      ],
    },
  ];
}

/** Large print leaves half of its last sheet: room to write down what was agreed. */
function agreed({ speaker, chart }: PageContext): Block[] {
  return chart.text > LARGE ? [{ kind: 'writeIn', label: speaker.say('pages.patientBack.agreed'), lines: 3 }] : [];
}
