import type { Measured } from '../model/measured.ts';
import type { Named } from '../model/words.ts';
import type { Trace } from './trace.ts';

/** One further index. They stand apart from the measures: many, made for other data, and asked for by few. */
export interface Index<T> {
  id: Named<'indices'>;
  source: string;
  /** UCUM unit of a plain number; '1' for indices without a unit. */
  unit: string;
  /** Constants of the definition, by name. */
  definition: Readonly<Record<string, number | string>>;
  compute(trace: Trace): Measured<T>;
}
