import type { Block } from '../../model/report.ts';
import { count, heading, heldTopics, type PageContext, type PageMaker, paragraph, tellAll, word } from '../context.ts';
import { fewDays } from './days.ts';
import { evidence } from './evidence.ts';
import { lastTime } from './lastTime.ts';
import { aside, isThin } from './layout.ts';
import { wellSaid } from './otherFindings.ts';
import { remarks } from './remarks.ts';
import { chosenOr } from './topicBox.ts';
import { type AgreedField, agreedHere, signed, writtenHere } from './written.ts';

/** The back of the last sheet: evidence for the topic (of little data the days that there are), what went well, what could not be told, room for an interpretation to sign, what we agreed. */
export const agreeing: PageMaker = (context) => {
  const { speaker } = context;
  const few = isThin(context) ? fewDays(context) : [];
  const title = speaker.say(few.length > 0 ? 'pages.visit.daysAndAgreeing' : 'pages.visit.agreeing');
  return {
    id: 'agreed',
    title,
    blocks: [
      heading(1, title),
      ...(isThin(context) ? [...few, ...lastTime(context), ...remarks(context)] : evidence(context)),
      ...well(context),
      ...untold(context),
      ...draft(context),
      ...agreed(context),
      rows(context),
    ],
  };
};

function well(context: PageContext): Block[] {
  const lines = tellAll(context, wellSaid(context));
  if (lines.length === 0) return [];
  return [aside(context.speaker.say('pages.visit.well'), [paragraph(lines.join(' '))])];
}

/** What the data could not tell, by name; where there is no room for all, the first and how many more. */
function untold({ speaker, analysis }: PageContext): Block[] {
  const names = analysis.found.flatMap(({ id, look }) =>
    look.case === 'untold' ? [speaker.say(`findings.${id}.untold`)] : [],
  );
  if (names.length === 0) return [];
  const line = (most: number): Block[] => {
    const rest = names.length - most;
    const more = rest > 0 ? [speaker.say('pages.visit.untoldMore', { count: count(rest) })] : [];
    return [paragraph(`${[...names.slice(0, most), ...more].join('; ')}.`, 'small')];
  };
  const forms = [6, 4, 2].filter(
    (most, i, all) => most <= names.length || all[i + 1]! < names.length || i === all.length - 1,
  );
  const title = speaker.say('pages.standsOut.untold');
  return [{ kind: 'fit', gives: 2, forms: forms.map((most) => () => [aside(title, line(most))]) }];
}

/** Lines for the clinician's own words that are tried: the last are on every report. */
const OWN_LINES = [7, 6, 5, 4];

/** Room for a clinician's own words and signature. The draft in sentences is a text of its own: here it would tell page 1 again. */
function draft(context: PageContext): Block[] {
  const { speaker } = context;
  const line = (name: 'signature' | 'date'): Block => ({
    kind: 'writeIn',
    label: speaker.say(`pages.interpretation.${name}`),
    lines: 1,
    inline: true,
  });
  const topic = heldTopics(context)[0]?.name ?? 'none';
  const typed = writtenHere(context, 'interpretation');
  const room: Block = {
    kind: 'fit',
    gives: 1,
    forms: OWN_LINES.map((lines) => () => [{ kind: 'writeIn', lines }]),
  };
  return [
    heading(2, speaker.say('pages.interpretation.own')),
    paragraph(speaker.say('pages.visit.draft', { topic: word(topic), chosen: chosenOr(context) })),
    ...(typed.length > 0 ? typed : [room]),
    { kind: 'columns', widths: [0.6, 0.4], columns: [[line('signature')], [line('date')]] },
  ];
}

/** What the visit ends with, typed in or to write by hand: all of it always stands; with shorter lines where room is short. */
function agreed(context: PageContext): Block[] {
  const { speaker } = context;
  const typed = new Map(agreedHere(context).map((one) => [one.name, one.text]));
  const line = (name: Exclude<AgreedField, 'sure'>): Block => {
    const text = typed.get(name);
    const label = speaker.say(`pages.agreed.${name}`);
    return { kind: 'writeIn', label, ...(text === undefined ? { lines: 1, inline: true } : { lines: 0, text }) };
  };
  const halves = (...columns: [Block, Block]): Block => ({
    kind: 'columns',
    widths: [0.5, 0.5],
    columns: columns.map((one) => [one]),
  });
  const sure = speaker.say('pages.agreed.sure');
  const boxes: Block = { kind: 'boxes', items: Array.from({ length: 11 }, (_, i) => String(i)), inline: true };
  return [
    heading(2, speaker.say('pages.agreed.title')),
    {
      kind: 'fit',
      gives: 4,
      forms: [() => [line('goals'), line('step')], () => [halves(line('goals'), line('step'))]],
    },
    halves(line('helper'), line('next')),
    ...(typed.has('question') ? [line('question')] : []),
    ...(typed.has('sure') ? [paragraph(`${sure} ${typed.get('sure')}`)] : [paragraph(sure), boxes]),
    ...writtenHere(context, 'remarks'),
    ...signed(context),
  ];
}

/** Rows used and left out, and where all the rest is. */
function rows({ speaker, analysis }: PageContext): Block {
  const { rows, used, notes, duplicate, setAside, ignored } = analysis.ledger;
  const params = {
    rows: count(rows),
    used: count(used),
    notes: count(notes),
    duplicate: count(duplicate),
    setAside: count(setAside),
    ignored: count(ignored),
  };
  const lines = [
    speaker.say('pages.accounting.sum', params),
    speaker.say('pages.visit.elsewhere'),
    ...(speaker.reviewed ? [] : [speaker.say('pages.method.unreviewed')]),
  ];
  return paragraph(lines.join(' '), 'small');
}
