import type { Issue, ReadFile } from '../model/input.ts';

/** A reading's fate on the way to the timeline. */
export const KEPT = 0;
export const DUPLICATE = 1;
export const SET_ASIDE = 2;

/** One file's readings as instants. `at` is NaN and `lost` SET_ASIDE where there is no such instant. */
export interface PlacedFile {
  file: ReadFile;
  at: Float64Array;
  /** KEPT, DUPLICATE or SET_ASIDE, one a reading; later steps write into it. */
  lost: Uint8Array;
  newestFirst: boolean;
  issues: Issue[];
}
