import { type Curve, curveOf, middle } from './curve.ts';
import { inTime, type Series } from './inTime.ts';
import type { CodedColumn } from './words.ts';

/** The rows that share one word of a column, and what they do to the values of the whole. */
export interface Group {
  word: string;
  rows: number;
  /** Of its own values alone. */
  curve: Curve;
  /**
   * `same`: its values lie on the curve of the values around them. `other`: they do not. `between`: they do or nearly do,
   * and stand between the regular readings, as finger sticks and calibrations do. `bare`: it has no values.
   */
  verdict: 'same' | 'other' | 'between' | 'bare';
  /** Of its values: those that stand between the regular readings or far off the curve, of these the far ones, and those nobody can judge. */
  odd: number;
  far: number;
  unjudged: number;
  /** Its values lie as near the curve as readings do, wherever in time they stand. */
  near: boolean;
}

/** Rows of a group looked at for their neighbours; more would say the same. */
const LOOKED_AT = 400;
/** So much of a value two neighbours on one curve differ at most as a rule (ours: finger sticks differ by 8 to 10 % from sensors). */
const OWN_SHARE = 0.05;
const TIMES_OWN = 1.8;
/** Values of groups that never stand near each other belong together when their middles do (ours). */
const BLOCKS = 2.5;
/** No reading lies so much of its own value off the curve of its neighbours (ours). */
export const FAR_SHARE = 0.35;

/** How the words of a column part the values of a table; `value` and `wall` by row, NaN where there is none. */
export function groupsOf(coded: CodedColumn, value: Float64Array, wall: Float64Array): Group[] {
  const series = inTime(value, wall);
  const usual = usualStep(series);
  const groups = coded.words.flatMap((word, g): Group[] =>
    coded.rows[g] === 0 ? [] : [{ word, rows: coded.rows[g]!, ...ownOf(coded, g, value, wall, series, usual) }],
  );
  const main = mainGroup(groups);
  // What never stands beside other values is told by its size.
  for (const group of groups) {
    if (group === main || group.verdict !== 'same' || group.curve.pairs > 0) continue;
    if (!main || !isOfSize(group.curve, main.curve)) group.verdict = 'other';
  }
  return groups;
}

const isOfSize = (a: Curve, b: Curve): boolean => Math.max(a.median, b.median) <= BLOCKS * Math.min(a.median, b.median);

/** The group with most values that lie on a curve; of none, the one with most values. */
export function mainGroup(groups: readonly Group[]): Group | undefined {
  let best: Group | undefined;
  for (const group of groups) if (group.curve.n > (best?.curve.n ?? 0)) best = group;
  return best;
}

function usualStep({ wall }: Series): number {
  const steps: number[] = [];
  const every = Math.max(1, Math.floor(wall.length / 2048));
  for (let i = 1; i < wall.length; i += every) if (wall[i]! > wall[i - 1]!) steps.push(wall[i]! - wall[i - 1]!);
  return middle(steps);
}

function ownOf(
  { code }: CodedColumn,
  g: number,
  value: Float64Array,
  wall: Float64Array,
  series: Series,
  usual: number,
): Omit<Group, 'word' | 'rows'> {
  const mine: number[] = [];
  for (let i = 0; i < series.row.length; i++) if (code[series.row[i]!] === g) mine.push(i);
  const own = {
    value: Float64Array.from(mine, (i) => value[series.row[i]!]!),
    wall: Float64Array.from(mine, (i) => wall[series.row[i]!]!),
  };
  const curve = curveOf(own.value, own.wall);
  if (mine.length === 0) return { curve, verdict: 'bare', odd: 0, far: 0, unjudged: 0, near: true };
  const all: number[] = [];
  const alone: number[] = [];
  let [between, odd, far, unjudged] = [0, 0, 0, 0];
  const every = Math.max(1, Math.floor(mine.length / LOOKED_AT));
  for (let j = 0; j < mine.length; j += every) {
    const i = mine[j]!;
    const off = bend(series, i);
    if (Number.isNaN(off)) {
      const edge = besideOne(series, i, usual);
      if (edge === undefined) unjudged++;
      else if (edge) {
        odd++;
        far++;
      }
      continue;
    }
    all.push(off);
    const inserted = series.wall[i + 1]! - series.wall[i - 1]! <= usual * 1.5;
    if (inserted) between++;
    const isFar = off > FAR_SHARE * series.value[i]!;
    if (isFar) far++;
    if (isFar || inserted) odd++;
    const ownOff = bend(own, j);
    if (!Number.isNaN(ownOff)) alone.push(ownOff);
  }
  const seen = { curve, odd, far, unjudged };
  if (all.length === 0) return { near: false, ...seen, verdict: 'same' };
  const off = middle(all);
  // Near enough in size, or no further off among all than among its own.
  const near = off <= OWN_SHARE * curve.median || (alone.length >= 8 && off <= TIMES_OWN * middle(alone));
  if (!near && off > FAR_SHARE * curve.median) return { ...seen, near, verdict: 'other' };
  if (between * 2 > all.length && mine.length * 2 < series.row.length) return { ...seen, near, verdict: 'between' };
  return { ...seen, near, verdict: near ? 'same' : 'other' };
}

/** Whether a value at an end of the rows is far from the one neighbour it has, or nearer in time than readings are; undefined without one. */
function besideOne({ value, wall }: Series, i: number, usual: number): boolean | undefined {
  const near = [i - 1, i + 1].find((j) => j >= 0 && j < value.length && Math.abs(wall[j]! - wall[i]!) <= 1_200_000);
  if (near === undefined) return undefined;
  const early = Math.abs(wall[near]! - wall[i]!) < usual * 0.75;
  return early || Math.abs(value[near]! - value[i]!) > FAR_SHARE * Math.min(value[i]!, value[near]!);
}

/** How far a value lies from the middle of its two neighbours in time; NaN where they are not both near. */
export function bend({ value, wall }: Pick<Series, 'value' | 'wall'>, i: number): number {
  if (i < 1 || i + 1 >= value.length || wall[i + 1]! - wall[i - 1]! > 2_400_000) return Number.NaN;
  return Math.abs(value[i]! - (value[i - 1]! + value[i + 1]!) / 2);
}
