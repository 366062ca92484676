import type { GlucoseUnit, LocalDate, MgPerDl } from './glucose.ts';
import type { LogWords } from './logbook.ts';
import type { TargetSet } from './targets.ts';
import type { TopicRow } from './topics.ts';
import type { Medicine } from './trust.ts';
import type { Visit } from './visits.ts';

/** Which calendar days to look at. */
export type PeriodChoice = { days: number } | { from?: string; to?: string };

/**
 * What to compare the period with: as many days just before it, other days of the same data, earlier visits in any order, or its
 * own days before a change that somebody marked. Beside earlier visits a change is kept for the next one, and compared with nothing.
 */
export type CompareChoice =
  | { with: 'previous' }
  | { with: 'dates'; from: LocalDate; to: LocalDate }
  | { with: 'visits'; visits: Visit[]; changed?: Marked }
  | ({ with: 'change' } & Marked);

/** A change that somebody marked: from this day on. */
export interface Marked {
  date: LocalDate;
  text: string;
}

/** A clinic's own goals in pregnancy, mg/dL, below which; null: the published one stands. */
export interface PregnancyGoals {
  fasting: MgPerDl | null;
  oneHour: MgPerDl | null;
  twoHours: MgPerDl | null;
}

/** Everything besides the inputs that an analysis depends on. */
export interface Settings {
  /** Unit of the numbers in files that name none; one that names another is refused. Shown is the native unit. */
  unit?: GlucoseUnit;
  zone?: string;
  dateOrder?: 'day-first' | 'month-first' | 'year-first';
  targets: TargetSet['id'];
  /** Default: 14 days, the last of them the last with a reading. */
  period?: PeriodChoice;
  layout?: unknown;
  /** Words people use in logbooks; absent: names are compared as they stand. */
  logWords?: LogWords;
  /** Whether rises without a food note are listed as inferred meals. Never compared. */
  inferMeals?: boolean;
  compare?: CompareChoice;
  /** Medicines to look for in the notes; absent: none are looked for. */
  medicines?: Medicine[];
  /** The order in which topics are looked for; absent: the usual one. */
  topicOrder?: readonly TopicRow[];
  /** Id of the finding that somebody chose for the visit, among those that hold; absent: the order decides. */
  topic?: string;
  /** A1C from a laboratory, as it was typed in. */
  a1c?: { value: number; unit: '%' | 'mmol/mol' };
  /** Due date of a pregnancy, from which its weeks are counted. */
  dueDate?: LocalDate;
  /** Used with a set for pregnancy. */
  pregnancyGoals?: PregnancyGoals;
  /** Whether the further indices are worked out. */
  moreIndices?: boolean;
  /** Files (or the person, by the code) whose losses whoever makes the report has looked at and accepted. */
  acceptLosses?: string[];
  /** Date of printing, YYYY-MM-DD, an argument so that the same input gives the same bytes. */
  today: string;
  /** Identity line. Never guessed from the files. */
  person: { name?: string; code?: string; clinic?: string; phone?: string };
}
