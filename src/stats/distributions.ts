import { atan, exp } from './elementary.ts';
/**
 * Standard normal distribution function by the series of Abramowitz & Stegun 1964, 26.2.11. Beyond 8 the rest is below
 * 1e-15 and the series would only add rounding.
 */
export function normalCdf(x: number): number {
  if (Math.abs(x) > 8) return x > 0 ? 1 : 0;
  let term = x;
  let sum = x;
  for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k += 2) {
    term *= (x * x) / k;
    sum += term;
  }
  return 0.5 + (sum * exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
}

/**
 * Student's t: probability of lying within -t and t, for whole degrees of freedom. Finite sums of Abramowitz &
 * Stegun 1964, 26.7.3 and 26.7.4.
 */
function studentWithin(t: number, degrees: number): number {
  const slope = t / Math.sqrt(degrees);
  const cosine = 1 / Math.sqrt(1 + slope * slope);
  const sine = slope * cosine;
  const odd = degrees % 2 === 1;
  let term = odd ? cosine : 1;
  let sum = degrees === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k < degrees; k += 2) {
    term *= (cosine * cosine * (k - 1)) / k;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (atan(slope) + sine * sum) : sine * sum;
}

/** The t below which Student's distribution with whole `degrees` of freedom holds probability `p`, 0.5 < p < 1. */
export function studentQuantile(p: number, degrees: number): number {
  const within = 2 * p - 1;
  let low = 0;
  let high = 1;
  while (studentWithin(high, degrees) < within) high *= 2;
  // Bisection: never astray, and done once an analysis.
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (studentWithin(middle, degrees) < within) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
