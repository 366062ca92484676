import type { ReadFile } from '../model/input.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { NO_OFFSET, offsetText } from '../time/offset.ts';

/** A wall clock time to the minute. */
export const clockText = (wall: number): string => new Date(wall).toISOString().slice(0, 16).replace('T', ' ');

/** The first reading that is wanted, as it stands: `2026-01-14 08:00 +02:00 (a.csv, line 5)`; '' when there is none. */
export function sampleOf(files: ReadFile[], wanted: (file: ReadFile, i: number) => boolean): string {
  for (const file of files) {
    const { count, wall, offset, line } = file.readings;
    for (let i = 0; i < count; i++) {
      if (!wanted(file, i)) continue;
      const shift = offset[i] === NO_OFFSET ? '' : ` ${offsetText(offset[i]! * MINUTE_MS)}`;
      return `${clockText(wall[i]!)}${shift} (${file.name}, line ${line[i]})`;
    }
  }
  return '';
}
