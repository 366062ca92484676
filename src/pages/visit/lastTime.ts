import { choice } from '../../findings/evidence/quantities.ts';
import { isolated } from '../../language/index.ts';
import type { LocalDate } from '../../model/glucose.ts';
import type { Block } from '../../model/report.ts';
import type { CountThenAndNow, LastTime, MeasureThenAndNow } from '../../model/visits.ts';
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
  const [short, whole] = [agreedSaid(context, value, false), agreedSaid(context, value, true)];
  const form = (agreed: string[]) => (): Block[] => [
    title,
    paragraph([then, ...agreed].join(' ')),
    paragraph(measured, 'strong'),
  ];
  return [{ kind: 'fit', gives: 4, forms: whole.length > short.length ? [form(whole), form(short)] : [form(short)] }];
}

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

function agreedSaid({ speaker }: PageContext, { agreed, changed }: LastTime, whole: boolean): string[] {
  const own = (text: string) => ({ text: word(isolated(text)) });
  const date = (value: LocalDate) => word(speaker.value({ q: 'date', value }, 'dated'));
  const { goal, step, question } = agreed ?? {};
  const lines = [
    ...(goal === undefined ? [] : [speaker.say('pages.lastTime.goal', own(goal))]),
    ...(step === undefined ? [] : [speaker.say('pages.lastTime.step', own(step))]),
    ...(question === undefined ? [] : [speaker.say('pages.lastTime.question', own(question))]),
  ];
  if (whole) {
    for (const { on, what } of changed)
      lines.push(speaker.say('pages.lastTime.changed', { date: date(on), ...own(what) }));
  }
  return lines.length > 0 ? lines : [speaker.say('pages.lastTime.nothing')];
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
