import type { LocalDate } from '../model/glucose.ts';
import type { Outcome } from '../model/notedBefore.ts';
import { median } from '../stats/quantile.ts';
import { HIGH } from '../targets/bands.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import { DAY_MS } from '../time/calendar.ts';
import { type Signal, type Stretch, stretch } from './signal.ts';
import { sixOf } from './untilMorning.ts';

/** A day and the night after it, from 6 to 6, with what came on it; null where too little was seen to say "not". */
export interface DayStretch {
  date: LocalDate;
  from: number;
  to: number;
  /** Whether anything was written down on the day. */
  noted: boolean;
  came: Record<Outcome, boolean | null>;
}

/** Instants at which what came began, in order. */
export type Events = Record<'lows' | 'very-lows' | 'night-lows' | 'very-highs', number[]>;

/** Minutes beyond the outer limit that make a high a very high one, as in the finding on long ones (ours). */
const LONG = 120;

export function dayStretches(signal: Signal, notedDays: ReadonlySet<string>): { days: DayStretch[]; events: Events } {
  const { days } = signal.timeline;
  const lows = signal.lows();
  const parts = days.map((day, i) => {
    const next = days[i + 1];
    const midnight = next?.start ?? day.start + DAY_MS;
    const [from, to] = [sixOf(day), next ? sixOf(next) : sixOf(day) + DAY_MS];
    const whole = stretch(signal, from, to);
    return { day, midnight, from, to, whole, night: stretch(signal, midnight, to), ...levels(signal, whole) };
  });
  const inNights = lows.filter(({ start, end }) => parts.some(({ midnight, to }) => start < to && end > midnight));
  const events: Events = {
    lows: lows.map(({ start }) => start),
    'very-lows': lows.flatMap(({ start, level2 }) => (level2 ? [start] : [])),
    'night-lows': inNights.map(({ start }) => start),
    'very-highs': signal.highs().flatMap(({ start, outerMinutes }) => (outerMinutes >= LONG ? [start] : [])),
  };
  const seen = parts.filter(({ whole }) => whole.seen >= SEEN_SHARE);
  const [middleHigh, middleCv] = [seen.map(({ high }) => high), seen.map(({ cv }) => cv)].map((all) =>
    all.length === 0 ? 0 : median(all),
  ) as [number, number];
  return {
    days: parts.map(({ day: { date }, midnight, from, to, whole, night, high, cv }): DayStretch => {
      const known = (came: boolean, { seen }: Stretch = whole) => (came ? true : seen >= SEEN_SHARE ? false : null);
      const began = (all: readonly number[]) => known(all.some((at) => at >= from && at < to));
      const enough = whole.seen >= SEEN_SHARE;
      return {
        date,
        from,
        to,
        noted: notedDays.has(date),
        came: {
          lows: began(events.lows),
          'very-lows': began(events['very-lows']),
          'night-lows': known(
            lows.some(({ start, end }) => start < to && end > midnight),
            night,
          ),
          'very-highs': began(events['very-highs']),
          'much-high': enough ? high > middleHigh : null,
          unsteady: enough ? cv > middleCv : null,
        },
      };
    }),
    events,
  };
}

/** Share of the time above the high limit, and the coefficient of variation. */
function levels({ bands, heights, timeline }: Signal, { first, end }: Stretch): { high: number; cv: number } {
  const { weight } = timeline.readings;
  let [minutes, high, sum, squares] = [0, 0, 0, 0];
  for (let i = first; i < end; i++) {
    minutes += weight[i]!;
    if (bands[i]! >= HIGH) high += weight[i]!;
    const part = weight[i]! * heights[i]!;
    sum += part;
    squares += part * heights[i]!;
  }
  if (minutes === 0) return { high: 0, cv: 0 };
  const mean = sum / minutes;
  return { high: high / minutes, cv: Math.sqrt(Math.max(0, squares / minutes - mean * mean)) / mean };
}
