import { choice } from '../findings/evidence/quantities.ts';
import { isolated, type Speaker } from '../language/index.ts';
import type { Reason, SeverityPart, Tier, WorklistLine } from '../model/clinic.ts';
import type { FoundBy } from '../model/folder.ts';
import type { Params } from '../model/quantity.ts';
import type { Directed } from '../model/thenAndNow.ts';
import { count, word } from './context.ts';

export const tierName = (speaker: Speaker, tier: Tier): string => speaker.say(`clinic.tiers.${tier}`);

/** All reasons in one line, dates short, what is further from the goals than last time together. */
export function reasonsText(speaker: Speaker, reasons: readonly Reason[]): string {
  const isWorse = ({ key }: Reason): boolean => key.startsWith('clinic.reasons.worse.');
  const texts = (some: readonly Reason[]): string[] =>
    some.map(({ key, params }) => speaker.repeat({ key, params: shortDates(params, speaker) }));
  const worse = texts(reasons.filter(isWorse));
  return [
    ...texts(reasons.filter((reason) => !isWorse(reason))),
    ...(worse.length > 0 ? [speaker.say('clinic.reasons.sinceLast', { names: word(worse.join(', ')) })] : []),
  ].reduce((all, text) => (all === '' ? text : `${all}${all.endsWith('.') ? ' ' : '; '}${text}`), '');
}

/** So many reasons of someone who could not be read are told where a page is looked at; the table for programs has all. */
const MOST_REASONS = 3;

/** The reasons as a person looks at them: a folder of many faulty files does not fill the page. */
export function briefReasons(speaker: Speaker, reasons: readonly Reason[]): string {
  const more = reasons.length - MOST_REASONS;
  if (reasons[0]?.tier !== 'unread' || more < 2) return reasonsText(speaker, reasons);
  const rest = speaker.say('clinic.reasons.more', { count: count(more), file: word('worklist.csv') });
  return `${reasonsText(speaker, reasons.slice(0, MOST_REASONS))} ${rest}`;
}

const shortDates = (params: Params, speaker: Speaker): Params =>
  Object.fromEntries(
    Object.entries(params).map(([name, value]) => [
      name,
      value.q === 'dates'
        ? word(value.value.map((date) => speaker.value({ q: 'date', value: date }, 'compact')).join(', '))
        : value,
    ]),
  );

/** What changed since the earlier period by more than day-to-day noise, or why nothing is told. */
export function sinceText(speaker: Speaker, { outcome: { facts } }: WorklistLine): string {
  if (!facts) return '';
  if (!facts.change) return speaker.say('clinic.change.notCompared');
  const { change } = facts;
  if (!change.told) return speaker.say('clinic.change.cannotTell');
  const parts = (['worse', 'better'] as const)
    .filter((way) => change[way].length > 0)
    .map((way) => speaker.say(`clinic.change.${way}`, { names: word(namesOf(change[way], speaker)) }));
  return parts.length > 0 ? parts.join('; ') : speaker.say('clinic.change.withinNoise');
}

const namesOf = (all: readonly Directed[], speaker: Speaker): string =>
  all.map((of) => speaker.say(`clinic.change.of.${of}`)).join(', ');

export function hoursText(speaker: Speaker, { outcome: { facts } }: WorklistLine): string {
  if (!facts) return '';
  const whole = (hours: number): string => speaker.number(hours, 0);
  return speaker.say('clinic.hoursOf', {
    hours: word(whole(facts.coverage.hours)),
    of: word(whole(facts.coverage.ofHours)),
  });
}

export function visitText(speaker: Speaker, { outcome: { visit, time } }: WorklistLine): string {
  if (visit === null) return '';
  const [hour = 0, minute = 0] = time?.split(':').map(Number) ?? [];
  const date = speaker.value({ q: 'date', value: visit }, 'compact');
  return time === undefined ? date : `${date}, ${speaker.value({ q: 'clock', value: hour * 60 + minute })}`;
}

/** Up to which reading a person's files go. */
export function lastReadingText(speaker: Speaker, { outcome: { facts } }: WorklistLine): string {
  const last = facts?.lastReading;
  if (!last) return '';
  const date = speaker.value({ q: 'date', value: last.date }, 'compact');
  return `${date}, ${speaker.value({ q: 'clock', value: last.minute })}`;
}

