import type { LocalDate } from './glucose.ts';
import type { Outcome } from './notedBefore.ts';
import type { Noted, Times } from './occasions.ts';
import type { Goal } from './targets.ts';
import type { Change, PeriodSums, Verdict } from './thenAndNow.ts';

/** What was agreed at a visit and written about it, as it was typed in. Hostile text. */
export interface Agreed {
  goal?: string | undefined;
  step?: string | undefined;
  helper?: string | undefined;
  nextVisit?: LocalDate | undefined;
  /** How sure the person was of the step, 0 to 10. */
  sure?: number | undefined;
  /** What the person wanted to ask or to talk about. */
  question?: string | undefined;
  /** What the team wants to keep of the visit; lines end with \n. */
  remarks?: string | undefined;
  /** A clinician's own words on what the papers show, begun from the draft or not; lines end with \n. */
  interpretation?: string | undefined;
  /** Who typed it in, and on which day. */
  by?: string | undefined;
  on?: LocalDate | undefined;
}

/**
 * What shows whether an agreement about a topic helped: a share of the time or a spread, which day sums give; nights with a
 * low; days with a note on which an outcome came.
 */
export type TopicMeasure =
  | { of: 'low' | 'very-low' | 'high' | 'very-high' | 'in-range' | 'cv' }
  | { of: 'nights-low'; count: Times }
  | { of: 'after-note'; outcome: Outcome; note: Noted; count: Times };

/** A number with its 95 % interval, null where too few days allowed one. */
export interface VisitNumber {
  value: number;
  low: number | null;
  high: number | null;
}

/** Shares 0 to 1, mean in mg/dL. Null where nothing could be told. */
export type VisitNumbers = Record<
  'inRangeShare' | 'lowShare' | 'highShare' | 'meanMgPerDl' | 'nightsLowShare',
  VisitNumber | null
>;

/** What an earlier visit left: no reading, no note and no name. */
export interface Visit {
  /** Name of the file it came from. */
  file: string;
  origin: { by: string; hash: string; on: LocalDate };
  /** Empty where the file says nothing of whose it is. Hostile text. */
  person: { code?: string | undefined; clinic?: string | undefined };
  sums: PeriodSums;
  /** Of the target set at that time. */
  goals: Goal[];
  numbers: VisitNumbers;
  topic: { id: string; rule: string } | null;
  /** What the rules gave where another topic was chosen. */
  topicByRule?: { id: string; rule: string } | null | undefined;
  topicMeasure: TopicMeasure | null;
  /** Ids of the findings that held. */
  held: string[];
  agreed: Agreed | null;
  changed: { on: LocalDate; what: string }[];
}

/** How a measure stood then and stands now, with the verdict against day-to-day noise, which nothing is told without. */
export type MeasureThenAndNow =
  | { of: Exclude<TopicMeasure, { count: Times }>['of']; change: Change }
  | ({ of: 'nights-low' } & CountThenAndNow)
  | ({ of: 'after-note'; outcome: Outcome; note: Noted } & CountThenAndNow);

/** `now` is null where nothing can be told of it, e.g. the note was never made. */
export interface CountThenAndNow {
  before: Times;
  now: Times | null;
  verdict: Verdict;
  /** few: whatever had been seen, so few could not have told a change. none: there is nothing now to compare. */
  why?: 'few' | 'none';
}

/** What the last visit left, beside now. */
export interface LastTime {
  from: LocalDate;
  to: LocalDate;
  person: Visit['person'];
  /** Whether days in both show that the file is this person's; else somebody has to look. */
  proved: boolean;
  topic: string | null;
  agreed: Agreed | null;
  changed: Visit['changed'];
  /** Null where the topic has none. */
  measure: MeasureThenAndNow | null;
}

/** One visit in a row of several. */
export interface VisitRow {
  from: LocalDate;
  to: LocalDate;
  days: number;
  /** Days with 70 % of their minutes. */
  fullDays: number;
  /** Share of the minutes of its days with readings. */
  share: number;
  /** Days without any visit's readings between the one before and this one; null for the first. */
  pauseDays: number | null;
  /** How it differs from this visit, besides glucose. */
  differs: ('interval' | 'targets' | 'unit')[];
  numbers: VisitNumbers;
  /** At its end, so that it stands between this row and the next. */
  agreed: Agreed | null;
}

/** Change of time in range over the visits, points of share (0 to 1) a 30 days, with its 95 % interval; or why none is told. */
export type VisitTrend =
  | {
      case: 'line';
      per30Days: number;
      low: number;
      high: number;
      visits: number;
      verdict: Exclude<Verdict, 'cannot-tell'>;
    }
  | { case: 'none'; why: 'two-visits' | 'few-days' | 'all-alike' };

export interface VisitByVisit {
  /** In order of time; the last is this visit. */
  rows: VisitRow[];
  trend: VisitTrend;
}
