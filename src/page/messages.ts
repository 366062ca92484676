import type { Outcome } from '../model/clinic.ts';
import type { GlucoseUnit } from '../model/glucose.ts';
import type { Report } from '../model/report.ts';
import type { Agreed } from '../model/visits.ts';
import type { Result } from '../papers/resultNames.ts';
import type { FolderSettings } from '../schemas/settings.ts';
import type { Extras, Listed, Listing, Lying, Turn } from './folderMessages.ts';
import type { Found, Someone } from './foundMessages.ts';

export type { Found, Someone };

// What the page and its worker say to each other: plain data that can be handed over. Types only, so that nothing of the
// worker's packages comes into the page's script.

/** A file as the page took it; `path` with `/`, from the top of what was dropped. */
export interface Taken {
  path: string;
  bytes: Uint8Array;
}

/** Who and what is wanted. Settings that lie beside the files are below what is asked for here. */
export interface Wish {
  person: Someone;
  /** Whether the code is given by the folder and wins over settings, as in a folder run. */
  ofMany: boolean;
  /** Compared with the visit files that were brought for them, where nothing else was asked for. */
  since: boolean;
  /** Nearer than all that lies with the files. A name that stands there without a value sets aside what lies there of it. */
  asked: FolderSettings;
  /** A layout as its file holds it; absent: none. */
  layout?: LayoutAnswers;
  language: 'en' | 'es';
  /** Where the papers are read, `es-MX`; absent: nowhere in particular. */
  region?: string;
  /** YYYY-MM-DD on the wall clock where the page is open. */
  today: string;
}

/** Lines of a layout file, as answers give them. */
export type LayoutAnswers = Readonly<Record<string, unknown>>;

/** Something to say about the files, in words. */
export interface Line {
  level: 'note' | 'warning' | 'refusal';
  text: string;
  /** File and line, where it has a place. */
  place: string;
}

/** One answer that can be given, with what this file's own rows would mean then. */
export interface Reading {
  value: string;
  label: string;
  shows: string[];
}

/** A name of the file that wants a meaning, with what stands in it. */
export interface Meant {
  name: string;
  seen: string;
  /** What is known already; it can be changed. */
  role: string;
}

/** A question of a file, in words, with all that can be answered. Nothing is chosen beforehand. */
export interface Asked {
  /** The same for the same question about the same file. */
  id: string;
  of: 'unit' | 'day-order' | 'zone' | 'period' | 'losses' | 'layout';
  /** For `layout`: the line of a layout that the answer becomes. */
  field: string;
  text: string;
  file: string;
  /** Answers of which one is chosen. */
  readings: Reading[];
  /** Names of which each wants a meaning, and the meanings there are. */
  names: Meant[];
  /** Rows of the file as they stand, the first of them its names. */
  rows: string[][];
  /** Words to choose from while typing. */
  suggestions: string[];
}

/** How one file was understood. */
export interface FileSeen {
  name: string;
  kind: string;
  /** Every row, in one sentence. */
  rows: string;
  /** Of what, what was chosen, who chose it. */
  choices: [string, string, string][];
  /** Name, what it was taken for, why; and the role by its own name. */
  columns: { key: string; name: string; role: string; as: string; why: string }[];
  persons: string[];
}

/** A row that was not used. */
export interface SetAsideRow {
  file: string;
  line: number;
  reason: string;
}

/** What came of reading one person's files. */
export interface Read {
  ok: boolean;
  files: FileSeen[];
  lines: Line[];
  asked: Asked[];
  setAside: SetAsideRow[];
  /** All rows, in one sentence; absent for a single file. */
  allRows: string;
  /** Only where papers can be made. */
  period?: { sentence: string; from: string; to: string; days: number };
  /** Under what names the files stand in the results, where those differ. */
  renamed: { file: string; as: string }[];
  /** Parts of the report that could not be worked out. */
  failed: string[];
  /** Topics that were found, what leads by the rules first, each in words with what it rests on. */
  topics: { id: string; name: string; why: string; led: boolean; ruled: boolean }[];
  /** Whether remarks that have no room in the report stand on a sheet of their own. */
  remarks: boolean;
  /** Sentences of the draft interpretation, as they are worked out. */
  draft: string[];
  /** What a file beside the others says was agreed. */
  written: Agreed | null;
  /** The unit that is shown, and whether a file leaves it open: told by its numbers, or by somebody's word. */
  unit?: { shown: GlucoseUnit; open: boolean };
  /** What holds of all that was asked for, here and beside the files. */
  holds: FolderSettings;
}

/** A day of the files: how much of it was read (0 to 1), and both in words. */
export interface DaySeen {
  date: string;
  share: number;
  label: string;
}

/** Papers that a screen shows, in order of the tabs. */
export type Sheet = 'clinic' | 'patient' | 'further';

/** What a visit can print: the papers, and the sheet of remarks that may be added to the report. */
export type Ticked = Sheet | 'remarks';

/** A paper that is wanted, with the words of the visit. */
export interface Showing {
  sheet: Sheet;
  /** Whether the report has its sheet of remarks with it, not, or is that sheet alone. */
  remarks: 'with' | 'without' | 'alone';
  typed: Agreed;
}

/** A paper for a frame: markup of our own making in which every text of a file is text, and its looks. */
export interface Framed {
  html: string;
  style: string;
  direction: Report['direction'];
  /** Letters on it that no face here has: on paper a mark stands in their place. */
  lacking: string[];
}

/** A day by itself, large; the days on both sides of it, null at the ends of the period. */
export interface DayShown {
  paper: Framed;
  name: string;
  before: string | null;
  after: string | null;
}

/** What is saved. */
export interface Wanting {
  what: Result[];
  zip: boolean;
  typed: Agreed;
  fhirReadings: boolean;
}

export interface SavedFile {
  name: string;
  bytes: Uint8Array;
  type: string;
}

/** What the page can ask of the worker. */
export interface Jobs {
  begin(given: { template: string; regular: Uint8Array; semibold: Uint8Array; clinic: string }): { version: string };
  /** Faces that somebody brought, in place of those before; the place of one that cannot be used. */
  faces(given: { faces: Uint8Array[] }): { wrong: number | null };
  look(given: { files: Lying[]; taken: Taken[]; today: string; language: Pick<Wish, 'language' | 'region'> }): Found;
  take(given: { files: Taken[] }): null;
  read(given: Wish): Read;
  /** All days that the files hold, whatever the period. */
  days(given: Record<string, never>): DaySeen[];
  show(given: Showing): Framed;
  /** `date`: YYYY-MM-DD; null for a day outside the period. */
  day(given: { date: string; sheet: Sheet }): DayShown | null;
  make(given: Wanting): SavedFile[];
  turn(given: Turn): Outcome;
  papers(given: Turn & { extras: Extras[] }): { outcome: Outcome; files: SavedFile[]; lacking: string[] };
  list(given: Listing): Listed;
  lists(given: Record<string, never>): SavedFile[];
  /** The worklist as its web page has it, or in its groups as it is printed. */
  frame(given: { form: 'screen' | 'paper' }): Framed;
  pack(given: { files: SavedFile[]; last: boolean }): Uint8Array;
}

export type Job = keyof Jobs;
export type Given<J extends Job> = Parameters<Jobs[J]>[0];
export type Answer<J extends Job> = ReturnType<Jobs[J]>;
