import type { LocalDate, MgPerDl } from '../../model/glucose.ts';
import type { Estimate } from '../../model/measured.ts';
import type { Quantity } from '../../model/quantity.ts';

export const count = (value: number): Quantity => ({ q: 'count', value });
export const minutes = (value: number): Quantity => ({ q: 'minutes', value });
export const clock = (value: number): Quantity => ({ q: 'clock', value });
export const word = (value: string): Quantity => ({ q: 'word', value });
export const limit = (of: 'very-low' | 'low' | 'high' | 'very-high'): Quantity => ({ q: 'limit', of });
/** A difference in mg/dL. */
export const rise = (value: number): Quantity => ({ q: 'rise', value });

export const glucose = (value: MgPerDl, beyond: -1 | 0 | 1 = 0): Quantity => ({ q: 'glucose', value, limit: beyond });

export const often = (k: number, n: number, of: 'days' | 'nights' | 'lows'): Quantity => ({ q: 'often', k, n, of });

/** Each day once, in order. */
/** A name of ours as a choice within a message, which holds no hyphen. */
export const choice = (name: string): Quantity => word(name.replaceAll('-', ''));

export const date = (value: LocalDate): Quantity => ({ q: 'date', value });

export const dates = (values: Iterable<LocalDate>): Quantity => ({ q: 'dates', value: [...new Set(values)].sort() });

/** 0 to 1; `goal` is what it is told against. */
export const share = (value: number, goal?: number): Quantity =>
  goal === undefined ? { q: 'share', value } : { q: 'share', value, goal };

export const shareEstimate = (value: Estimate, goal?: number): Quantity =>
  goal === undefined ? { q: 'estimate', value, as: 'share' } : { q: 'estimate', value, as: 'share', goal };
