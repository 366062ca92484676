import { modalDayChart } from '../charts/modalDay.ts';
import type { Block } from '../model/report.ts';
import { heading, type PageContext, type PageMaker, paragraph, told } from './context.ts';

const MOST_QUESTIONS = 3;

/** The second side: the usual day, questions to bring, what was left out, how to stay safe. */
export const patientBack: PageMaker = (context) => {
  const { say } = context;
  return {
    id: 'patient-back',
    title: say.say('pages.patientBack.title'),
    blocks: [...usual(context), ...questions(context), ...leftOut(context), ...safe(context)],
  };
};

function usual({ say, analysis, chart }: PageContext): Block[] {
  const { modalDay } = analysis.measures;
  const title = heading(2, say.say('pages.patientBack.usual'));
  if (!modalDay.ok) return [title, paragraph(say.say('pages.patientFront.cannotTell'))];
  return [
    title,
    { kind: 'chart', drawing: modalDayChart(modalDay.value, chart, { height: 92, outer: false }) },
    paragraph(say.say('pages.patientBack.usualKey')),
  ];
}

/** Open questions of the findings that hold, the topic's first, then room for one's own. */
function questions(context: PageContext): Block[] {
  const { say, analysis } = context;
  const order = [...analysis.topics.map((one) => one.id), ...analysis.found.map((one) => one.id)];
  const asked = [...new Set(order.flatMap((id) => told(context, id, 'ask') ?? []))].slice(0, MOST_QUESTIONS);
  return [
    heading(2, say.say('pages.patientBack.questions')),
    { kind: 'boxes', items: asked },
    { kind: 'writeIn', label: say.say('pages.patientBack.own'), lines: 1 },
  ];
}

function leftOut({ say, analysis }: PageContext): Block[] {
  const { rows, duplicate, setAside } = analysis.ledger;
  if (duplicate + setAside === 0) return [];
  return [
    paragraph(
      say.say('pages.patientBack.leftOut', {
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
  const { say } = context;
  return [
    {
      kind: 'panel',
      blocks: [
        heading(2, say.say('pages.patientBack.safe')),
        { kind: 'list', ordered: false, items: ['C3', 'C4', 'C5', 'C6'].map((id) => say.say(`cautions.${id}`)) },
      ],
    },
    paragraph(say.say('cautions.C13'), 'small'),
  ];
}
