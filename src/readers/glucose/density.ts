import type { Choice } from '../../model/input.ts';
import { firstFrom } from '../../stats/sorted.ts';
import { DAY_MS, MINUTE_MS } from '../../time/calendar.ts';
import { MGDL_PER_MMOL } from '../../units.ts';
import { inTime } from '../evidence/inTime.ts';
import { CELL, type GlucoseCells } from './glucoseCell.ts';

/** Sensors store a value at least once an hour; a column of glucose with longer pauses is a meter's log (ours). */
const SENSOR_MINUTES = 60;

/** Median minutes between the values, in whatever order their rows stand; NaN under four of them. */
export function medianStep(cells: GlucoseCells, wall: Float64Array): number {
  const filled = (k: number) =>
    (cells.state[k] === CELL.number || cells.state[k] === CELL.limit) && !Number.isNaN(wall[k]);
  const steps: number[] = [];
  let last = Number.NaN;
  // A few thousand steps tell the median; more would only cost sorting.
  for (let k = 0; k < wall.length && steps.length < 4000; k++) {
    if (!filled(k)) continue;
    if (!Number.isNaN(last)) steps.push(Math.abs(wall[k]! - last) / MINUTE_MS);
    last = wall[k]!;
  }
  const step = medianOf(steps);
  if (!isSparse(step)) return step;
  // Rows in no order look far apart: their times are sorted before that is believed. A time that comes again is no step.
  const ordered = medianOf(stepsOf(wall.filter((_, k) => filled(k))));
  return Number.isNaN(ordered) ? step : ordered;
}

/** Minutes from each time to the next later one. */
function stepsOf(times: Float64Array): number[] {
  const sorted = times.sort();
  const steps: number[] = [];
  for (let i = 1; i < sorted.length; i++)
    if (sorted[i]! > sorted[i - 1]!) steps.push((sorted[i]! - sorted[i - 1]!) / MINUTE_MS);
  return steps;
}

/** Upper median of steps in minutes; NaN under three of them. */
function medianOf(steps: number[]): number {
  if (steps.length < 3) return Number.NaN;
  const sorted = Float64Array.from(steps).sort();
  return sorted[sorted.length >> 1]!;
}

const isSparse = (step: number): boolean => step > SENSOR_MINUTES;

/** Every sensor stores a value this often at least; between this and an hour a person may have written them down (ours). */
const SURELY_MINUTES = 20;
/** Values that come so regularly are a machine's, when they come by night as well (ours; a quarter of a day is from 0 to 6). */
const REGULAR = 0.6;
const NIGHT_SHARE = 0.1;
const TELLING = 12;

/** Whether values that do not say what measured them come as a sensor's do: often, or regularly by day and night. */
export function comesAsSensor(cells: GlucoseCells, wall: Float64Array, step: number): boolean {
  if (step <= SURELY_MINUTES) return true;
  if (isSparse(step)) return false;
  const times = Float64Array.from(
    wall.filter((t, k) => (cells.state[k] === CELL.number || cells.state[k] === CELL.limit) && !Number.isNaN(t)),
  );
  const steps = stepsOf(times);
  const regular = steps.filter((one) => Math.abs(one - step) <= step * 0.1).length;
  const night = times.filter((t) => t % DAY_MS < DAY_MS / 4).length;
  return times.length >= TELLING && regular >= steps.length * REGULAR && night >= times.length * NIGHT_SHARE;
}

/** Whether two or three values stand as close together as a sensor's; one alone does not. */
export function closeTogether(cells: GlucoseCells, wall: Float64Array): boolean {
  const steps = stepsOf(wall.filter((t, k) => cells.state[k] !== CELL.empty && !Number.isNaN(t)));
  return steps.length > 0 && steps.every((step) => step <= SURELY_MINUTES);
}

/** Whether values that do not say what measured them come as often as a sensor's, told as a choice. */
export function comesOften(values: { wall: number }[], choices: Choice[]): boolean {
  const times = values.map(({ wall }) => wall).sort((a, b) => a - b);
  const step = medianOf(times.slice(1).map((t, i) => (t - times[i]!) / MINUTE_MS));
  const sensor = !Number.isNaN(step) && !isSparse(step);
  const value = sensor ? 'sensor' : 'finger-stick';
  choices.push({ id: 'glucose-kind', value, by: 'file', evidence: { is: 'minutes-between', minutes: step } });
  return sensor;
}

/** Whether two sensor columns say the same in the rows that fill both: equal, or equal after changing the unit. */
export function compareColumns(a: GlucoseCells, b: GlucoseCells): { both: number; same: number } {
  let both = 0;
  let same = 0;
  for (let k = 0; k < a.state.length; k++) {
    if (a.state[k] !== CELL.number || b.state[k] !== CELL.number) continue;
    both++;
    const x = a.value[k]!;
    const y = b.value[k]!;
    const [small, large] = x < y ? [x, y] : [y, x];
    // With room for one rounded decimal.
    if (small === large || Math.abs(small * MGDL_PER_MMOL - large) <= 1.5) same++;
  }
  return { both, same };
}

/** Fewer values beside a sensor's tell nothing of a column (ours). */
const FEWEST = 3;
/** Half of a meter's values within 15 to 20 % of a sensor's is what standards ask of both; half of them over 50 % away is another thing (ours). */
const AWAY = 0.5;

/** Whether the values of a column, as a rule, are nowhere near the sensor's of the same quarter of an hour. Both have a unit a row. */
export function awayFromSensor(cells: GlucoseCells, sensor: GlucoseCells, wall: Float64Array): boolean {
  const inMgdl = ({ value, unit }: GlucoseCells, k: number): number => value[k]! * (unit[k] === 1 ? MGDL_PER_MMOL : 1);
  const series = inTime(
    sensor.value.map((__, k) => (sensor.state[k] === CELL.number ? inMgdl(sensor, k) : Number.NaN)),
    wall,
  );
  const shares: number[] = [];
  for (let k = 0; k < cells.state.length; k++) {
    if (cells.state[k] !== CELL.number || Number.isNaN(wall[k]!)) continue;
    const i = firstFrom(series.wall, series.wall.length, wall[k]! - QUARTER);
    if (i >= series.wall.length || series.wall[i]! > wall[k]! + QUARTER) continue;
    // The nearest in value of those near in time: only what is near none is away.
    let least = Number.POSITIVE_INFINITY;
    for (let j = i; j < series.wall.length && series.wall[j]! <= wall[k]! + QUARTER; j++)
      least = Math.min(least, Math.abs(inMgdl(cells, k) - series.value[j]!) / series.value[j]!);
    shares.push(least);
  }
  return shares.length >= FEWEST && medianOf(shares) > AWAY;
}

const QUARTER = 15 * MINUTE_MS;
