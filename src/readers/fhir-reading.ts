import type { GlucoseUnit } from '../model/glucose.ts';
import type { NoteEntry } from '../model/input.ts';
import type { Json } from './json.ts';

/** One resource of a file, in file order, with the URL under which others refer to it. */
export interface Resource {
  body: Json;
  fullUrl: string;
  line: number;
  row: number;
  /** From a Bundle of versions, newest first. */
  history: boolean;
  /** The entry says that the resource was deleted; it has no body then. */
  deletion: boolean;
  /** When the entry was changed, as written; '' where it is not told. */
  changed: string;
}

/** A number of glucose with its side when it is only a limit. */
export interface GlucoseValue {
  value: number;
  unit: GlucoseUnit;
  limit: -1 | 0 | 1;
}

/** Finds what a reference points at, in this file or another of the same person. */
export type Resolve = (reference: string, from: Json) => Json | undefined;

/** What is shared while the resources of one file are read. */
export interface FhirReading {
  file: string;
  today: string;
  unit: GlucoseUnit | undefined;
  /** The first coded unit that contradicts what the user said of the unit. */
  coded: { unit: string; line: number } | undefined;
  /** Numbers without any unit, and the first of them. */
  bare: { count: number; line: number; low: number; high: number };
  /** How often something was so, told once for the file: early estimates, units that are not those of the code … */
  often: Map<string, number>;
  /** Whether a unit stood as text without a code. */
  byText: boolean;
  zones: Set<string>;
  /** Observations that another one names as its parts; what they say is told there. */
  parts: Set<Json>;
  resolve: Resolve;
  reading(resource: Resource, wall: number, offset: number, value: GlucoseValue, unsure: boolean): void;
  note(entry: NoteEntry): void;
  setAside(resource: Resource, code: string, actual: string, expected?: string): void;
  repeats(resource: Resource): void;
  ignore(what: string): void;
  remark(code: string, line: number, count: number): void;
  minutesOf(period: Json | undefined): number | undefined;
}
