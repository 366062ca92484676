import type { Person } from '../model/clinic.ts';
import type { RunSettings } from '../schemas/clinicSettings.ts';

// What the page and its worker say to each other of who lies there. Types only, as in messages.ts.

/** A person found among the files, by the rules of a clinic's folder. */
export interface Someone {
  code: string;
  /** What their results are called by. */
  stem: string;
  files: string[];
  /** Path of settings that lie with them. */
  settings?: string;
  /** Paths of visit files that lie with them. */
  visits: string[];
  /** Paths of their visit files wherever they lie, the oldest first: theirs by name or by folder. */
  earlier: string[];
  /** Path of what an earlier run of the command left of them. */
  record?: string;
  /** All paths whose bytes are wanted to read them: exports, settings, and what settings name. */
  needs: string[];
  /** Why nothing can be read, in words; absent: it can be tried. */
  wrong?: string;
  /** What reading so much will take, in words; absent: nothing worth a word. */
  heavy?: string;
  /** As the folder run sees them; absent for all files as one person's. */
  person?: Person;
  /** Path of the settings that hold for everyone in the folder. */
  usual?: string;
}

/** What lies among all the files that were taken. */
export interface Found {
  /** `ask`: files beside each other, of which only the person can say whether they are one person's. */
  whose: 'one' | 'many' | 'ask' | 'none';
  /** Everyone, as the folder run would tell them apart, and by what, in words. */
  people: Someone[];
  toldBy: string;
  /** Why nothing can be made of the folder as it is, in words; empty: something can. */
  wrong: string;
  /** The day of printing: that of the folder's settings, else today. */
  today: string;
  /** What the results are called by. */
  stem: string;
  /** More bytes in one file are a mistake. */
  most: number;
  /** All of it as one person's. */
  together: Someone;
  /** Files that are not read here, by name. */
  passedOver: string[];
  /** Of how many people visit files of earlier visits were brought, in words; empty: of nobody. */
  earlier: string;
  /** What the settings of the folder say of the run; paths from the top of what was brought. */
  run: RunSettings;
  /** What these name and nobody brought. */
  lacking: string[];
}
