/** A curve at ascending times, minutes; both columns of one length. */
export interface Curve {
  minutes: ArrayLike<number>;
  values: ArrayLike<number>;
}

/**
 * Incremental area above a baseline, value x minutes: trapezoids above it, what lies below left out, and where a
 * segment crosses only the triangle above (Wolever 2004, Br J Nutr 91:295-301; Brouns 2005, Nutr Res Rev 18:145-171).
 */
export function incrementalArea({ minutes, values }: Curve, baseline: number): number {
  let sum = 0;
  for (let i = 1; i < values.length; i++) {
    const a = values[i - 1]! - baseline;
    const b = values[i]! - baseline;
    const step = minutes[i]! - minutes[i - 1]!;
    if (a >= 0 && b >= 0) sum += ((a + b) / 2) * step;
    else if (a > 0) sum += (a * a * step) / (2 * (a - b));
    else if (b > 0) sum += (b * b * step) / (2 * (b - a));
  }
  return sum;
}
