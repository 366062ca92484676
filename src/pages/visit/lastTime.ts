import { choice } from '../../findings/evidence/quantities.ts';
import { isolated } from '../../language/index.ts';
import type { LocalDate } from '../../model/glucose.ts';
import type { Block } from '../../model/report.ts';
import type { Agreed, CountThenAndNow, LastTime, MeasureThenAndNow } from '../../model/visits.ts';
import { count, heading, type PageContext, paragraph, word, yearOf } from '../context.ts';
import { amountOf, nameOfChange } from '../thenAndNow.ts';

/** What was agreed at the visit before, and the measure of its topic then and now: never without its verdict. */
export function lastTime(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const found = analysis.measures.lastTime;
  if (!found.ok) return [];
  const { value } = found;
  const title = heading(2, speaker.say('pages.lastTime.title'));
  const then = when(context, value);
  const measured = measureSaid(context, value.measure);
  const form = (agreed: string[]) => (): Block[] => [title, paragraph([then, ...agreed].join(' '))];
  const [short, whole] = [agreedSaid(context, value, false), agreedSaid(context, value, true)];
  const how = agreedLines(context, value.agreed, HOW).join(' ');
  return [
    { kind: 'fit', gives: 4, forms: whole.length > short.length ? [form(whole), form(short)] : [form(short)] },
    ...(how === '' ? [] : [{ kind: 'fit' as const, gives: 3, forms: [() => [paragraph(how)], () => []] }]),
    paragraph(measured, 'strong'),
  ];
}

const WHAT: readonly (keyof Agreed)[] = ['goal', 'step', 'question'];
/** Gives way before the rest of it: who helps, the next date and how sure. */
const HOW: readonly (keyof Agreed)[] = ['helper', 'nextVisit', 'sure'];

/** Whose the earlier file is, where no day in both shows it: to tick once somebody has looked. */
export function samePerson({ speaker, analysis }: PageContext): Block[] {
  const found = analysis.measures.lastTime;
  if (!found.ok || found.value.proved) return [];
  const { code, clinic } = found.value.person;
  const item = speaker.say('pages.lastTime.samePerson', {
    code: word(code === undefined ? 'none' : isolated(code)),
    clinic: word(clinic === undefined ? 'none' : isolated(clinic)),
    ...periodOf(speaker, found.value),
  });
  return [{ kind: 'boxes', items: [item] }];
}

const periodOf = (speaker: PageContext['speaker'], { from, to }: LastTime) => ({
  from: word(speaker.value({ q: 'date', value: from }, yearOf(from, to))),
  to: word(speaker.value({ q: 'date', value: to }, 'dated')),
});

const when = ({ speaker }: PageContext, value: LastTime): string =>
  speaker.say('pages.lastTime.when', periodOf(speaker, value));

function agreedSaid(context: PageContext, { agreed, changed }: LastTime, whole: boolean): string[] {
  const { speaker } = context;
  const changes = changed.map(({ on, what }) =>
    speaker.say('pages.lastTime.changed', { date: dated(context, on), text: word(isolated(what)) }),
  );
  const typed = agreedLines(context, agreed, WHAT);
  const none = agreedLines(context, agreed).length === 0;
  return [...(none ? [speaker.say('pages.lastTime.nothing')] : typed), ...(whole ? changes : [])];
}

const dated = ({ speaker }: PageContext, value: LocalDate) => word(speaker.value({ q: 'date', value }, 'dated'));

const ALL = [...WHAT, ...HOW];

/** What was agreed, a sentence a field, in the order of the form. */
export function agreedLines(
  context: PageContext,
  agreed: Agreed | null,
  only: readonly (keyof Agreed)[] = ALL,
): string[] {
  const { speaker } = context;
  const { goal, step, helper, nextVisit, sure, question } = agreed ?? {};
  const own = (key: 'goal' | 'step' | 'helper' | 'question', text: string | undefined) =>
    text === undefined ? [] : [[key, speaker.say(`pages.lastTime.${key}`, { text: word(isolated(text)) })] as const];
  const lines: (readonly [keyof Agreed, string])[] = [
    ...own('goal', goal),
    ...own('step', step),
    ...own('helper', helper),
    ...(nextVisit === undefined
      ? []
      : [['nextVisit', speaker.say('pages.lastTime.next', { date: dated(context, nextVisit) })] as const]),
    ...(sure === undefined ? [] : [['sure', speaker.say('pages.lastTime.sure', { sure: count(sure) })] as const]),
    ...own('question', question),
  ];
  return lines.flatMap(([field, line]) => (only.includes(field) ? [line] : []));
}

/** The measure then and now in a sentence, and its verdict in the next. */
function measureSaid(context: PageContext, measure: MeasureThenAndNow | null): string {
  const { speaker } = context;
  if (measure === null) return speaker.say('pages.lastTime.noMeasure');
  if ('change' in measure) {
    const { change } = measure;
    const said = speaker.say('pages.lastTime.share', {
      name: word(nameOfChange(change, context)),
      before: word(amountOf(change, change.before, context)),
      now: word(amountOf(change, change.now, context)),
    });
    return `${said} ${changeVerdict(context, measure)}`;
  }
  const counts = countsOf(measure);
  const verdict = countVerdict(context, measure);
  if (measure.of === 'nights-low') {
    const said = measure.now
      ? speaker.say('pages.lastTime.nights', counts)
      : speaker.say('pages.lastTime.nightsGone', counts);
    return `${said} ${verdict}`;
  }
  const params = { ...counts, ...noteOf(measure) };
  const said = measure.now
    ? speaker.say('pages.lastTime.note', params)
    : speaker.say('pages.lastTime.noteGone', params);
  return `${said} ${verdict}`;
}

export const countsOf = ({ before, now }: CountThenAndNow) => ({
  beforeK: count(before.k),
  beforeN: count(before.n),
  nowK: count(now?.k ?? 0),
  nowN: count(now?.n ?? 0),
});

export const noteOf = ({ note, outcome }: Extract<MeasureThenAndNow, { of: 'after-note' }>) => ({
  note: choice(note.id),
  name: word(isolated(note.name)),
  of: choice(outcome),
});

function countVerdict({ speaker }: PageContext, { verdict, why }: CountThenAndNow): string {
  if (verdict === 'cannot-tell') return speaker.say(`pages.lastTime.verdict.${why ?? 'few'}`);
  return speaker.say(`pages.lastTime.verdict.${verdict === 'more-than-noise' ? 'told' : 'notTold'}`);
}

function changeVerdict({ speaker }: PageContext, measure: Extract<MeasureThenAndNow, { change: unknown }>): string {
  const { verdict, why } = measure.change;
  if (verdict === 'cannot-tell')
    return speaker.say('pages.lastTime.verdict.cannot', {
      why: word(speaker.say(`pages.thenAndNow.verdict.cannotTell.${why ?? 'few-days'}`)),
    });
  return speaker.say(`pages.lastTime.verdict.${verdict === 'more-than-noise' ? 'told' : 'notTold'}`);
}
