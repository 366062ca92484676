import { choice } from '../../findings/evidence/quantities.ts';
import { isolated } from '../../language/index.ts';
import type { LocalDate } from '../../model/glucose.ts';
import type { Block } from '../../model/report.ts';
import type { MeasureThenAndNow } from '../../model/visits.ts';
import { count, heading, type PageContext, paragraph, word } from '../context.ts';
import { countsOf, noteOf } from '../visit/lastTime.ts';

/** What the person wanted and agreed last time, and how it went: with its verdict, or nothing is said of it. */
export function agreedLastTime(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const found = analysis.measures.lastTime;
  if (!found.ok) return [];
  const { agreed, measure } = found.value;
  const own = (text: string) => ({ text: word(isolated(text)) });
  const { goal, step, helper, nextVisit, sure, question } = agreed ?? {};
  const wanted = [
    ...(goal === undefined ? [] : [speaker.say('pages.patientBack.lastTime.goal', own(goal))]),
    ...(step === undefined ? [] : [speaker.say('pages.patientBack.lastTime.step', own(step))]),
  ];
  const date = (value: LocalDate) => ({ date: word(speaker.value({ q: 'date', value }, 'dated')) });
  const who = [
    ...(helper === undefined ? [] : [speaker.say('pages.patientBack.lastTime.helper', own(helper))]),
    ...(sure === undefined ? [] : [speaker.say('pages.patientBack.lastTime.sure', { sure: count(sure) })]),
  ];
  const next = nextVisit === undefined ? [] : [speaker.say('pages.patientBack.lastTime.next', date(nextVisit))];
  const asked = question === undefined ? [] : [speaker.say('pages.patientBack.lastTime.question', own(question))];
  const went = howItWent(context, measure);
  if (wanted.length + went.length === 0) return [];
  const form = (lines: string[], style: 'body' | 'small') => (): Block[] => [
    heading(2, speaker.say('pages.patientBack.lastTime.title')),
    paragraph(lines.join(' '), style),
  ];
  // All of it is of the agreement, so room to write gives way before. Only words of half a side cost the question and the date theirs.
  const main = [...wanted, ...went];
  const ladder = [[...main, ...who, ...next, ...asked], [...main, ...who, ...next], [...main, ...who], main];
  const shorter = ladder.slice(1).filter((lines, i) => lines.length !== ladder[i]?.length);
  const forms = [
    ...(['body', 'small'] as const).map((style) => form(ladder[0]!, style)),
    ...shorter.map((lines) => form(lines, 'small')),
  ];
  return [{ kind: 'fit', gives: 8, forms }];
}

/** How a finding about notes names its counts: how often it came, of how many days with the note. */
const COUNTED = [
  ['withK', 'withN'],
  ['low', 'days'],
  ['count', 'of'],
] as const;

/** Whether what a finding counts has just been told as the measure of what was agreed. */
export function isSaidWithAgreed({ analysis }: PageContext, look: { params: object }): boolean {
  const found = analysis.measures.lastTime;
  const measure = found.ok ? found.value.measure : null;
  if (measure?.of !== 'after-note' || measure.now === null) return false;
  const { k, n } = measure.now;
  const params = look.params as Record<string, { value?: unknown } | undefined>;
  return COUNTED.some(([some, all]) => params[some]?.value === k && params[all]?.value === n);
}

function howItWent(context: PageContext, measure: MeasureThenAndNow | null): string[] {
  const { speaker } = context;
  if (measure === null) return [];
  const verdict = (key: 'told' | 'notTold' | 'few' | 'cannot') =>
    speaker.say(`pages.patientBack.lastTime.verdict.${key}`);
  if ('change' in measure) {
    const { before, now, verdict: found } = measure.change;
    const said = speaker.say('pages.patientBack.lastTime.share', {
      of: choice(measure.of),
      before: { q: 'share', value: measure.of === 'cv' ? 0 : before },
      now: { q: 'share', value: measure.of === 'cv' ? 0 : now },
    });
    return [said, verdict(found === 'cannot-tell' ? 'cannot' : found === 'more-than-noise' ? 'told' : 'notTold')];
  }
  // A note that was not made any more shows nothing.
  if (measure.now === null || measure.now.n === 0) return [];
  const counts = countsOf(measure);
  const said =
    measure.of === 'nights-low'
      ? speaker.say('pages.patientBack.lastTime.nights', counts)
      : speaker.say('pages.patientBack.lastTime.note', { ...counts, ...noteOf(measure) });
  const few = measure.verdict === 'cannot-tell';
  return [said, verdict(few ? 'few' : measure.verdict === 'more-than-noise' ? 'told' : 'notTold')];
}
