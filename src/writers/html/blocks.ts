import type { Block } from '../../model/report.ts';
import { el, type Html } from './element.ts';
import { chart } from './figure.ts';
import { boxes, writeIn } from './forms.ts';
import { caution, heading, list, paragraph } from './prose.ts';
import type { Setting } from './setting.ts';
import { isDay, isOfStrips, type OfStrips, strips } from './strips.ts';
import { table } from './table.ts';

/** Blocks as they follow each other; neighbouring strips of single days become one group that moves as one. */
export function blocksHtml(blocks: readonly Block[], setting: Setting): Html[] {
  const out: Html[] = [];
  for (let i = 0; i < blocks.length; i++) {
    const block = blocks[i]!;
    if (!isDay(block)) {
      out.push(...blockHtml(block, setting));
      continue;
    }
    // Breaks of a sheet between strips mean nothing to a screen, and print keeps each strip whole by itself.
    const group: OfStrips[] = [block];
    while (i + 1 < blocks.length) {
      const next = blocks[i + 1]!;
      if (isOfStrips(next)) group.push(next);
      else if (next.kind !== 'pageBreak') break;
      i++;
    }
    out.push(...strips(group, setting));
  }
  return out;
}

function blockHtml(block: Block, setting: Setting): readonly Html[] {
  switch (block.kind) {
    case 'heading':
      return [heading(block, setting)];
    case 'paragraph':
      return [paragraph(block)];
    case 'list':
      return [list(block)];
    case 'table':
      return table(block, setting);
    case 'chart':
      return [chart(block, setting)];
    case 'boxes':
      return [boxes(block, setting)];
    case 'writeIn':
      return [writeIn(block)];
    case 'caution':
      return [caution(block)];
    case 'columns':
      return [
        el(
          'div',
          { class: `columns ${block.columns.length > 3 ? 'quarters ' : ''}${setting.shares('grid', block.widths)}` },
          ...block.columns.map((column) => el('div', {}, ...blocksHtml(column, setting))),
        ),
      ];
    case 'panel':
      return [el('div', { class: 'panel' }, ...blocksHtml(block.blocks, setting))];
    case 'together':
      return [el('div', { class: 'together' }, ...blocksHtml(block.blocks, setting))];
    // A screen has room for the fullest.
    case 'fit':
      return blocksHtml(block.forms[0]!(), setting);
    // Distances are the style sheet's.
    case 'space':
      return [];
    case 'pageBreak':
      return [el('div', { class: 'break' })];
  }
}
