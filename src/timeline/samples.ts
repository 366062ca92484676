import type { Detail } from '../model/detail.ts';
import type { ReadFile, ReadingColumns } from '../model/input.ts';
import { MINUTE_MS } from '../time/calendar.ts';
import { NO_OFFSET, offsetText } from '../time/offset.ts';
import { UNITS } from '../units.ts';

/** A wall clock time to the minute. */
export const clockText = (wall: number): string => new Date(wall).toISOString().slice(0, 16).replace('T', ' ');

/** A reading as it stood: `102 mg/dL`, `< 40 mg/dL`, `> ? mmol/L`. */
export function valueText({ native, unit, limit }: ReadingColumns, i: number): string {
  const sign = limit[i]! < 0 ? '< ' : limit[i]! > 0 ? '> ' : '';
  return `${sign}${Number.isNaN(native[i]) ? '?' : native[i]} ${UNITS[unit[i]!]}`;
}

type RowAt = Extract<Detail, { is: 'row-at' }>;

/** The first reading that is wanted, as it stands. There is one: whoever asks has counted it. */
export function sampleOf(files: ReadFile[], wanted: (file: ReadFile, i: number) => boolean): RowAt {
  for (const file of files) {
    const { count, wall, offset, line } = file.readings;
    for (let i = 0; i < count; i++) {
      if (!wanted(file, i)) continue;
      const shift = offset[i] === NO_OFFSET ? '' : ` ${offsetText(offset[i]! * MINUTE_MS)}`;
      return { is: 'row-at', at: `${clockText(wall[i]!)}${shift}`, file: file.name, line: line[i]! };
    }
  }
  return { is: 'row-at', at: '', file: '', line: 0 };
}
