import { square } from './elementary.ts';
/** Mean and spread of values that stand for different lengths of time. */
export interface Moments {
  n: number;
  mean: number;
  /** Sample standard deviation; with equal weights exactly the n - 1 formula. Meaningless below two values. */
  sd: number;
}

/**
 * Weighted mean and SD in two passes, NaN values left out. The spread is the weighted mean square deviation times
 * n / (n - 1), which is the usual sample variance when all weights are equal.
 */
export function moments(values: Float64Array, weights: Float64Array): Moments {
  let n = 0;
  let total = 0;
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    n++;
    total += weights[i]!;
    sum += value * weights[i]!;
  }
  const mean = sum / total;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isNaN(value)) continue;
    squares += weights[i]! * (value - mean) * (value - mean);
  }
  return { n, mean, sd: Math.sqrt(((squares / total) * n) / (n - 1)) };
}

/** Arithmetic mean of at least one value. */
export function meanOf(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

/** Sample standard deviation (n - 1) of at least two values. */
export function sampleSd(values: readonly number[]): number {
  const mean = meanOf(values);
  let squares = 0;
  for (const value of values) squares += square(value - mean);
  return Math.sqrt(squares / (values.length - 1));
}
