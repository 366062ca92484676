import type { Issue, ReadFile } from '../model/input.ts';

/** A reading's fate on the way to the timeline. */
export const KEPT = 0;
export const DUPLICATE = 1;
export const SET_ASIDE = 2;
/** Set aside as well, for these reasons. */
export const OTHER_SENSOR = 3;
export const SKIPPED_HOUR = 4;

/** One file's readings as instants. `at` is NaN and `lost` SET_ASIDE where there is no such instant. */
export interface PlacedFile {
  file: ReadFile;
  at: Float64Array;
  /** KEPT, DUPLICATE, SET_ASIDE or one of its reasons, one a reading; later steps write into it. */
  lost: Uint8Array;
  newestFirst: boolean;
  issues: Issue[];
}
