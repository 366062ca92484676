import type { GlucoseUnit } from '../../model/glucose.ts';
import type { NoteEntry, ReadSettings } from '../../model/input.ts';
import type { IssueCode } from '../../model/issues.ts';
import type { IssueBook, More } from '../book.ts';
import type { Entries } from '../entries.ts';
import { type Json, objectIn, textIn } from '../json/fields.ts';
import { minutesBetween } from '../times/instant.ts';

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

/** Where a resource stands in its file. */
type Placed = Pick<Resource, 'line' | 'row'>;

/** A value whose code leaves open what measured it. */
interface Unsure {
  resource: Placed;
  wall: number;
  offset: number;
  value: GlucoseValue;
}

/** What a file is told once to have often. */
export type Often = 'early-estimates' | 'unit-not-of-code';

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
  /** Units of the readings. */
  units: Set<GlucoseUnit>;
  unsure: Unsure[];
  /** How often something was so, told once for the file: early estimates, units that are not those of the code … */
  often: Map<Often, number>;
  /** Whether a unit stood as text without a code. */
  byText: boolean;
  /** What was not read, by kind, and how often it came. */
  ignored: Map<string, number>;
  zones: Set<string>;
  /** First and last day of results that another system made ready; empty where none says so. */
  results: { from: string; to: string };
  /** Observations that another one names as its parts; what they say is told there. */
  parts: Set<Json>;
  resolve: Resolve;
  reading(resource: Placed, wall: number, offset: number, value: GlucoseValue, unsure: boolean): void;
  note(entry: NoteEntry): void;
  setAside<Code extends IssueCode>(resource: Resource, code: Code, ...more: More<Code>): void;
  repeats(resource: Resource): void;
  ignore(what: string): void;
  /** A ready-made result: counted, with the days it is about. */
  result(body: Json): void;
  remark(code: 'points-left-out', line: number, count: number): void;
  minutesOf(period: Json | undefined): number | undefined;
}

/** Nothing read yet; what is read goes into the book and the entries. */
export function newReading(
  file: string,
  { today, unit }: ReadSettings,
  resolve: Resolve,
  book: IssueBook,
  entries: Entries,
): FhirReading {
  const units = new Set<GlucoseUnit>();
  const unsure: Unsure[] = [];
  const ignored = new Map<string, number>();
  const results = { from: '', to: '' };
  return {
    file,
    today,
    unit,
    coded: undefined,
    bare: { count: 0, line: 0, low: Number.POSITIVE_INFINITY, high: 0 },
    units,
    unsure,
    often: new Map(),
    byText: false,
    ignored,
    zones: new Set(),
    results,
    parts: new Set(),
    resolve,
    reading: ({ line, row }, wall, offset, value, isUnsure) => {
      if (isUnsure) {
        unsure.push({ resource: { line, row }, wall, offset, value });
        return;
      }
      units.add(value.unit);
      entries.reading(wall, offset, value.value, value.unit === 'mg/dL' ? 0 : 1, value.limit, line, row);
    },
    note: (entry) => {
      entries.notes.push(entry);
      entries.fate(entry.row, 'note');
    },
    setAside: ({ line, row }, code, ...more) => {
      book.add(code, 'warning', line, ...more);
      entries.fate(row, 'set-aside');
    },
    repeats: ({ row }) => entries.fate(row, 'duplicate'),
    remark: (code, line, count) => book.add(code, 'note', line, { count }),
    ignore: (what) => ignored.set(what, (ignored.get(what) ?? 0) + 1),
    result: (body) => {
      ignored.set('summary', (ignored.get('summary') ?? 0) + 1);
      const period = objectIn(body, 'effectivePeriod');
      const at = textIn(body, 'effectiveDateTime');
      // Days as they are written: YYYY-MM-DD sorts as text (FHIR R4, dateTime).
      for (const day of [textIn(period, 'start') || at, textIn(period, 'end') || at].map((text) => text.slice(0, 10))) {
        if (!/^\d{4}-\d{2}-\d{2}$/.test(day)) continue;
        if (results.from === '' || day < results.from) results.from = day;
        if (day > results.to) results.to = day;
      }
    },
    minutesOf: (period) => (period ? minutesBetween(textIn(period, 'start'), textIn(period, 'end'), today) : undefined),
  };
}
