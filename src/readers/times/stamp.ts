import { NO_OFFSET } from '../../time/offset.ts';

/** What a cell of a time column holds, as far as the cell alone can tell. */
export const SHAPE = { none: 0, stamp: 1, day: 2, clock: 3, seconds: 4, millis: 5, serial: 6 } as const;

/** Working space for one cell; filled by the readers below so that no row allocates. */
export interface Stamp {
  /** Packed date: see packDate and packOpen. */
  date: number;
  /** A date that is none as year, month, day and one as year, day, month: that one, packed. Otherwise 0. */
  yearDay: number;
  /** The order of day, month and year is still open. */
  open: boolean;
  shortYear: boolean;
  /** Milliseconds of the day; for epochs and serials the number itself. */
  ms: number;
  hour: number;
  offset: number;
  /** 0 none, 1 before noon, 2 after noon. */
  half: number;
  flags: number;
  zone: string;
}

export function newStamp(): Stamp {
  return {
    date: 0,
    yearDay: 0,
    open: false,
    shortYear: false,
    ms: 0,
    hour: 0,
    offset: NO_OFFSET,
    half: 0,
    flags: 0,
    zone: '',
  };
}

/** A date whose parts are certain. Parts that fit no calendar give day 0 of month 0: they may not spill into each other. */
export const packDate = (y: number, m: number, d: number): number =>
  m <= 12 && d <= 31 ? (y << 9) | (m << 5) | d : y << 9;
/** Three numbers whose order the whole column will settle. */
export const packOpen = (a: number, b: number, c: number): number => (a << 21) | (b << 14) | c;
