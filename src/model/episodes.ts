import type { Instant, LocalDate, MgPerDl } from './glucose.ts';
import type { Estimate } from './measured.ts';

/** The part of an episode that lies on one local day: minutes of that day's clock, and minutes beyond the outer limit. */
export interface EpisodeDay {
  date: LocalDate;
  fromMinute: number;
  toMinute: number;
  outerMinutes: number;
}

/** A low or a high. */
export interface Episode {
  side: 'low' | 'high';
  /** First reading beyond the limit. */
  start: Instant;
  end: Instant;
  /** Local calendar day and minute of the start, and the minute of the end on its own day. */
  date: LocalDate;
  startMinute: number;
  endMinute: number;
  minutes: number;
  /** Lowest or highest reading, mg/dL; and whether it lies at the sensor's limit. */
  extreme: MgPerDl;
  extremeLimit: -1 | 0 | 1;
  extremeAt: Instant;
  /** 2 when at least 15 minutes on end lay beyond the outer limit. */
  level: 1 | 2;
  /** Minutes beyond the outer limit inside it. */
  outerMinutes: number;
  /** Starts between midnight and 06:00; one that starts before midnight and runs on is not counted here. */
  night: boolean;
  /** Every day it has readings on, in order. */
  days: EpisodeDay[];
  /** Touches a gap or the edge of the period, so it may have been longer. */
  cut: { start: boolean; end: boolean };
}

export interface Episodes {
  list: Episode[];
  level2: number;
  night: number;
  /** Per week of readings, not of calendar. */
  perWeek: Estimate;
  level2PerWeek: Estimate;
}

/** Lows followed by a value above the high limit starting within 120 minutes of the low's end. */
export interface Rebounds {
  list: {
    low: Episode;
    highStart: Instant;
    highDate: LocalDate;
    minutesAfter: number;
    peak: MgPerDl;
    peakLimit: -1 | 0 | 1;
  }[];
  /** Lows whose 120 minutes after are seen. */
  ofLows: number;
}
