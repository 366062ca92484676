import type { LocalDate, MgPerDl } from '../model/glucose.ts';
import type { DailySummary, MeanGlucose } from '../model/measures.ts';
import { BANDS } from '../targets/bands.ts';
import { SEEN_SHARE } from '../targets/consensus.ts';
import { DAY_MINUTES } from '../time/calendar.ts';

/** Seven days; shares and mean null where less than 70 % of them was seen. */
export interface Week {
  from: LocalDate;
  /** Minutes with readings. */
  minutes: number;
  inRange: number | null;
  low: number | null;
  mean: MgPerDl | null;
  bound: MeanGlucose['bound'];
}

const DAYS = 7;

/** The whole weeks of a period, counted back from its last day, from what was measured day by day. */
export function wholeWeeks(daily: readonly DailySummary[]): Week[] {
  const count = Math.floor(daily.length / DAYS);
  const first = daily.length - count * DAYS;
  return Array.from({ length: count }, (_, i) => weekOf(daily.slice(first + i * DAYS, first + (i + 1) * DAYS)));
}

function weekOf(days: readonly DailySummary[]): Week {
  const seen = ({ minutes }: DailySummary): number => BANDS.reduce((sum, band) => sum + minutes[band], 0);
  const total = (of: (day: DailySummary) => number): number => days.reduce((sum, day) => sum + of(day), 0);
  const minutes = total(seen);
  const enough = minutes >= SEEN_SHARE * DAYS * DAY_MINUTES;
  const known = total((day) => (day.mean === null ? 0 : seen(day)));
  const bounds = new Set(days.flatMap(({ bound }) => bound ?? []));
  return {
    from: days[0]!.date,
    minutes,
    inRange: enough ? total((day) => day.minutes['in-range']) / minutes : null,
    low: enough ? total((day) => day.minutes['very-low'] + day.minutes.low) / minutes : null,
    mean: enough && known > 0 ? ((total((day) => (day.mean ?? 0) * seen(day)) / known) as MgPerDl) : null,
    bound: bounds.size > 1 ? 'both' : ([...bounds][0] ?? null),
  };
}
