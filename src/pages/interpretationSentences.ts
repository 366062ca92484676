import type { FindingId } from '../findings/index.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Below, FindingParams, ParamsOf } from '../model/words.ts';
import { storyOf } from '../topics/index.ts';
import { count, held, heldTopics, type PageContext, word } from './context.ts';
import { bounded } from './numbersTable.ts';
import { chosenOr, ruledName } from './visit/topicBox.ts';

const MOST = 9;

type Sentence = (context: PageContext) => string | null;

/**
 * Five to nine sentences in reading order: enough data, very low glucose, lows, nights, long highs and the insulin noted on them,
 * what went well, range with mean and spread, the topic, what was noted before it. Each rests on a finding or a measure with
 * evidence on another page; what could not be told is said, so that silence never stands for "nothing seen".
 */
export function interpretationSentences(context: PageContext): string[] {
  const order = highsFirst(context) ? [highs, insulin, veryLow, lows, nights] : [veryLow, lows, nights, highs, insulin];
  const sentences = [data, ...order, well, range, topic, story].flatMap((sentence) => {
    const text = sentence(context);
    return text === null ? [] : [{ sentence, text }];
  });
  // What went well gives way to what asks for attention.
  return sentences.filter(({ sentence }) => sentences.length <= MOST || sentence !== well).map(({ text }) => text);
}

const data: Sentence = ({ speaker, analysis }) => {
  const { coverage } = analysis.measures;
  if (!coverage.ok) return null;
  return speaker.say('pages.interpretation.sentences.data', {
    hours: { q: 'minutes', value: coverage.value.hours * 60 },
    days: count(analysis.timeline.days.length),
    share: { q: 'share', value: coverage.value.share },
    enough: word(coverage.value.enough ? 'yes' : 'no'),
  });
};

/** The sentence `name` on what a finding saw, or null when it does not hold. */
function seen<Id extends FindingId, K extends SentenceOf<Id>>(context: PageContext, id: Id, name: K): string | null {
  const look = held(context, id);
  return look && context.speaker.repeat({ key: `pages.interpretation.sentences.${name}`, params: look.params });
}

/** The sentences that ask for nothing but what the words of the finding ask for too. */
type SentenceOf<Id extends FindingId> = {
  [K in Below<'pages.interpretation.sentences'>]: FindingParams<Id> extends ParamsOf<`pages.interpretation.sentences.${K}`>
    ? K
    : never;
}[Below<'pages.interpretation.sentences'>];

/** That a finding could not be told, and why. */
const untold = ({ speaker, analysis }: PageContext, id: FindingId): string | null => {
  const look = analysis.found.find((one) => one.id === id)?.look;
  if (look?.case !== 'untold') return null;
  return speaker.say('pages.interpretation.sentences.untold', {
    text: word(speaker.say(`findings.${id}.untold`)),
    why: word(speaker.say(`why.${look.why}`)),
  });
};

/**
 * Hours very high come before lows that are short and within their goal, or at night of less than 15 minutes: not
 * before any other low (ours).
 */
function highsFirst(context: PageContext): boolean {
  const { timeInBands } = context.analysis.measures;
  const goal = context.analysis.targets.goals.find(({ of }) => of === 'very-high')?.share ?? USUAL_VERY_HIGH;
  return (
    timeInBands.ok &&
    timeInBands.value.exclusive['very-high'].value >= goal &&
    GRAVE_LOWS.every((id) => held(context, id) === null) &&
    (held(context, 'lows-at-night')?.variant ?? 'brief') === 'brief'
  );
}

const USUAL_VERY_HIGH = 0.05;
const GRAVE_LOWS: readonly FindingId[] = ['very-low', 'long-lows', 'lows-clustered', 'time-low-over-goal'];

const highs: Sentence = (context) => seen(context, 'long-very-high', 'highs');

/** On how many of the days of these highs insulin is noted. */
const insulin: Sentence = (context) => seen(context, 'long-very-high', 'insulin');

const veryLow: Sentence = (context) => seen(context, 'very-low', 'veryLow');

const lows: Sentence = (context) =>
  seen(context, 'lows-seen', 'lows') ??
  seen(context, 'brief-lows', 'briefLows') ??
  seen(context, 'no-lows-seen', 'noLows') ??
  untold(context, 'lows-seen') ??
  untold(context, 'no-lows-seen');

const nights: Sentence = (context) => {
  const { speaker, analysis } = context;
  const { nights } = analysis.measures;
  if (!nights.ok) return untold(context, 'lows-at-night');
  const recorded = nights.value.filter(({ outside }) => !outside);
  const inState = (...states: string[]) => count(recorded.filter(({ state }) => states.includes(state)).length);
  return speaker.say('pages.interpretation.sentences.nights', {
    nights: count(recorded.length),
    known: inState('low', 'very-low', 'none-seen'),
    low: inState('low', 'very-low'),
    unknown: inState('unknown'),
  });
};

const well: Sentence = (context) =>
  seen(context, 'best-window', 'bestWindow') ?? seen(context, 'best-days', 'bestDays');

const range: Sentence = (context) => {
  const { speaker, analysis } = context;
  const { timeInBands, cv, mean } = analysis.measures;
  if (!timeInBands.ok || !mean.ok) return untold(context, 'time-in-range');
  const { mgdl, bound } = mean.value;
  const average: Quantity = { q: 'glucose', value: mgdl.value as MgPerDl };
  const params: ParamsOf<'pages.interpretation.sentences.range'> = {
    inRange: { q: 'estimate', value: timeInBands.value.exclusive['in-range'], as: 'share' },
    high: { q: 'share', value: timeInBands.value.cumulative.high.value },
    mean: bound === null ? average : word(bounded(speaker, bound, speaker.value(average))),
    cv: word(cv.ok ? bounded(speaker, bound && 'both', speaker.number(cv.value, 1)) : 'none'),
  };
  return speaker.say('pages.interpretation.sentences.range', params);
};

const topic: Sentence = (context) => {
  const [first] = heldTopics(context);
  if (!first) return null;
  const params = { topic: word(first.name), chosen: chosenOr(context), ruled: word(ruledName(context)) };
  return context.speaker.say('pages.interpretation.sentences.topic', params);
};

/** What was noted before the topic, where it stands out. */
const story: Sentence = (context) => {
  const id = storyOf(context.analysis.found, context.analysis.topics);
  return id && STORIES[id](context);
};

const STORIES = {
  'before-lows': (context: PageContext) => seen(context, 'before-lows', 'before-lows'),
  'before-highs': (context: PageContext) => seen(context, 'before-highs', 'before-highs'),
  'before-unsteady': (context: PageContext) => seen(context, 'before-unsteady', 'before-unsteady'),
};
