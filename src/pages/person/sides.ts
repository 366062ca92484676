import type { PageContext } from '../context.ts';

/** Text of charts above this is that of large print, points: four sides in place of two. */
export const isLarge = ({ chart }: PageContext): boolean => chart.text > 14;
