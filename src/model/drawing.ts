import type { LocalDate } from './glucose.ts';
import type { Band } from './targets.ts';
import type { Below } from './words.ts';

/** Names of the sentences on how to read a picture. */
export type HowToRead = Below<'charts.howTo'>;

/** What a mark is, not what colour it has: the writers own one palette table. */
export type Role =
  | Band
  | 'ink'
  | 'axis'
  | 'grid'
  | 'limit'
  | 'median'
  | 'inner-ribbon'
  | 'inner-edge'
  | 'outer-ribbon'
  | 'outer-edge'
  | 'trace'
  | 'interval'
  | 'gap'
  | 'night'
  | 'paper'
  | 'muted';

/**
 * Shapes of note marks: food ● F, insulin ▲ I (long-acting ▼, a rate as steps), exercise ◆ E, medicine ■ M, finger stick ✚ S,
 * alarm, sensor, text.
 */
export type SignShape =
  | 'circle'
  | 'triangle'
  | 'wedge'
  | 'steps'
  | 'diamond'
  | 'square'
  | 'plus'
  | 'bell'
  | 'ring'
  | 'dash';

/** Points, x to the right and y down, from the drawing's top left corner. Coordinates rounded to 0.01. */
export type Mark =
  /** Open lines. Each entry is x0,y0,x1,y1… */
  | { kind: 'line'; role: Role; lines: number[][]; width: number; dash?: [number, number] }
  /** Closed shapes, filled by role (with the role's hatch), optionally outlined. */
  | { kind: 'shape'; role: Role; rings: number[][]; outline?: Role; outlineWidth?: number }
  | {
      kind: 'rect';
      role: Role;
      x: number;
      y: number;
      w: number;
      h: number;
      outline?: Role;
      outlineWidth?: number;
      dotted?: boolean;
      radius?: number;
    }
  | {
      kind: 'text';
      role: Role;
      x: number;
      /** Baseline. */
      y: number;
      text: string;
      size: number;
      anchor: 'start' | 'middle' | 'end';
      strong?: boolean;
      /** Text on a filled mark takes the colour that reads on that band. */
      on?: Band;
      /** The day that it names, where a screen can lead there. */
      date?: LocalDate;
    }
  | { kind: 'sign'; shape: SignShape; role: Role; x: number; y: number; size: number; letter?: string };

/**
 * A part of a chart that is read from left to right: what stands there in words, evenly spaced between the two sides of the box,
 * in points. Where one can point at it, a screen says the text under the pointer.
 */
export interface Along {
  /** What is read, in a few words. */
  name: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
  says: string[];
}

/**
 * A chart without a medium. Its size is known at once; summary, table and marks are told anew each time they are asked for where that
 * costs something, since a page tries a chart in several sizes and draws one, and paper prints no table.
 */
export interface Drawing {
  width: number;
  height: number;
  /** What kind of picture it is, for one sentence on how to read it where there is room for one (a screen). */
  how?: HowToRead;
  /** What the chart shows, with its numbers, for those who cannot see it. */
  summary: string;
  /** What it shows beyond that, for media that have words only: on a screen the table holds it. Nothing when there is no more. */
  inWords?: string | undefined;
  /** The same as a small table, for an annex or a screen reader. */
  table?: { columns: string[]; rows: string[][] };
  /**
   * For one local day drawn from midnight to midnight: its short name, where its two ends lie (x, points), and names of
   * hours evenly spaced from end to end. Such a drawing's table has one row an hour.
   */
  day?: { name: string; left: number; right: number; hours: string[] };
  /** The one day that it shows, where a screen can show it larger. */
  date?: LocalDate;
  /** Its curves, to be read off point by point. */
  along?: readonly Along[];
  marks: Mark[];
  /** The same, broken into rows, for a screen no wider than a hand, where nothing of it should lie out of sight. */
  narrow?: Drawing | undefined;
}
