import type { LocalDate } from './glucose.ts';
import type { Band } from './targets.ts';

/** One clock bin of the modal day. Percentiles in mg/dL; null where the bin holds too few readings or days. */
export interface ModalBin {
  /** Minute of the local day at which the bin starts. */
  minute: number;
  p5: number | null;
  p25: number | null;
  p50: number | null;
  p75: number | null;
  p95: number | null;
  n: number;
  days: number;
}

/** The modal day: `bins` smoothed for drawing, `raw` as computed (type 7 quantiles). */
export interface ModalDay {
  binMinutes: number;
  bins: ModalBin[];
  raw: ModalBin[];
}

/** One clock hour over all days. Shares of the minutes with readings in that hour; null when there are none. */
export interface HourShares {
  hour: number;
  minutes: number;
  days: number;
  shares: Record<Band, number> | null;
}

/** A clock window of the day over all days. */
export interface DayWindow {
  fromMinute: number;
  toMinute: number;
  /** Share of the time with readings in the window that was in range / low / high. */
  inRange: number;
  low: number;
  high: number;
  /** Days on which at least 70 % of the window has readings, and those of them with at least 70 % in range and no low. */
  days: number;
  goodDays: LocalDate[];
}

export interface DayWindows {
  best: DayWindow;
  hardest: DayWindow;
  all: DayWindow[];
}
