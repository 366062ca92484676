import { held, type PageContext, tellAll } from './context.ts';

const SAFETY = ['very-low', 'lows-seen', 'long-lows', 'lows-clustered', 'brief-lows', 'no-lows-seen'];
const HIGHS = ['long-very-high', 'high-after-window', 'dawn-rise', 'rebound-after-lows'] as const;
const WELL = ['best-window', 'best-days'] as const;

/**
 * Five to seven sentences in reading order: enough data, lows, nights, what went well, time in range and highs,
 * spread, the topic. Each is a finding's or a measure's own statement, so it has evidence on another page.
 */
export function interpretationSentences(context: PageContext): string[] {
  const { say, analysis } = context;
  const { coverage, nights, timeInBands, cv, mean } = analysis.measures;
  const at = (name: string) => `pages.interpretation.sentences.${name}`;
  const sentences: string[] = [];
  if (coverage.ok)
    sentences.push(
      say.say(at('data'), {
        hours: { q: 'minutes', value: coverage.value.hours * 60 },
        days: { q: 'count', value: analysis.timeline.days.length },
        share: { q: 'share', value: coverage.value.share },
        enough: { q: 'word', value: coverage.value.enough ? 'yes' : 'no' },
      }),
    );
  sentences.push(...tellAll(context, SAFETY).slice(0, 2));
  if (nights.ok)
    sentences.push(
      say.say(at('nights'), {
        nights: { q: 'count', value: nights.value.length },
        low: {
          q: 'count',
          value: nights.value.filter((one) => one.state === 'low' || one.state === 'very-low').length,
        },
        unknown: { q: 'count', value: nights.value.filter((one) => one.state === 'unknown').length },
      }),
    );
  sentences.push(...tellAll(context, WELL).slice(0, 1));
  if (timeInBands.ok && mean.ok)
    sentences.push(
      say.say(at('range'), {
        inRange: { q: 'estimate', value: timeInBands.value.exclusive['in-range'], as: 'share' },
        high: { q: 'share', value: timeInBands.value.cumulative.high.value },
        mean: { q: 'glucose', value: mean.value.mgdl.value as never },
      }),
    );
  if (sentences.length < 6) sentences.push(...tellAll(context, HIGHS).slice(0, 1));
  if (cv.ok) sentences.push(say.say(at('spread'), { cv: { q: 'word', value: say.number(cv.value, 1) } }));
  const topic = analysis.topics.find((one) => held(context, one.id));
  if (topic) {
    const text = say.say(`findings.${topic.id}.topic`, held(context, topic.id)!.params);
    sentences.push(say.say(at('topic'), { topic: { q: 'word', value: text } }));
  }
  return sentences;
}
