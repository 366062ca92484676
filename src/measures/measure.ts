import type { Measures } from '../model/measures.ts';
import type { Context } from './context.ts';

/** Minimum data of a measure; what is absent is not asked for. */
export interface Needs {
  readings?: number;
  hours?: number;
  days?: number;
  nights?: number;
}

/** One number or one table, with where its definition comes from and the figures in it. */
export interface Measure<Id extends keyof Measures> {
  id: Id;
  /** Published source; the program's own name stands for choices of ours. What is said about one: `{name}`, in `sources`. */
  source: string;
  needs: Needs;
  /** Constants of the definition, by name, for the page that says how each number was made. */
  definition: Readonly<Record<string, number | string>>;
  compute(shared: Context): Measures[Id];
}
