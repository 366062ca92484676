import type { Day, Readings } from '../model/timeline.ts';
import { DAY_MS, MINUTE_MS, midnightBefore } from '../time/calendar.ts';
import { type LocalClock, pieceAt } from '../time/clock.ts';
import { MGDL_PER_MMOL } from '../units.ts';
import type { PlacedFile } from './placed.ts';
import { firstNotBefore, type Pool } from './pool.ts';

/** The columns of the readings inside the period; `weight` is filled later. */
export function fillColumns(pool: Pool, files: PlacedFile[], days: Day[], clock: LocalClock): Readings {
  const first = days.length > 0 ? firstNotBefore(pool, days[0]!.start) : 0;
  const count = days.at(-1)?.to ?? 0;
  const columns: Readings = {
    count,
    at: pool.at.slice(first, first + count),
    mgdl: new Float64Array(count),
    native: new Float64Array(count),
    unit: new Uint8Array(count),
    limit: new Int8Array(count),
    day: new Uint16Array(count),
    minute: new Uint16Array(count),
    weight: new Float64Array(count),
  };
  let piece = 0;
  let file = -1;
  let source: PlacedFile['file']['readings'] | undefined;
  let midnight = Number.POSITIVE_INFINITY;
  for (let d = 0; d < days.length; d++) {
    const { from, to } = days[d]!;
    for (let i = from; i < to; i++) {
      if (!source || pool.file[first + i] !== file) {
        file = pool.file[first + i]!;
        source = files[file]!.file.readings;
      }
      const index = pool.index[first + i]!;
      const native = source.native[index]!;
      const unit = source.unit[index]!;
      columns.native[i] = native;
      columns.unit[i] = unit;
      columns.limit[i] = source.limit[index]!;
      columns.mgdl[i] = unit === 1 ? native * MGDL_PER_MMOL : native;
      columns.day[i] = d;
      piece = pieceAt(clock, columns.at[i]!, piece);
      const wall = columns.at[i]! + clock.offset[piece]!;
      if (wall < midnight || wall >= midnight + DAY_MS) midnight = midnightBefore(wall);
      columns.minute[i] = (wall - midnight) / MINUTE_MS;
    }
  }
  return columns;
}
