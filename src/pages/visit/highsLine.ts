import type { DailySummary, Episode } from '../../model/measures.ts';
import type { Block } from '../../model/report.ts';
import { DAY_MINUTES } from '../../time/calendar.ts';
import { count, type PageContext, paragraph, word } from '../context.ts';
import { sideHeaded } from './layout.ts';
import { insulinDays } from './notedInsulin.ts';

/** Topics about highs. */
export const ABOUT_HIGHS = /high|time-in-range|dawn/;
/** So many days with most time far above range are named. */
const MOST_DAYS = 4;
/** A day counts from this many minutes on (ours). */
const LEAST_MINUTES = 60;

/** Highs have a line of their own, with lows or without: time, the longest unbroken, dates, and whether insulin was noted. */
export function highsLine(context: PageContext): Block[] {
  const { speaker, analysis } = context;
  const { timeInBands, highs, coverage } = analysis.measures;
  const about = (text: string) => (): Block[] => [sideHeaded(speaker.say('pages.visit.highs'), [paragraph(text)])];
  if (!timeInBands.ok || !highs.ok) {
    const why = !timeInBands.ok ? timeInBands.why : !highs.ok ? highs.why : 'failed';
    return about(speaker.say(`why.${why}`))();
  }
  const outer = analysis.targets.limits[analysis.timeline.unit].veryHigh !== null;
  const share = outer ? timeInBands.value.exclusive['very-high'].value : timeInBands.value.cumulative.high.value;
  const longest = highs.value.list.reduce<Episode | null>(
    (most, one) => (one.minutes > (most?.minutes ?? 0) ? one : most),
    null,
  );
  const days = highDays(context);
  const lines = [
    speaker.say('pages.visit.highTime', {
      limit: { q: 'limit', of: outer ? 'very-high' : 'high' },
      // Nothing of it is not "0 min a day".
      none: word(share === 0 ? 'yes' : 'no'),
      share: { q: 'share', value: share },
      time: { q: 'minutes', value: share * DAY_MINUTES },
      // Hours that hold no night are no day of 24.
      whole: word(coverage.ok && coverage.value.wholeDay ? 'yes' : 'no'),
    }),
  ];
  if (longest !== null)
    lines.push(
      speaker.say('pages.visit.highLongest', {
        limit: { q: 'limit', of: 'high' },
        longest: { q: 'minutes', value: longest.minutes },
        date: { q: 'date', value: longest.date },
        clock: { q: 'clock', value: longest.startMinute },
      }),
    );
  const whole = [...lines];
  if (days.length > 0)
    whole.push(
      speaker.say('pages.visit.highDays', {
        days: count(days.length),
        dates: { q: 'dates', value: days.map(({ date }) => date) },
        ...insulinDays(
          context,
          days.map(({ date }) => date),
        ),
      }),
    );
  // Where the topic is another, the days give way to rows of lows.
  const gives = ABOUT_HIGHS.test(analysis.topics[0]?.id ?? '') ? 8 : 1;
  return [{ kind: 'fit', gives, forms: [about(whole.join(' ')), about(lines.join(' '))] }];
}

/** Days with most time beyond the outer high limit, in order of the calendar. */
export function highDays({ analysis }: PageContext): DailySummary[] {
  const { daily } = analysis.measures;
  if (!daily.ok) return [];
  const outer = analysis.targets.limits[analysis.timeline.unit].veryHigh !== null;
  const far = ({ minutes }: DailySummary): number => (outer ? minutes['very-high'] : minutes.high);
  const most = daily.value
    .filter((day) => far(day) >= LEAST_MINUTES)
    .sort((a, b) => far(b) - far(a))
    .slice(0, MOST_DAYS);
  return daily.value.filter((day) => most.includes(day));
}
