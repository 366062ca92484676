import type { Tier } from '../model/clinic.ts';

/** In the order in which people are looked at. A file that could not be read comes first: nobody knows what is in it. */
export const TIERS: readonly Tier[] = [
  'unread',
  'very-low',
  'long-high',
  'lows',
  'very-high',
  'worse',
  'not-enough',
  'steady',
  'quiet',
];

/** Tiers that ask someone to look. */
export const FLAGGED: readonly Tier[] = TIERS.filter((tier) => tier !== 'steady' && tier !== 'quiet');
