import type { Mark } from '../model/drawing.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { DailySummary } from '../model/measures.ts';
import { type ChartContext, roughWidth } from './context.ts';
import { round } from './pen.ts';

/** Room for the day and its facts at the left; more where a language needs it, and the same on every strip. */
const DATE_WIDTH = 68;
export const dateWidth = ({ speaker, text }: ChartContext): number => {
  const whole = { q: 'share' as const, value: 1 };
  const longest = (['inRange', 'covered'] as const).map((name) =>
    speaker.say(`charts.dayStrip.${name}`, { share: whole }),
  );
  return Math.max(DATE_WIDTH, ...longest.map((line) => roughWidth(line, text)));
};

/** What a day's picture shows, with its numbers. */
export function sentence(summary: DailySummary, notes: number, { speaker }: ChartContext): string {
  const date = { q: 'date' as const, value: summary.date };
  if (summary.mean === null && summary.bound !== null)
    return speaker.say('charts.dayStrip.beyond', {
      date,
      side: { q: 'word', value: SIDES[summary.bound] },
      notes: { q: 'count', value: notes },
    });
  if (summary.mean === null || summary.lowest === null || summary.highest === null || summary.inRange === null)
    return speaker.say('charts.dayStrip.empty', { date });
  return speaker.say('charts.dayStrip.summary', {
    date,
    mean: { q: 'word', value: average(summary.mean, summary.bound, undefined, speaker) },
    lowest: { q: 'glucose', value: summary.lowest, limit: summary.limits.lowest },
    highest: { q: 'glucose', value: summary.highest, limit: summary.limits.highest },
    inRange: { q: 'share', value: summary.inRange },
    notes: { q: 'count', value: notes },
  });
}

/** The bound of a day's mean tells on which side of the sensor its readings lie. */
const SIDES = { upper: 'below', lower: 'above', both: 'both' } as const;

/** A day with readings beyond what the sensor can show has a bound for its average, as the period has. */
function average(
  mean: MgPerDl,
  bound: DailySummary['bound'],
  style: 'short' | undefined,
  speaker: ChartContext['speaker'],
): string {
  const value = speaker.value({ q: 'glucose', value: mean }, style);
  if (bound === null) return value;
  // Beside a strip there is room for a sign only.
  const key = style === 'short' ? 'charts.dayStrip.bounded' : 'pages.numbers.bounded';
  return speaker.say(key, { way: { q: 'word', value: bound }, value: { q: 'word', value } });
}

/** Date column: in range, average, and how much of the day there is to see where it is not whole. */
export function facts(summary: DailySummary, top: number, { speaker, text }: ChartContext): Mark[] {
  const line = (index: number, content: string): Mark => ({
    kind: 'text',
    role: 'axis',
    x: 0,
    y: round(top + index * (text + 2.5)),
    text: content,
    size: text,
    anchor: 'start',
  });
  if (summary.inRange === null) return [line(1, speaker.say('charts.dayStrip.noReadings'))];
  const lines = [speaker.say('charts.dayStrip.inRange', { share: { q: 'share', value: summary.inRange } })];
  if (summary.mean !== null)
    lines.push(
      speaker.say('charts.dayStrip.mean', {
        mean: { q: 'word', value: average(summary.mean, summary.bound, 'short', speaker) },
      }),
    );
  if (!summary.full)
    lines.push(speaker.say('charts.dayStrip.covered', { share: { q: 'share', value: summary.share } }));
  return lines.map((content, index) => line(index + 1, content));
}
