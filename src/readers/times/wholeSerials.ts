import { DAY_MS } from '../../time/calendar.ts';
import { distanceOf } from '../evidence/clocks.ts';
import { DAY_0 } from './serialDates.ts';
import { packDate, SHAPE } from './stamp.ts';
import type { TimeCells } from './timeColumn.ts';

/** Clocks of one moment lie no further from each other. */
const FURTHEST = 15 * 60;

/**
 * A spreadsheet's day numbers beside whole times of the same moments are whole times as well, and may be the wearer's clock beside
 * world time: which count they follow shows in the distance. `wanted` is a user's word for the count.
 */
export function wholeSerials(columns: TimeCells[], wanted: 1900 | 1904 | undefined): void {
  for (const cells of columns) {
    if (cells.counts[SHAPE.serial] === 0) continue;
    const other = columns.find((one) => one !== cells && one.counts[SHAPE.stamp]! > 0);
    if (!other) continue;
    for (const count of wanted ? [wanted] : ([1900, 1904] as const)) {
      const whole = wholeTimes(cells, DAY_0[count]);
      const distance = distanceOf(other, whole);
      if (!distance || distance.is === 'unlike' || Math.abs(distance.minutes) > FURTHEST) continue;
      Object.assign(cells, whole);
      break;
    }
  }
}

function wholeTimes(cells: TimeCells, zero: number): TimeCells {
  const { length } = cells.shape;
  const whole = { ...cells, shape: cells.shape.slice(), date: cells.date.slice(), ms: cells.ms.slice() };
  const counts = [...cells.counts];
  for (let k = 0; k < length; k++) {
    if (cells.shape[k] !== SHAPE.serial) continue;
    // Parts of a day are not exact: the nearest second is what was meant.
    const at = Math.round((zero + cells.ms[k]!) * 86_400) * 1000;
    const day = new Date(at);
    whole.shape[k] = SHAPE.stamp;
    whole.date[k] = packDate(day.getUTCFullYear(), day.getUTCMonth() + 1, day.getUTCDate());
    whole.ms[k] = at - Math.floor(at / DAY_MS) * DAY_MS;
  }
  counts[SHAPE.stamp]! += counts[SHAPE.serial]!;
  counts[SHAPE.serial] = 0;
  return { ...whole, counts };
}
