import type { GlucoseUnit, LocalDate } from './glucose.ts';
import type { Goal, TargetSet } from './targets.ts';

/** One calendar day as sums, so that periods can be compared, and drawn again by days, without their readings. */
export interface DaySums {
  date: LocalDate;
  /** Minutes of the day, and of them with readings. */
  length: number;
  minutes: number;
  /** Minutes whose value is known, with mg/dL and its square summed over them (mg/dL min, (mg/dL)² min). */
  known: number;
  sum: number;
  squares: number;
  /** Minutes in each band, from very low to very high. */
  bands: [number, number, number, number, number];
  /** Episodes that began on the day. */
  lows: number;
  veryLows: number;
  highs: number;
  /** Whether a reading from midnight to 6 was low; null where that cannot be told. */
  nightLow: boolean | null;
}

/** A period as its days, with what makes two periods comparable. No name, no note, no file. */
export interface PeriodSums {
  targets: TargetSet['id'];
  /** Native unit, in whose limits readings were sorted. */
  unit: GlucoseUnit;
  /** Usual minutes between readings. */
  interval: number;
  /** Stretches worn as one sensor, as far as the data show. */
  sensors: number;
  days: DaySums[];
}

/** What the period is compared with. A change splits the period itself: its day is the first of "now". */
export type ComparedWith =
  | { with: 'previous' | 'dates' | 'visit'; before: PeriodSums | null }
  | { with: 'change'; date: LocalDate; text: string };

export type Compared =
  | 'in-range'
  | 'low'
  | 'very-low'
  | 'high'
  | 'very-high'
  | 'mean'
  | 'cv'
  | 'lows'
  | 'very-lows'
  | 'highs';

/** Those of which more is for the better or the worse; mean and CV say neither. */
export type Directed = Exclude<Compared, 'mean' | 'cv'>;

/**
 * more-than-noise: the interval leaves out 0 and the change is as large as one that matters. not-told-apart: it does
 * not. cannot-tell: the two periods do not allow the question.
 */
export type Verdict = 'more-than-noise' | 'not-told-apart' | 'cannot-tell';

/** Shares 0 to 1, mean in mg/dL, CV in percent, episodes a week. `low` and `high` bound the change; null without one. */
export interface Change {
  of: Compared;
  before: number;
  now: number;
  change: number;
  low: number | null;
  high: number | null;
  /** A change smaller than this is not called one, however sure it is. */
  smallest: number;
  verdict: Verdict;
  why?: 'few-days' | 'other-interval' | 'other-targets' | 'none-seen' | 'few-seen';
}

export interface PeriodFacts {
  from: LocalDate;
  to: LocalDate;
  days: number;
  fullDays: number;
  /** Minutes with readings over minutes of its days. */
  share: number;
  interval: number;
  sensors: number;
}

/** A published goal, and on which side of it each period lies: unrounded values compared, lows first. */
export interface GoalThenAndNow {
  of: Goal['of'];
  /** Of the goal, 0 to 1. */
  share: number;
  before: number;
  now: number;
  metBefore: boolean;
  metNow: boolean;
}

export interface ThenAndNow {
  with: ComparedWith['with'];
  /** What was changed, as typed. Hostile text. */
  text: string;
  before: PeriodFacts;
  now: PeriodFacts;
  /** What differs between the two besides glucose, as codes. */
  differs: ('lengths' | 'interval' | 'targets' | 'unit')[];
  /** Days that stood in both and count in "now" only. */
  sharedDays: number;
  changes: Change[];
  /** Empty where the target sets differ, or a period is too short to be judged (14 days and 70 %: Battelino 2019). */
  goals: GoalThenAndNow[];
}
