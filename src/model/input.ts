import type { Choice } from './choices.ts';
import type { DateOrder } from './detail.ts';
import type { GlucoseUnit } from './glucose.ts';
import type { Fault, Issue } from './issues.ts';

export type { Choice } from './choices.ts';
export type { Fault, Issue } from './issues.ts';

/** One input file as the door found it. Decoding is a reader's step, so text encoding is a settled choice too. */
export interface Input {
  /** The file's name as the user gave it; shown, never opened again. */
  name: string;
  bytes: Uint8Array;
  /** What was learnt when archives and workbooks were opened, so that none is opened twice; absent: the bytes of a file. */
  form?: 'sheet' | 'too-deep' | Closed;
}

/** Why an archive or a workbook could not be opened, as the issue that says so. */
export type Closed =
  | 'archive-damaged'
  | 'archive-too-large'
  | 'archive-locked'
  | 'workbook'
  | 'workbook-locked'
  | 'file-empty';

/** Where something stood. Lines and columns count from 1, as editors count; physical lines of the file. Line 0: the file as a whole. */
export interface Origin {
  file: string;
  line: number;
  column?: number;
}

/**
 * The fate of one record (a row of text, an element of a list). A record that gives several entries keeps the
 * strongest: used > note > duplicate > set-aside > ignored.
 */
export type RowFate = 'ignored' | 'set-aside' | 'duplicate' | 'note' | 'used';

/** rows = used + duplicate + setAside + notes + ignored, for each file and in total. */
export interface Ledger {
  rows: number;
  /** Rows whose glucose reading stands on the timeline. */
  used: number;
  /** Rows that only repeat what another row said. */
  duplicate: number;
  /** Rows that could not be trusted; each has an issue with its line and reason. */
  setAside: number;
  /** Rows that gave notes and no reading. */
  notes: number;
  /** Titles, headers, blank and summary rows: not data. */
  ignored: number;
}

/** How much of a file should have been readings or notes and could not be used, told from 1 % on. */
export interface Loss {
  file: string;
  lost: number;
  of: number;
  /** Whether whoever made the report named the file to be used all the same. */
  accepted: boolean;
}

/** Sensor readings of one file, one column an array, in file order. All arrays have length `count`. */
export interface ReadingColumns {
  count: number;
  /** Wall clock as written, in ms as if it were UTC. */
  wall: Float64Array;
  /**
   * Offset from UTC in minutes as written in the file; NO_OFFSET of time/offset.ts where the file gave none. World time is put
   * on the clock that the person's other entries tell, where they do (readers/times/worldTime.ts).
   */
  offset: Int16Array;
  /** The number as it stood in the file, in `unit`. For a censored reading: the bound, or NaN when unknown. */
  native: Float64Array;
  /** 0 = mg/dL, 1 = mmol/L. */
  unit: Uint8Array;
  /** -1 = below what the sensor reports, 1 = above, 0 = a plain reading. */
  limit: Int8Array;
  /** Physical line, from 1. */
  line: Int32Array;
  /** Index of the record into `ReadFile.fates`. */
  row: Int32Array;
}

export type NoteKind =
  | 'meal'
  | 'insulin'
  /** Background insulin as a pump runs it: a rate from then on, no dose. Told where it changes. */
  | 'insulin-rate'
  | 'exercise'
  | 'medication'
  | 'fingerstick'
  | 'calibration'
  | 'alarm'
  | 'sensor'
  | 'text';

/** When something was written down for, and where it stands. */
export interface NotePlace {
  /** As in ReadingColumns. */
  wall: number;
  offset: number;
  /** False when only a date was written: a note of that day, not of midnight. */
  timed: boolean;
  origin: Origin;
  /** Index of the record into `ReadFile.fates`. */
  row: number;
}

/** One fact written down beside the readings. Amounts are never guessed: absent means "not written down". */
export interface NoteEntry extends NotePlace {
  kind: NoteKind;
  amount?: number;
  /** g, IU, min, mg/dL, mmol/L … as UCUM writes it, or the file's own word. */
  unit?: string;
  /** Food name, exercise kind, insulin or medicine name. Hostile text. */
  label?: string;
  minutes?: number;
  /** Free text as it stood. Hostile text. */
  text?: string;
}

/** What a column of a table was taken for, or why it cannot change what the readings mean. */
export interface ColumnAccount {
  /** As written in the file. Hostile text. */
  name: string;
  /** As a layout would say it (ROLES of schemas/layout.ts). */
  role: string;
  /** What told it: its name, its cells, the columns beside it, the lines above the table, a layout; or why it does no harm. */
  why:
    | 'layout'
    | 'name'
    | 'cells'
    | 'beside'
    | 'empty'
    | 'constant'
    | 'serial'
    | 'witness'
    | 'no-groups'
    | 'other-quantity'
    | 'numbers'
    | 'words'
    | 'times';
  /** As data: an example, a range, the column it repeats. Hostile text. */
  evidence?: string;
}

/** What a file says of whose it is. */
export interface PersonMark {
  /** A name, a number of record, a code of a study or an account, an address, a day of birth. */
  kind: 'name' | 'record' | 'code' | 'mail' | 'born';
  /** As written. Hostile text. */
  text: string;
}

/** What a reader made of one input. Readers never throw and never drop a record. */
export interface ReadFile {
  name: string;
  /** Id of the input kind, e.g. `delimited`. */
  kind: string;
  /** SHA-256 of the bytes, hex. */
  hash: string;
  choices: Choice[];
  issues: Issue[];
  /** Every place set aside, in file order of finding. */
  faults: Fault[];
  readings: ReadingColumns;
  notes: NoteEntry[];
  /** One a record, in file order; the timeline may turn `used` into `duplicate` or `set-aside`. */
  fates: RowFate[];
  /** Codes or names of persons found in the file, distinct, in order of appearance. Hostile text. */
  persons: string[];
  /** The same and days of birth, each with its kind; absent where a reader knows codes only. */
  marks?: PersonMark[];
  /** Every column of its tables. */
  columns?: ColumnAccount[];
  /** IANA zone named by the file, if any. */
  zone?: string;
  /** Its columns were told, and none of them can hold readings: a log beside the sensor. */
  logOnly?: true;
  /** A layout that would reproduce the reading without any detection (see schemas/layout.ts); absent if it makes no sense. */
  layout?: unknown;
}

/** What the person running the program has said about how to read. Absent = let the file decide. */
export interface ReadSettings {
  /** Of numbers in files that name no unit; a file that names another is refused, never read anew. */
  unit?: GlucoseUnit;
  zone?: string;
  dateOrder?: DateOrder;
  /** Parsed layout file (schemas/layout.ts), already checked. */
  layout?: unknown;
  /** Today as the door knows it, for "a date in the future"; YYYY-MM-DD. */
  today: string;
}