/** The reasons, what is closer to the goals than last time, and what was agreed then. */
export function whyText(speaker: Speaker, line: WorklistLine): string {
  const better = line.outcome.facts?.change?.better ?? [];
  const reasons = briefReasons(speaker, line.reasons);
  const closer =
    better.length > 0 ? [speaker.say('clinic.change.better', { names: word(namesOf(better, speaker)) })] : [];
  return withAgreed(speaker, line, [reasons, ...closer].join('; '));
}

/** What was agreed at the visit before, and how the measure of its topic went; nothing where nobody typed it in. */
export function agreedText(speaker: Speaker, { outcome: { facts } }: WorklistLine): string {
  const { goal, step, measure = null } = facts?.lastTime ?? {};
  const texts = [goal, step].flatMap((text) => (text === undefined ? [] : isolated(text)));
  if (texts.length === 0) return '';
  const quoted = texts.map((text) => speaker.say('clinic.agreed.quoted', { text: word(text) })).join(', ');
  return speaker.say('clinic.agreed.lastTime', { texts: word(quoted), way: choice(measure?.way ?? 'none') });
}

/** A line of its own sentence, after what is said of the person. */
export function withAgreed(speaker: Speaker, line: WorklistLine, text: string): string {
  const agreed = agreedText(speaker, line);
  if (text === '' || agreed === '') return text + agreed;
  return `${text}${text.endsWith('.') ? '' : '.'} ${agreed}`;
}

/** So many words have room on the first line of a person. */
const WORDS = 8;

/** From so many points on what else presses is told beside the topic. */
const TELLING = 5;
/** Topics that tell of a part themselves. */
const TELLS: Partial<Record<SeverityPart, RegExp>> = { nights: /night/, unbrokenHigh: /high/, longestLow: /long-lows/ };
const MORE = ['nights', 'unbrokenHigh', 'longestLow', 'noInsulin', 'worse'] as const;

/** What the visit is about and what else presses most, in eight words at most. */
export function topicText(speaker: Speaker, line: WorklistLine): string {
  const name = topicName(speaker, line);
  const id = line.outcome.facts?.topic?.id;
  const besides = line.severity.parts
    .filter(({ of, points }) => id !== undefined && points >= TELLING && !TELLS[of]?.test(id))
    .sort((a, b) => b.points - a.points);
  for (const { of } of besides) {
    const known = MORE.find((one) => one === of);
    if (known === undefined) continue;
    const both = speaker.say('clinic.topic.and', {
      topic: word(name),
      more: word(speaker.say(`clinic.topic.more.${known}`)),
    });
    if (both.split(' ').length <= WORDS) return both;
  }
  return name;
}

function topicName(speaker: Speaker, { tier, outcome: { facts } }: WorklistLine): string {
  if (!facts) return speaker.say('clinic.topic.unread');
  const { id, words } = facts.topic ?? { id: '', words: {} };
  const params = Object.fromEntries(Object.entries(words).map(([name, value]) => [name, word(value)]));
  const name = facts.topic ? speaker.sayIfKnown(`findings.${id}.name`, params) : null;
  if (name === null) return speaker.say(tier === 'not-enough' ? 'clinic.topic.notEnough' : 'clinic.topic.none');
  const all = name.split(' ');
  return all.length > WORDS ? `${all.slice(0, WORDS).join(' ')} …` : name;
}

/** How much presses, and what it is added up of; nothing of someone for whom nothing counts. */
export function pointsText(speaker: Speaker, { severity: { points, parts } }: WorklistLine): string {
  if (points === 0) return '';
  const names = parts.map((part) =>
    speaker.say('clinic.severity.part', {
      of: word(speaker.say(`clinic.severity.of.${part.of}`)),
      points: count(part.points),
    }),
  );
  return speaker.say('clinic.severity.points', { points: count(points), parts: word(names.join(', ')) });
}

/** The points, on a line of their own after the reasons. */
export const withPoints = (speaker: Speaker, line: WorklistLine, text: string): string =>
  [text, pointsText(speaker, line)].filter((one) => one !== '').join('\n');

const FOUND_BY = ['folder', 'file', 'joined', 'manifest', 'asked', 'nothing'] as const;

/** By which rules files became people, and how many by each; nothing where it is not known. */
export function foundText(speaker: Speaker, by: readonly (FoundBy | undefined)[]): string {
  const rules = FOUND_BY.flatMap((rule) => {
    const n = by.filter((one) => one === rule).length;
    return n > 0 ? speaker.say(`pages.worklist.found.${rule}`, { n: count(n) }) : [];
  });
  return rules.length === 0 ? '' : speaker.say('pages.worklist.found.all', { rules: word(rules.join(', ')) });
}
