import type { FoundBy } from './folder.ts';
import type { GlucoseUnit, LocalDate } from './glucose.ts';
import type { Why } from './measured.ts';
import type { Night } from './measures.ts';
import type { Params } from './quantity.ts';
import type { TargetSet } from './targets.ts';
import type { Directed } from './thenAndNow.ts';
import type { TopicMeasure } from './visits.ts';

export type { FoundBy, ManifestRow, Person } from './folder.ts';

/** Where a person stands on the worklist, the most pressing first. */
export type Tier =
  | 'unread'
  | 'very-low'
  | 'long-high'
  | 'lows'
  | 'very-high'
  | 'worse'
  | 'not-enough'
  | 'steady'
  | 'quiet';

/** Something to say: the key of its words in templates, and what fills them. */
export interface Said {
  key: string;
  params: Params;
}

/** Why a person stands where they stand. */
export interface Reason extends Said {
  tier: Tier;
}

/** What a person's severity is added up of, in order of print. */
export type SeverityPart = 'veryLow' | 'longestLow' | 'nights' | 'unbrokenHigh' | 'noInsulin' | 'worse' | 'agreed';

/** How much presses, whatever the group: whole points, and what they are of. */
export interface Severity {
  points: number;
  parts: { of: SeverityPart; points: number }[];
}

/** A share of time, 0 to 1, and what the person's target set asks of it. */
export interface SharedTime {
  veryLow: number;
  low: number;
  inRange: number;
  high: number;
  /** null: the target set has no second high level. */
  veryHigh: number | null;
}

/** What the worklist and the table for analysis need of one analysis. Numbers unrounded; glucose in mg/dL. */
export interface Facts {
  /** 12 hex digits of what the numbers depend on, as printed on the papers. */
  hash: string;
  targets: TargetSet['id'];
  /** Native unit of most readings. */
  unit: GlucoseUnit;
  from: LocalDate;
  to: LocalDate;
  days: number;
  interval: number;
  readings: number;
  rows: number;
  setAside: number;
  /** Files of which 1 % or more could not be used, together; and files that could not be read. Absent in older records. */
  losses?: { lost: number; of: number } | null;
  missing?: string[];
  coverage: { share: number; hours: number; ofHours: number; nightShare: number; days: number; enough: boolean };
  mean: { mgdl: number; low: number | null; high: number | null } | null;
  sd: number | null;
  cv: number | null;
  gmi: number | null;
  /** Exclusive bands; cumulative `low` and `high` apart. null where the measure is withheld. */
  shares: SharedTime | null;
  below: number | null;
  above: number | null;
  /** Goals of the target set that were not met. */
  unmet: ('in-range' | 'low' | 'very-low' | 'high' | 'very-high')[];
  /** `longest`: minutes of the longest, absent in older records. */
  lows: {
    count: number;
    level2: number;
    night: number;
    longest?: number;
    dates: LocalDate[];
    level2Dates: LocalDate[];
  } | null;
  /**
   * `longestLevel2`: minutes on end beyond the very high limit. `withoutInsulin`: highs of 2 hours and more beyond it with no
   * insulin noted from 3 hours before on; null where no insulin is noted at all; absent in older records.
   */
  highs: {
    count: number;
    level2: number;
    longestLevel2: number;
    withoutInsulin?: number | null;
    level2Dates: LocalDate[];
  } | null;
  /** Day and minute of the last reading, as a clock on the wall showed it. Absent in older records. */
  lastReading?: { date: LocalDate; minute: number } | null;
  /** The last nights, and what the visit is about: a finding, with the words its name takes. Absent in older records. */
  nights?: Night['state'][];
  topic?: { id: string; words: Record<string, string> } | null;
  /**
   * Against the earlier period, where one was asked for: what changed by more than day-to-day noise, and which way.
   * `with`: its last day, null where there was none to compare with. `told`: whether anything could be told at all.
   */
  change: { with: LocalDate | null; worse: Directed[]; better: Directed[]; told: boolean } | null;
  /**
   * What the visit before left: what was agreed, as it was typed in (hostile text), and which way the measure of its topic went
   * by the rule of then and now; null where it has none. Absent in older records.
   */
  lastTime?: { goal?: string; step?: string; measure: TopicWent | null } | null;
  /** Measures or findings that could not be worked out because of a fault of ours. */
  failed: string[];
  /** Measures withheld, and why. */
  withheld: Record<string, Why>;
}

/** Which way the measure of the last visit's topic went: by more than chance, or not; or that nothing can be told. */
export interface TopicWent {
  of: TopicMeasure['of'];
  way: 'better' | 'worse' | 'within-noise' | 'cannot-tell';
}

/** How one person's turn ended. Kept beside the papers, so that the next run knows what is there. */
export interface Outcome {
  schema: 1;
  code: string;
  stem: string;
  visit: LocalDate | null;
  /** HH:MM; absent where nobody wrote one. */
  time?: string;
  a1c: number | null;
  /** Absent in older records. */
  by?: FoundBy;
  /** Names of the files read, relative to the folder. */
  inputs: string[];
  /** SHA-256 of each, in the same order. */
  inputHashes: string[];
  /** Short hashes of the codes or names found in the files: enough to see that two agree, not to tell whose they are. */
  persons: string[];
  /** Short hashes of the code and name that the folder, the manifest or the settings give this person. Absent in older records. */
  own?: string[];
  /** Short hashes of what can be only one person's: files with readings, days of readings. Absent in older records. */
  traces?: string[];
  /** SHA-256 over everything the outputs depend on. */
  key: string;
  /** Date of printing. */
  printed: string;
  version: string;
  /** null: no papers could be made. */
  facts: Facts | null;
  /** Of the two visits before, the last first, where results of them were given to compare with. */
  before?: Facts[];
  /** Why there are no papers. */
  refusals: Said[];
  outputs: { name: string; bytes: number; sha256: string }[];
  /** What its FHIR bundle does not hold; absent where none was asked for, and in older records. */
  fhirLeft?: FhirLeft;
}

/** What of an analysis a FHIR bundle does not hold. */
export interface FhirLeft {
  /** Readings without an offset from UTC, as nobody named a zone. */
  readings: number;
  /** Notes without such a time, or of a kind that R4 has no place for. */
  notes: number;
  /** Results that are withheld, so that the others go out one by one and not as a summary; by name of the guide's profile. */
  results: string[];
  /** Nothing has an identifier. */
  unidentified: boolean;
}

/** One person's line on the worklist. */
export interface WorklistLine {
  tier: Tier;
  reasons: Reason[];
  severity: Severity;
  /** In the one order of the whole list, from 1; 0 for someone who was not put into it. */
  number: number;
  outcome: Outcome;
}
