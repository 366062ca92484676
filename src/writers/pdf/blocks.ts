import type { Block, BlockOf } from '../../model/report.ts';
import { chart } from './chart.ts';
import { chain, drawStack, type Flow, flow, heightOf, type Strip, together } from './flow.ts';
import { boxes, writeIn } from './forms.ts';
import { framed } from './framed.ts';
import { caution, heading, list, paragraph } from './prose.ts';
import type { Setting } from './setting.ts';
import { table } from './table.ts';
import { node } from './tree.ts';

/** Measures blocks into one flow of strips, `width` points wide. */
export function blocksFlow(blocks: readonly Block[], width: number, setting: Setting): Flow {
  return chain(blocks.map((block) => blockFlow(block, width, setting)));
}

function blockFlow(block: Block, width: number, setting: Setting): Flow {
  const measure = Math.min(width, setting.scale.longest ?? width);
  switch (block.kind) {
    case 'heading':
      return heading(block, measure, setting);
    case 'paragraph':
      return paragraph(block, measure, setting);
    case 'list':
      return list(block, measure, setting);
    case 'table':
      return table(block, width, setting);
    case 'chart':
      return chart(block, width, setting);
    case 'boxes':
      return boxes(block, width, setting);
    case 'writeIn':
      return writeIn(block, width, setting);
    case 'caution':
      return caution(block, width, setting);
    case 'columns':
      return columns(block, width, setting);
    case 'panel':
      return framed(width, setting, (inner) => {
        const parent = node('Div', setting.parent);
        return blocksFlow(block.blocks, inner, { ...setting, parent }).strips;
      });
    case 'together': {
      const inner = blocksFlow(block.blocks, width, setting);
      return { ...inner, strips: together(inner.strips) };
    }
    case 'fit':
      return blocksFlow(block.forms.at(-1)!(), width, setting);
    case 'space':
      return flow([blank(block.points)], 0, 0);
    case 'pageBreak':
      return flow([{ ...blank(0), breakBefore: true }], 0, 0);
  }
}

const blank = (height: number): Strip => ({ height, gap: 0, keep: false, draw() {} });

/** Side by side and kept together; columns taller than a sheet are set one under another instead. */
function columns(block: BlockOf<'columns'>, width: number, setting: Setting): Flow {
  const { scale, capacity } = setting;
  const gutter = scale.rhythm * 2;
  const sum = block.widths.reduce((total, share) => total + share, 0) || 1;
  const room = width - gutter * (block.columns.length - 1);
  const parts: { flow: Flow; x: number }[] = [];
  let x = 0;
  block.columns.forEach((blocks, i) => {
    const wide = (room * (block.widths[i] ?? 1 / block.columns.length)) / sum;
    // A division of its own, so that each column is read to its end before the next.
    const parent = node('Div', setting.parent);
    parts.push({ flow: blocksFlow(blocks, wide, { ...setting, parent }), x });
    x += wide + gutter;
  });
  const flows = parts.map((part) => part.flow);
  const height = Math.max(0, ...flows.map((it) => heightOf(it.strips)));
  if (height > capacity) return chain(flows);
  const strip: Strip = {
    height,
    gap: 0,
    keep: false,
    draw(sheet, left, y) {
      for (const part of parts) drawStack(part.flow.strips, sheet, left + part.x, y);
    },
  };
  return flow([strip], Math.max(0, ...flows.map((it) => it.before)), Math.max(0, ...flows.map((it) => it.after)));
}
