import type { Block, Page } from '../../model/report.ts';
import { outline } from '../outline.ts';

/** Of blocks that come in several forms none is told for this: they hold no heading of level 1, and only that one counts below. */
function* levels(blocks: readonly Block[]): Generator<number> {
  for (const block of blocks) {
    if (block.kind === 'heading') yield block.level;
    else if ('blocks' in block) yield* levels(block.blocks);
    else if (block.kind === 'columns') for (const column of block.columns) yield* levels(column);
  }
}

/**
 * How deep the headings of each page lie in the document. A document has one top heading, its first; a later page
 * that opens with a top heading of its own hangs one level lower, as a chapter.
 */
export function headingDepths(pages: readonly Page[]): ((level: number) => number)[] {
  const depth = outline();
  let first = true;
  return pages.map((page, index) => {
    const used = [...levels(page.blocks)];
    const shift = index > 0 && used.includes(1) ? 1 : 0;
    return (level) => {
      const wanted = first ? 1 : Math.max(level + shift, 2);
      first = false;
      return depth(wanted);
    };
  });
}
