import type { Outcome } from '../model/clinic.ts';
import type { Agreed } from '../model/visits.ts';
import type { Taken, Wish } from './messages.ts';

// What the page and its workers say to each other of a folder of people. Types only, as in messages.ts.

/** A file that was brought and not yet read. */
export interface Lying {
  path: string;
  size: number;
}

/** One person's turn in a folder: their bytes come along. */
export interface Turn {
  wish: Wish;
  files: Taken[];
  /** What was typed at their visit, in place of what lies with the files. */
  typed?: Agreed;
  /** File that could not be read, and the engine's word for why. */
  unopened?: { file: string; actual: string };
}

/** What is made of everyone besides both papers, the draft and the visit file, as options of the command say it. */
export type Extras = 'further' | 'html' | 'numbers' | 'fhir';

/** How somebody's turn ended: by itself, or by the end of their worker. */
export interface Ended {
  stem: string;
  outcome?: Outcome;
  died?: { why: 'tooLong' | 'died'; detail: string };
}

/** What a worklist is asked for with. Who ended is told once; a worker remembers, unless it is a new one. */
export interface Listing {
  ended: Ended[];
  fresh: boolean;
  /** Nobody else will come: whoever has not ended was not reached. */
  over: boolean;
  /** A file of thresholds as its text; absent: the usual ones. */
  thresholds?: string;
  order: 'pressing' | 'visit';
  /** How many the day has room for; null: nobody said. */
  places: number | null;
  language: Pick<Wish, 'language' | 'region'>;
  gone: { done: number; total: number; sinceStart: number; sinceFirst: number };
}

/** A line of the worklist, in words. */
export interface Row {
  stem: string;
  code: string;
  group: string;
  topic: string;
  /** A line of its own each. */
  why: string;
  hours: string;
  visit: string;
  /** Papers can be made. */
  papers: boolean;
  /** Their files can be looked at by themselves. */
  opens: boolean;
}

export interface Listed {
  rows: Row[];
  lead: string;
  /** What the list is not. */
  about: string;
  /** How far it has come, how fast, and how long it will take. */
  progress: string;
  gone: { done: number; total: number };
  /** Where the day is full: after so many rows, in words, and who stands next below. */
  line: { first: number; text: string; next: string[] } | null;
  /** Groups with how many stand in each. */
  groups: [string, string][];
  /** Files that belong to nobody. */
  passedOver: string[];
  /** What is wrong with the thresholds, in words; empty: nothing. */
  wrong: string;
  /** Somebody has a day of a visit. */
  visits: boolean;
}
