import { classOf, coverageIndex, type Lookup } from './openType.ts';

const PAIR_POSITIONING = 2;
const X_PLACEMENT = 1;
const Y_PLACEMENT = 2;
const X_ADVANCE = 4;

const bits = (format: number): number => {
  let count = 0;
  for (let rest = format; rest > 0; rest >>= 1) count += rest & 1;
  return count;
};

/**
 * Kerning between two glyphs, font units, from the pair positioning of a font (GPOS lookup type 2). Null when the font
 * kerns in a way not read here, so that the caller can use a full shaper.
 */
export function pairKerning(view: DataView, lookups: Lookup[]): ((left: number, right: number) => number) | null {
  for (const { type, subtables } of lookups) {
    if (type !== PAIR_POSITIONING) return null;
    for (const at of subtables) {
      const [first, second] = [view.getUint16(at + 4), view.getUint16(at + 6)];
      if ((first & ~X_ADVANCE) !== 0 || second !== 0 || view.getUint16(at) > 2) return null;
    }
  }
  const known = new Map<number, number>();
  return (left, right) => {
    const pair = left * 65536 + right;
    let kern = known.get(pair);
    if (kern === undefined) {
      kern = 0;
      for (const { subtables } of lookups) {
        for (const at of subtables) {
          const found = inSubtable(view, at, left, right);
          if (found === undefined) continue;
          kern += found;
          break;
        }
      }
      known.set(pair, kern);
    }
    return kern;
  };
}

/** The first subtable that has the pair decides; undefined leaves it to the next. */
function inSubtable(view: DataView, at: number, left: number, right: number): number | undefined {
  const covered = coverageIndex(view, at + view.getUint16(at + 2), left);
  if (covered < 0) return undefined;
  const format = view.getUint16(at + 4);
  const size = bits(format) * 2;
  const advanceAt = bits(format & (X_PLACEMENT | Y_PLACEMENT)) * 2;
  const advance = (record: number): number => (format & X_ADVANCE ? view.getInt16(record + advanceAt) : 0);
  if (view.getUint16(at) === 1) {
    const set = at + view.getUint16(at + 10 + covered * 2);
    for (let i = 0; i < view.getUint16(set); i++) {
      const record = set + 2 + i * (2 + size);
      if (view.getUint16(record) === right) return advance(record + 2);
    }
    return undefined;
  }
  const leftClass = classOf(view, at + view.getUint16(at + 8), left);
  const rightClass = classOf(view, at + view.getUint16(at + 10), right);
  const rightClasses = view.getUint16(at + 14);
  return advance(at + 16 + (leftClass * rightClasses + rightClass) * size);
}
