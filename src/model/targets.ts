import type { GlucoseUnit } from './glucose.ts';

export type Band = 'very-low' | 'low' | 'in-range' | 'high' | 'very-high';

/** Cut-offs in one unit: x < veryLow · x < low · low <= x <= high · x > high · x > veryHigh. */
export interface Limits {
  veryLow: number;
  low: number;
  high: number;
  /** null: this set has no second high level. */
  veryHigh: number | null;
}

/** A share of time the set asks for. Low and high goals are cumulative: "low" includes "very low". Strict inequality. */
export interface Goal {
  of: 'in-range' | 'low' | 'very-low' | 'high' | 'very-high';
  op: '<' | '>';
  /** 0 to 1. */
  share: number;
}

export interface TargetSet {
  id: 'adult' | 'older' | 'pregnancy-type-1' | 'pregnancy-other';
  /** Paper, journal, year, doi. */
  source: string;
  limits: Record<GlucoseUnit, Limits>;
  /** Empty when the source prints no percentages: shares are then shown without any verdict. */
  goals: Goal[];
  /** CV at or below which the consensus speaks of stable glucose, percent; null: not stated for this group. */
  cvLimit: number | null;
  /** Whether GMI may be printed (its equation was not derived in pregnancy). */
  gmi: boolean;
}
