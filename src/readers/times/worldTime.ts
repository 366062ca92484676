import type { ReadFile, ReadSettings } from '../../model/input.ts';
import { DAY_MS, MINUTE_MS } from '../../time/calendar.ts';
import { NO_OFFSET, offsetText } from '../../time/offset.ts';

/** How far beyond the entries that tell the clock they still tell it (ours). */
const REACH = DAY_MS;

/** A file's readings or its notes, as far as they carry an offset. */
interface Part {
  file: ReadFile;
  /** Every offset is 0: the times say nothing of the wearer's clock (HL7 Personal Health Device guide). */
  silent: boolean;
  offsets: Set<number>;
  /** Instants of the first and the last. */
  from: number;
  to: number;
  shift(offset: number): void;
}

/**
 * Times in world time (`Z`, `+00:00`) name an instant and not the hour on the wearer's wall. Where the person's other
 * readings or notes were written with one offset over the same days, it is theirs too: the times are put on that clock,
 * and the choice says which file told it. Offsets that change, or that do not reach, tell nothing; the timeline asks then.
 */
export function tellWorldTime(files: ReadFile[], { zone }: ReadSettings): void {
  if (zone !== undefined || files.some((file) => file.zone !== undefined)) return;
  const parts = files
    .flatMap((file) => [partOfReadings(file), partOfNotes(file)])
    .filter(({ offsets }) => offsets.size > 0);
  const silent = parts.filter((part) => part.silent);
  const telling = parts.filter((part) => !part.silent);
  const [offset, ...others] = new Set(telling.flatMap(({ offsets }) => [...offsets]));
  if (silent.length === 0 || offset === undefined || others.length > 0) return;
  const from = Math.min(...telling.map((part) => part.from)) - REACH;
  const to = Math.max(...telling.map((part) => part.to)) + REACH;
  for (const part of silent) {
    if (part.from < from || part.to > to) continue;
    part.shift(offset);
    const { choices } = part.file;
    if (!choices.some(({ id }) => id === 'offset'))
      choices.push({
        id: 'offset',
        value: offsetText(offset * MINUTE_MS),
        by: 'file',
        evidence: { is: 'named', name: telling[0]!.file.name },
      });
  }
}

function newPart(file: ReadFile, shift: Part['shift']): Part {
  return {
    file,
    silent: true,
    offsets: new Set(),
    from: Number.POSITIVE_INFINITY,
    to: Number.NEGATIVE_INFINITY,
    shift,
  };
}

function include(part: Part, wall: number, offset: number): void {
  if (offset === NO_OFFSET) return;
  if (offset !== 0) part.silent = false;
  part.offsets.add(offset);
  const at = wall - offset * MINUTE_MS;
  if (at < part.from) part.from = at;
  if (at > part.to) part.to = at;
}

function partOfReadings(file: ReadFile): Part {
  const { count, wall, offset } = file.readings;
  const part = newPart(file, (minutes) => {
    for (let i = 0; i < count; i++) {
      if (offset[i] !== 0) continue;
      offset[i] = minutes;
      wall[i]! += minutes * MINUTE_MS;
    }
  });
  // Offsets of a whole file are alike as a rule: nothing is looked up while none is there.
  for (let i = 0; i < count; i++) if (offset[i] !== NO_OFFSET) include(part, wall[i]!, offset[i]!);
  return part;
}

function partOfNotes(file: ReadFile): Part {
  const part = newPart(file, (minutes) => {
    for (const note of file.notes) {
      if (note.offset !== 0) continue;
      note.offset = minutes;
      note.wall += minutes * MINUTE_MS;
    }
  });
  for (const { timed, wall, offset } of file.notes) if (timed) include(part, wall, offset);
  return part;
}
