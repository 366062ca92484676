import type { Issue, ReadFile } from '../model/input.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { NO_OFFSET, offsetText } from '../time/offset.ts';
import { zoneClock } from '../time/zone.ts';
import { clockText } from './samples.ts';

/** Two places to show what a time in world time may have been; nothing says that the person lives in either. */
const PLACES = ['Europe/Helsinki', 'America/New_York'];

/**
 * Refuses a file whose times are all in world time when no zone is known: the same row as it reads on a clock that shows
 * world time, and on others. With `notes` set it looks at the notes, else at the readings.
 */
export function worldTimeUnclear(files: ReadFile[], notes = false): Issue | undefined {
  let found: { file: ReadFile; line: number; at: number } | undefined;
  let count = 0;
  const offsets = new Set<number>();
  for (const file of files) {
    const rows = notes ? rowsOfNotes(file) : rowsOfReadings(file);
    if (rows.count > 0 && rows.offsets.size === 0) {
      count += rows.count;
      found ??= { file, line: rows.line, at: rows.at };
    } else for (const offset of rows.offsets) offsets.add(offset);
  }
  if (!found) return undefined;
  const { file, line, at } = found;
  const known = [...offsets].slice(0, 2);
  // Offsets of the person's other files are likelier than any place.
  const clocks = known.map((offset) => ({ name: offsetText(offset * MINUTE_MS), shift: offset * MINUTE_MS }));
  for (const name of known.length > 0 ? [] : PLACES) clocks.push({ name, shift: zoneClock(name, at, at).offset[0]! });
  const readings = clocks.map(
    ({ name, shift }) => ({ is: 'clock-at', at: clockText(at + shift), clock: name }) as const,
  );
  return {
    code: 'clock-utc',
    level: 'refusal',
    origin: { file: file.name, line },
    actual: clockText(at),
    expected: readings,
    question: { of: 'zone' },
    count,
  };
}

interface Rows {
  /** Entries with an offset, and the offsets that are not 0. */
  count: number;
  offsets: Set<number>;
  /** Of the first. */
  line: number;
  at: number;
}

function rowsOfReadings({ readings }: ReadFile): Rows {
  const rows: Rows = { count: 0, offsets: new Set(), line: 0, at: 0 };
  for (let i = 0; i < readings.count; i++) add(rows, readings.wall[i]!, readings.offset[i]!, readings.line[i]!);
  return rows;
}

function rowsOfNotes({ notes }: ReadFile): Rows {
  const rows: Rows = { count: 0, offsets: new Set(), line: 0, at: 0 };
  for (const { timed, wall, offset, origin } of notes) if (timed) add(rows, wall, offset, origin.line);
  return rows;
}

function add(rows: Rows, wall: number, offset: number, line: number): void {
  if (offset === NO_OFFSET) return;
  if (rows.count++ === 0) {
    rows.line = line;
    // Only looked at where every offset is 0.
    rows.at = wall;
  }
  if (offset !== 0) rows.offsets.add(offset);
}
