import { exp, ln } from './elementary.ts';

/** A scale on which every number that is reached is possible. */
export interface BoundedScale {
  /** The largest value there is. */
  most: number;
  to(value: number): number;
  from(x: number): number;
  slope(value: number): number;
}

/** Shares of a whole: log odds. */
export const LOGIT: BoundedScale = {
  most: 1,
  to: (share) => ln(share / (1 - share)),
  from: (x) => 1 / (1 + exp(-x)),
  slope: (share) => 1 / (share * (1 - share)),
};

/** What cannot go below nothing. */
export const LOG: BoundedScale = {
  most: Number.POSITIVE_INFINITY,
  to: ln,
  from: exp,
  slope: (value) => 1 / value,
};

/** Whether a value lies on the scale, and not at its ends. */
export const liesOn = ({ most }: BoundedScale, value: number): boolean => value > 0 && value < most;
