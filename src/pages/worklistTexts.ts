import type { Speaker } from '../language/index.ts';
import type { Reason, Tier, WorklistLine } from '../model/clinic.ts';
import type { Params } from '../model/quantity.ts';
import { count, word } from './context.ts';

export const tierName = (say: Speaker, tier: Tier): string => say.say(`clinic.tiers.${tier}`);

/** All reasons in one line, dates short, what is further from the goals than last time together. */
export function reasonsText(say: Speaker, reasons: readonly Reason[]): string {
  const isWorse = ({ key }: Reason): boolean => key.startsWith('clinic.reasons.worse.');
  const texts = (some: readonly Reason[]): string[] =>
    some.map(({ key, params }) => say.say(key, shortDates(params, say)));
  const worse = texts(reasons.filter(isWorse));
  return [
    ...texts(reasons.filter((reason) => !isWorse(reason))),
    ...(worse.length > 0 ? [say.say('clinic.reasons.sinceLast', { names: word(worse.join(', ')) })] : []),
  ].reduce((all, text) => (all === '' ? text : `${all}${all.endsWith('.') ? ' ' : '; '}${text}`), '');
}

/** So many reasons of someone who could not be read are told where a page is looked at; the table for programs has all. */
const TOLD = 3;

/** The reasons as a person looks at them: a folder of many faulty files does not fill the page. */
export function briefReasons(say: Speaker, reasons: readonly Reason[]): string {
  const more = reasons.length - TOLD;
  if (reasons[0]?.tier !== 'unread' || more < 2) return reasonsText(say, reasons);
  const rest = say.say('clinic.reasons.more', { count: count(more), file: word('worklist.csv') });
  return `${reasonsText(say, reasons.slice(0, TOLD))} ${rest}`;
}

const shortDates = (params: Params, say: Speaker): Params =>
  Object.fromEntries(
    Object.entries(params).map(([name, value]) => [
      name,
      value.q === 'dates'
        ? word(value.value.map((date) => say.value({ q: 'date', value: date }, 'compact')).join(', '))
        : value,
    ]),
  );

/** What changed since the earlier period by more than day-to-day noise, or why nothing is told. */
export function sinceText(say: Speaker, { outcome: { facts } }: WorklistLine): string {
  if (!facts) return '';
  if (!facts.change) return say.say('clinic.change.notCompared');
  const { change } = facts;
  if (!change.told) return say.say('clinic.change.cannotTell');
  const parts = (['worse', 'better'] as const)
    .filter((way) => change[way].length > 0)
    .map((way) => say.say(`clinic.change.${way}`, { names: word(namesOf(change[way], say)) }));
  return parts.length > 0 ? parts.join('; ') : say.say('clinic.change.withinNoise');
}

const namesOf = (all: readonly string[], say: Speaker): string =>
  all.map((of) => say.say(`clinic.change.of.${of}`)).join(', ');

export function hoursText(say: Speaker, { outcome: { facts } }: WorklistLine): string {
  if (!facts) return '';
  const whole = (hours: number): string => say.number(hours, 0);
  return say.say('clinic.hoursOf', {
    hours: word(whole(facts.coverage.hours)),
    of: word(whole(facts.coverage.ofHours)),
  });
}

export const visitText = (say: Speaker, { outcome: { visit } }: WorklistLine): string =>
  visit === null ? '' : say.value({ q: 'date', value: visit }, 'compact');

/** The reasons, and what is closer to the goals than last time. */
export function whyText(say: Speaker, line: WorklistLine): string {
  const better = line.outcome.facts?.change?.better ?? [];
  const reasons = briefReasons(say, line.reasons);
  if (better.length === 0) return reasons;
  return `${reasons}; ${say.say('clinic.change.better', { names: word(namesOf(better, say)) })}`;
}
