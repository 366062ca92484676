import type { ReadFile } from '../model/input.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { type LocalClock, plainWalls } from '../time/clock.ts';
import { NO_OFFSET } from '../time/offset.ts';
import { settleChangeHours } from './changeHours.ts';
import type { PlacedFile } from './placed.ts';

/**
 * Readings with an offset are instants already; those without are placed by the clock. Times in a skipped hour are
 * set aside, times in a doubled hour are settled by the file's own order.
 */
export function placeFile(file: ReadFile, clock: LocalClock): PlacedFile {
  const { count, wall, offset } = file.readings;
  const placed: PlacedFile = {
    file,
    at: new Float64Array(count),
    lost: new Uint8Array(count),
    newestFirst: runsBackwards(wall, offset, count),
    issues: [],
  };
  const { at } = placed;
  const unclear: number[] = [];
  let piece = 0;
  let plain = plainWalls(clock, piece);
  let shift = clock.offset[piece]!;
  for (let i = 0; i < count; i++) {
    const here = wall[i]!;
    if (offset[i] !== NO_OFFSET) {
      at[i] = here - offset[i]! * MINUTE_MS;
      continue;
    }
    if (here < plain.from || here >= plain.to) {
      piece = plainPiece(clock, here);
      if (piece < 0) {
        unclear.push(i);
        piece = 0;
      }
      plain = plainWalls(clock, piece);
      shift = clock.offset[piece]!;
      if (here < plain.from || here >= plain.to) continue;
    }
    at[i] = here - shift;
  }
  if (unclear.length > 0) settleChangeHours(placed, clock, unclear);
  return placed;
}

/** The piece in whose plain stretch this wall time lies, or -1 in and around a skipped or doubled hour. */
function plainPiece(clock: LocalClock, wall: number): number {
  for (let piece = 0; piece < clock.from.length; piece++) {
    const plain = plainWalls(clock, piece);
    if (wall >= plain.from && wall < plain.to) return piece;
  }
  return -1;
}

/** Whether the file lists its newest readings first: more steps go back than forth. */
function runsBackwards(wall: Float64Array, offset: Int16Array, count: number): boolean {
  let back = 0;
  let forth = 0;
  for (let i = 1; i < count; i++) {
    const step = instantish(wall, offset, i) - instantish(wall, offset, i - 1);
    if (step < 0) back++;
    else if (step > 0) forth++;
  }
  return back > forth;
}

function instantish(wall: Float64Array, offset: Int16Array, i: number): number {
  return offset[i] === NO_OFFSET ? wall[i]! : wall[i]! - offset[i]! * MINUTE_MS;
}
