import { ln } from '../stats/elementary.ts';

/** Puts a value where a chart draws it, in points. */
export type Scale = (value: number) => number;

/*
 * The arithmetic of d3-scale's linear and logarithmic scales, to the last bit (tests/charts/scales.test.ts). A report asks for some
 * hundred scales; each of the library's is a dozen functions that the engine puts among old objects, to be found again only when all
 * memory is looked through.
 */

/** From two different values to two places, and on beyond both. */
export function straight([from, to]: readonly [number, number], [start, end]: readonly [number, number]): Scale {
  const width = to - from;
  return (value) => along((value - from) / width, start, end);
}

/** Logarithmic from the first of three ascending positive values to the last, with a bend in between; what lies beyond stands on its ends. */
export function bentLog(
  [from, bend, to]: readonly [number, number, number],
  [start, corner, end]: readonly [number, number, number],
): Scale {
  const [first, middle, last] = [ln(from), ln(bend), ln(to)];
  return (value) => {
    const at = ln(Math.max(from, Math.min(to, value)));
    return at < middle
      ? along((at - first) / (middle - first), start, corner)
      : along((at - middle) / (last - middle), corner, end);
  };
}

const along = (share: number, start: number, end: number): number => start * (1 - share) + end * share;
