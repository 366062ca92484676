import type { DateOrder } from './detail.ts';
import type { GlucoseUnit } from './glucose.ts';

/**
 * What an issue asks of the person: whose answer would settle it. A command makes an option of it, a page a button or a
 * field. An answer named here is an example, never a proposal.
 */
export type Question =
  | { of: 'unit'; answer?: GlucoseUnit }
  | { of: 'day-order'; answer: DateOrder }
  | { of: 'zone' }
  | { of: 'period'; by: 'dates' | 'days' }
  /** Whether the report is wanted although so much of this file could not be used. */
  | { of: 'losses'; file: string }
  /** A line of a layout file, by its name there; `answer` is such a layout, as JSON. */
  | { of: 'layout'; field: LayoutField; answer?: string };

export type LayoutField =
  | 'columns'
  | 'meanings'
  | 'kinds'
  | 'units'
  | 'series'
  | 'delimiter'
  | 'decimalMark'
  | 'unit'
  | 'serialDates'
  | 'clock'
  | 'start'
  | 'year'
  /** The layout as a whole. */
  | 'whole';
