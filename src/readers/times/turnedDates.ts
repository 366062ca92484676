import { dayNumber, openDay } from './dayOrder.ts';
import { packDate, SHAPE } from './stamp.ts';
import type { TimeCells } from './timeColumn.ts';

/** Fewer different dates of either form prove nothing (ours). */
const FEWEST = 2;

/**
 * Dates that a spreadsheet turned: it read 05/01/2026 as the first of May and stored a date, and left 13/01/2026, which fits no month,
 * as text. So every stored date has a day up to 12, and every text a first number above it. Where the days then follow each
 * other, and as stored they do not, the stored ones are turned back. `unclear`: it looks so, and order does not tell.
 */
export function mendTurned(cells: TimeCells): 'none' | 'unclear' | number {
  const { shape, open, date } = cells;
  const codes: { code: number; open: boolean }[] = [];
  let [stored, texts] = [0, 0];
  for (let k = 0; k < shape.length; k++) {
    if (shape[k] !== SHAPE.stamp && shape[k] !== SHAPE.day) continue;
    if (open[k] === 2) return 'none';
    const last = codes[codes.length - 1];
    if (last && last.code === date[k] && last.open === (open[k] === 1)) continue;
    codes.push({ code: date[k]!, open: open[k] === 1 });
    if (open[k] === 1) {
      texts++;
      if (date[k]! >>> 21 <= 12) return 'none';
    } else {
      stored++;
      if ((date[k]! & 31) > 12) return 'none';
    }
  }
  if (stored < FEWEST || texts < FEWEST) return 'none';
  const asStored = ({ code, open }: (typeof codes)[0]): number =>
    open ? openDay(code, 'day-first') : dayNumber(code >>> 9, (code >>> 5) & 15, code & 31);
  const turned = ({ code, open }: (typeof codes)[0]): number =>
    open ? openDay(code, 'day-first') : dayNumber(code >>> 9, code & 31, (code >>> 5) & 15);
  const [before, after] = [asStored, turned].map((day) => smallSteps(codes.map(day))) as [number, number];
  if (after < 0.8 || after <= before) return before >= 0.8 ? 'none' : 'unclear';
  let count = 0;
  for (let k = 0; k < shape.length; k++) {
    if ((shape[k] !== SHAPE.stamp && shape[k] !== SHAPE.day) || open[k] !== 0) continue;
    const code = date[k]!;
    date[k] = packDate(code >>> 9, code & 31, (code >>> 5) & 15);
    count++;
  }
  return count;
}

/** Share of the steps from one date to the next that are two days at most. */
function smallSteps(days: number[]): number {
  let small = 0;
  for (let i = 1; i < days.length; i++) if (Math.abs(days[i]! - days[i - 1]!) <= 2) small++;
  return small / Math.max(1, days.length - 1);
}
