import type { Block } from '../../model/report.ts';
import { caution, heading, type PageContext, type PageMaker, paragraph, tellAll, word } from '../context.ts';
import { interpretationSentences } from '../interpretationSentences.ts';
import { isThin } from './layout.ts';

/** The back of the second sheet: what went well, what could not be told, the draft to sign, and what we agreed. */
export const agreeing: PageMaker = (context) => {
  const { speaker } = context;
  const title = speaker.say('pages.visit.agreeing');
  return {
    id: 'agreed',
    title,
    blocks: [
      heading(1, title),
      ...(isThin(context) ? [caution(context, 'C11')] : []),
      ...well(context),
      ...untold(context),
      ...draft(context),
      ...agreed(context),
      ...rows(context),
    ],
  };
};

function well(context: PageContext): Block[] {
  const lines = tellAll(context, ['best-window', 'best-days', 'steady-nights']).slice(0, 2);
  if (lines.length === 0) return [];
  return [heading(2, context.speaker.say('pages.visit.well')), paragraph(lines.join(' '))];
}

/** In a line: what the data could not tell. */
function untold({ speaker, analysis }: PageContext): Block[] {
  const names = analysis.found.flatMap(({ id, look }) =>
    look.case === 'untold' ? [speaker.say(`findings.${id}.untold`)] : [],
  );
  if (names.length === 0) return [];
  return [heading(2, speaker.say('pages.standsOut.untold')), paragraph(`${names.join('. ')}.`, 'small')];
}

/** Words for the record, for a clinician to edit and sign. */
function draft(context: PageContext): Block[] {
  const { speaker } = context;
  const line = (name: 'signature' | 'date'): Block => ({
    kind: 'writeIn',
    label: speaker.say(`pages.interpretation.${name}`),
    lines: 1,
  });
  return [
    heading(2, speaker.say('pages.interpretation.title')),
    paragraph(interpretationSentences(context).join(' ')),
    { kind: 'columns', widths: [0.6, 0.4], columns: [[line('signature')], [line('date')]] },
  ];
}

function agreed({ speaker }: PageContext): Block[] {
  const line = (name: 'step' | 'goals' | 'helper' | 'next', lines = 1): Block => ({
    kind: 'writeIn',
    label: speaker.say(`pages.agreed.${name}`),
    lines,
  });
  return [
    heading(2, speaker.say('pages.agreed.title')),
    line('goals'),
    line('step', 2),
    { kind: 'columns', widths: [0.5, 0.5], columns: [[line('helper')], [line('next')]] },
    paragraph(speaker.say('pages.agreed.sure')),
    { kind: 'boxes', items: Array.from({ length: 11 }, (_, index) => String(index)), inline: true },
  ];
}

/** Rows used and left out, and where all the rest is. */
function rows({ speaker, analysis }: PageContext): Block[] {
  const { rows, used, notes, duplicate, setAside, ignored } = analysis.ledger;
  const counted = { rows, used, notes, duplicate, setAside, ignored };
  const params = Object.fromEntries(
    Object.entries(counted).map(([name, value]) => [name, { q: 'count' as const, value }]),
  ) as Record<keyof typeof counted, { q: 'count'; value: number }>;
  return [
    paragraph(
      [
        speaker.say('pages.accounting.sum', params),
        speaker.say('pages.visit.elsewhere', { version: word(analysis.version) }),
      ].join(' '),
      'small',
    ),
  ];
}
