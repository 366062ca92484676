import type { Measures } from '../../model/measures.ts';
import type { Quantity } from '../../model/quantity.ts';
import { word } from './quantities.ts';

/** The way in which the mean, and a GMI with it, is a bound, because readings lie beyond the sensor's limits; `no` where none do. */
export const boundWay = ({ mean }: Pick<Measures, 'mean'>): Quantity =>
  word((mean.ok ? mean.value.bound : null) ?? 'no');
