import type { Instant } from '../model/glucose.ts';

/**
 * A local clock: which offset from UTC holds from which instant on. A zone over a stretch of time is one, the offsets
 * written in the rows are one, and the clock "as written" is one with a single offset of zero. So a reading costs an
 * addition, whatever the clock.
 */
export interface LocalClock {
  /** Start of each piece, ascending; the first is -Infinity. */
  from: number[];
  /** Milliseconds to add to an instant to get the wall clock, one a piece. */
  offset: number[];
}

/** The clock as written, on which instants and wall clock are the same. */
export const AS_WRITTEN: LocalClock = { from: [Number.NEGATIVE_INFINITY], offset: [0] };

/** Index of the piece that holds at an instant; `near` is a first guess and makes a walk through time cheap. */
export function pieceAt(clock: LocalClock, at: number, near = 0): number {
  let piece = near;
  while (piece > 0 && at < clock.from[piece]!) piece--;
  while (piece + 1 < clock.from.length && at >= clock.from[piece + 1]!) piece++;
  return piece;
}

/** What the clock on the wall shows at an instant. */
export function wallAt(clock: LocalClock, at: number): number {
  return at + clock.offset[pieceAt(clock, at)]!;
}

/**
 * Every instant at which the wall clock shows this time, ascending: one as a rule, none inside a skipped hour, two
 * inside a doubled one.
 */
export function instantsOf(clock: LocalClock, wall: number): Instant[] {
  const found: Instant[] = [];
  for (let piece = 0; piece < clock.from.length; piece++) {
    const at = wall - clock.offset[piece]!;
    if (at >= clock.from[piece]! && at < endOf(clock, piece)) found.push(at as Instant);
  }
  return found;
}

/** First instant at which the wall clock shows this time or a later one: the start of a day, given its midnight. */
export function firstInstantFrom(clock: LocalClock, wall: number): Instant {
  for (let piece = 0; piece < clock.from.length; piece++) {
    const at = Math.max(clock.from[piece]!, wall - clock.offset[piece]!);
    if (at < endOf(clock, piece)) return at as Instant;
  }
  throw new RangeError('a clock without a last piece');
}

/** Wall clock times `[from, to)` that belong to this piece and to no other, so that one addition places them. */
export function plainWalls(clock: LocalClock, piece: number): { from: number; to: number } {
  const own = clock.offset[piece]!;
  return {
    from: clock.from[piece]! + Math.max(own, clock.offset[piece - 1] ?? own),
    to: endOf(clock, piece) + Math.min(own, clock.offset[piece + 1] ?? own),
  };
}

function endOf(clock: LocalClock, piece: number): number {
  return clock.from[piece + 1] ?? Number.POSITIVE_INFINITY;
}
