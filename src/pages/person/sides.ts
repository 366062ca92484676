import type { Speaker } from '../../language/index.ts';
import type { LocalDate } from '../../model/glucose.ts';
import type { PageContext } from '../context.ts';

/** Text of charts above this is that of large print, points: four sides in place of two. */
export const isLarge = ({ chart }: PageContext): boolean => chart.text > 14;

/** `Tue Jun 4`, in which no line ends. */
export const weekdayAnd = (value: LocalDate, speaker: Speaker): string =>
  (['weekday', 'compact'] as const)
    .map((style) => speaker.value({ q: 'date', value }, style))
    .join(' ')
    .replaceAll(' ', '\u00a0');
