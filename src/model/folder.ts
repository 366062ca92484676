import type { GlucoseUnit, LocalDate } from './glucose.ts';
import type { TargetSet } from './targets.ts';

/** What can be wrong with a person before a file is opened; its words are `clinic.unread.<why>`. */
export type WrongStart =
  | 'emptyFolder'
  | 'unknownKind'
  | 'link'
  | 'closed'
  | 'noFile'
  | 'ambiguousRow'
  | 'twoRows'
  | 'manifestCell'
  | 'twinCode'
  | 'oneOrTwo';

/** By which rule files became one person's: their subfolder, their one file, names that agree, a code in the manifest. */
export type FoundBy = 'folder' | 'file' | 'joined' | 'manifest' | 'asked' | 'nothing';

/** One person as the folder shows them, before anything is read. Paths are relative to the folder, with `/`. */
export interface Person {
  /** What the papers and the worklist call them; unique in a run. */
  code: string;
  /** Name of the person's results folder; safe on any system, unique in a run. */
  stem: string;
  /** Export files, in order of name. */
  files: string[];
  by?: FoundBy;
  /** What a line of the manifest calls them: subfolder, file, or what the names of their files begin with. */
  at?: string;
  /** The person's own settings file, if there is one. */
  settings?: string;
  /** From the manifest. */
  row?: ManifestRow;
  /** Found to be wrong before any file was opened: nothing is made of it, and the worklist says why. */
  wrong?: { why: WrongStart; actual?: string; lines?: string };
}

/** One line of a manifest. Empty cells are absent. */
export interface ManifestRow {
  line: number;
  /** Subfolder or file, relative to the folder. */
  person: string;
  code?: string;
  name?: string;
  targets?: TargetSet['id'];
  unit?: GlucoseUnit;
  zone?: string;
  language?: string;
  visit?: LocalDate;
  /** Time of the visit, HH:MM, where the cell has one. */
  time?: string;
  /** A laboratory A1C, percent. */
  a1c?: number;
  /** A cell that cannot be used: the person is not read with half of what was meant. */
  wrong?: { column: string; actual: string };
}
