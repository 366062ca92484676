import type { Block } from '../../model/report.ts';
import { heading, type PageContext } from '../context.ts';

/** One sheet is enough where fewer than 72 hours were read, or no night can be told (72 h: Battelino 2019, as coverage has it). */
export function isThin({ analysis }: PageContext): boolean {
  const { coverage, nights } = analysis.measures;
  const night = nights.ok && nights.value.some(({ state }) => state !== 'unknown');
  return !coverage.ok || !coverage.value.reached72h || !night;
}

/** What a few lines are about, beside them: a heading that takes no line of its own. */
const titled =
  (width: number) =>
  (title: string, blocks: Block[]): Block => ({
    kind: 'columns',
    widths: [width, 1 - width],
    columns: [[heading(3, title)], blocks],
  });

export const sideHeaded = titled(0.11);
/** For titles of some words. */
export const aside = titled(0.2);
