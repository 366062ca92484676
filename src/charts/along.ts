import type { Along } from '../model/drawing.ts';
import type { MgPerDl } from '../model/glucose.ts';
import type { ModalDay } from '../model/measures.ts';
import type { Band } from '../model/targets.ts';
import type { Timeline } from '../model/timeline.ts';
import type { ProfilePoint } from '../occasions/profile.ts';
import { firstFrom } from '../stats/sorted.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import type { Span } from './aligned.ts';
import type { Plot } from './axis.ts';
import { bandAt, bandOfHeight } from './bandAt.ts';
import type { ChartContext } from './context.ts';
import { readingAt } from './dayHours.ts';
import { noteInWords } from './dayInWords.ts';
import { type DaySlot, daySlots } from './daySlots.ts';

const word = (value: string) => ({ q: 'word' as const, value });

/** What is read along a plot; nothing where there is nothing to say. */
function alongOf({ left, top, width, height }: Plot, name: string, says: string[]): Along[] {
  return says.length === 0 ? [] : [{ name, left, right: left + width, top, bottom: top + height, says }];
}

const bandName = (band: Band, { speaker }: ChartContext): string => speaker.say(`bands.${band}.name`);
const glucose = (mgdl: number) => ({ q: 'glucose' as const, value: mgdl as MgPerDl });

/** A day of the wall clock in stretches of so many minutes: time, value, band and notes. */
export function dayAlong(
  timeline: Timeline,
  index: number,
  plot: Plot,
  name: string,
  context: ChartContext,
  minutes = 60,
): Along[] {
  const says = daySlots(timeline, index, minutes).map((slot) =>
    [slotText(timeline, slot, context), ...slot.notes.map((note) => noteInWords(note, context))].join(' · '),
  );
  return alongOf(plot, name, says);
}

function slotText(timeline: Timeline, slot: DaySlot, context: ChartContext): string {
  const { speaker } = context;
  const { minute, readings, lowest, highest } = slot;
  const time = (value: number) => word(speaker.value({ q: 'clock', value }, 'short'));
  if (readings === 0) return speaker.say('charts.along.none', { time: time(minute) });
  const band = (i: number) => word(bandName(bandAt(timeline, i, context), context));
  const [least, most] = [readingAt(timeline, lowest), readingAt(timeline, highest)];
  // One reading has its own time; several that read the same are one value.
  if (readings === 1 || speaker.value(least) === speaker.value(most))
    return speaker.say('charts.along.reading', {
      time: time(readings === 1 ? timeline.readings.minute[lowest]! : minute),
      value: least,
      band: band(lowest),
    });
  return speaker.say('charts.along.readings', {
    time: time(minute),
    lowest: least,
    lowBand: band(lowest),
    highest: most,
    highBand: band(highest),
  });
}

/** The usual day: the middle with its band, and between what half of the readings lie, and nine in ten where those are drawn. */
export function usualAlong(
  { bins }: ModalDay,
  outer: boolean,
  plot: Plot,
  name: string,
  context: ChartContext,
): Along[] {
  const { speaker } = context;
  const says = bins.map(({ minute, p5, p25, p50, p75, p95 }) => {
    const time = word(speaker.value({ q: 'clock', value: minute }, 'short'));
    if (p50 === null || p25 === null || p75 === null) return speaker.say('charts.along.few', { time });
    const usual = speaker.say('charts.along.usual', { time, ...middle(p25, p50, p75, context) });
    if (!outer || p5 === null || p95 === null) return usual;
    return [usual, speaker.say('charts.along.wide', { low: glucose(p5), high: glucose(p95) })].join(' · ');
  });
  return alongOf(plot, name, bins.every(({ p50 }) => p50 === null) ? [] : says);
}

const middle = (p25: number, p50: number, p75: number, context: ChartContext) => ({
  middle: glucose(p50),
  band: word(bandName(bandOfHeight(p50 as MgPerDl, context), context)),
  low: glucose(p25),
  high: glucose(p75),
});

/** Points from end to end of a plot: each holds half a step to both sides. */
function pointsOf({ left, width, ...plot }: Plot, points: number): Plot {
  const step = points > 1 ? width / (points - 1) : 0;
  return { ...plot, left: left - step / 2, width: width + step };
}

const fromNote = (minute: number) => ({
  when: word(minute < 0 ? 'before' : minute === 0 ? 'at' : 'after'),
  minutes: { q: 'minutes' as const, value: Math.abs(minute) },
});

/** Occasions laid over one another at a note: the middle of those that were seen, so long before or after it. */
export function profileAlong(
  profile: readonly ProfilePoint[],
  plot: Plot,
  name: string,
  context: ChartContext,
): Along[] {
  const { speaker } = context;
  const says = profile.map(({ minute, p25, p50, p75, n }) => {
    const time = fromNote(minute);
    if (p50 === null || p25 === null || p75 === null)
      return speaker.say('charts.along.afterFew', { ...time, n: { q: 'count', value: n } });
    return speaker.say('charts.along.after', {
      ...time,
      n: { q: 'count', value: n },
      ...middle(p25, p50, p75, context),
    });
  });
  return alongOf(pointsOf(plot, profile.length), name, says);
}

/** One occasion, in steps of so many minutes: the reading next to each. */
export function occasionAlong(
  timeline: Timeline,
  anchor: number,
  { from, to }: Span,
  step: number,
  plot: Plot,
  name: string,
  context: ChartContext,
): Along[] {
  const { speaker } = context;
  const { at, count } = timeline.readings;
  const says = Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, n) => {
    const minute = from + n * step;
    const wanted = anchor + minute * MINUTE_MS;
    const next = firstFrom(at, count, wanted);
    const away = (i: number): number => (i >= 0 && i < count ? Math.abs(at[i]! - wanted) : Infinity);
    const nearest = away(next - 1) < away(next) ? next - 1 : next;
    const time = fromNote(minute);
    if (away(nearest) > (step / 2) * MINUTE_MS) return speaker.say('charts.along.afterNone', time);
    const band = word(bandName(bandAt(timeline, nearest, context), context));
    return speaker.say('charts.along.afterReading', { ...time, value: readingAt(timeline, nearest), band });
  });
  return alongOf(pointsOf(plot, says.length), name, says);
}
