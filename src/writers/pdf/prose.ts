import type { BlockOf } from '../../model/report.ts';
import { drawStack, type Flow, flow, heightOf, leading, type Strip, together } from './flow.ts';
import { framed } from './framed.ts';
import { baseline } from './scale.ts';
import { lineStrips, type Setting, setText } from './setting.ts';
import { node } from './tree.ts';

const HEAD = { 1: 'head1', 2: 'head2', 3: 'head3' } as const;

/** A heading never ends a sheet. */
export function heading(block: BlockOf<'heading'>, width: number, setting: Setting): Flow {
  const { scale, palette, parent } = setting;
  const text = setText(block.text, scale[HEAD[block.level]], width, setting);
  const owner = node('H1', parent);
  const strips = lineStrips(text, owner, palette.ink.text).map(
    (line, i): Strip => ({
      ...line,
      draw(sheet, x, y) {
        // Depth follows the order of reading; blocks are measured in another order, and some are never drawn.
        if (i === 0) owner.kind = `H${setting.depth(block.level)}`;
        line.draw(sheet, x, y);
      },
    }),
  );
  const [before, after] = { 1: [2.4, 0.9], 2: [1.5, 0.5], 3: [1.3, 0.3] }[block.level] as [number, number];
  return flow(leading(strips), before * scale.rhythm, after * scale.rhythm);
}

export function paragraph(block: BlockOf<'paragraph'>, width: number, setting: Setting): Flow {
  const { scale, palette, parent } = setting;
  const colour = block.style === 'small' ? palette.axis.text : palette.ink.text;
  const text = setText(block.text, scale[block.style], width, setting);
  const room = block.style === 'lead' ? 0.9 : 0.65;
  return flow(lineStrips(text, node('P', parent), colour), 0, room * scale.rhythm);
}

export function list(block: BlockOf<'list'>, width: number, setting: Setting): Flow {
  const { scale, palette, parent, faces } = setting;
  const style = block.dense ? scale.small : scale.body;
  const face = faces.regular;
  const top = node('L', parent, { numbering: block.ordered ? 'Decimal' : 'Disc' });
  const labels = block.items.map((_, i) => (block.ordered ? `${i + 1}.` : '•'));
  const widest = labels.reduce((most, label) => Math.max(most, face.width(label, style.size)), 0);
  const indent = widest + style.size * 0.55;
  const between = style.size * (block.dense ? 0.1 : 0.3);
  const gutter = scale.rhythm * 2;
  const wide = block.pairs ? (width - gutter) / 2 : width;
  const items = block.items.map((item, i) => {
    const entry = node('LI', top);
    const label = node('Lbl', entry);
    const text = setText(item, style, wide - indent, setting);
    return lineStrips(text, node('LBody', entry), palette.ink.text, indent).map((line, n): Strip => {
      const first = n === 0;
      return {
        ...line,
        gap: first && i > 0 ? between : 0,
        draw(sheet, x, y) {
          if (first) sheet.as(label).text(labels[i]!, x, y + baseline(style), face, style.size, palette.ink.text);
          line.draw(sheet, x, y);
        },
      };
    });
  });
  const strips = block.pairs ? inPairs(items, wide + gutter, between, setting.capacity) : items.flat();
  return flow(strips, 0.2 * scale.rhythm, 0.8 * scale.rhythm);
}

/** Two items side by side, read one after the other. A pair is not cut; one that would be high is set one under another. */
function inPairs(items: readonly Strip[][], right: number, between: number, capacity: number): Strip[] {
  const rows = Array.from({ length: Math.ceil(items.length / 2) }, (_, row) => items.slice(2 * row, 2 * row + 2));
  return rows.flatMap((pair, row): Strip[] => {
    const height = Math.max(...pair.map(heightOf));
    if (height > capacity / 2) return pair.flat();
    const draw: Strip['draw'] = (sheet, x, y) => {
      for (const [i, item] of pair.entries()) drawStack(item, sheet, x + i * right, y);
    };
    return [{ height, gap: row > 0 ? between : 0, keep: false, draw }];
  });
}

/** A boxed caution is framed in ink; the other kind has a bar at its side. Neither is ever grey. */
export function caution(block: BlockOf<'caution'>, width: number, setting: Setting): Flow {
  const { scale, palette, parent } = setting;
  const owner = node('P', parent);
  if (block.boxed) {
    return framed(width, setting, (inner) => {
      const text = setText(block.text, scale.strong, inner, setting);
      return lineStrips(text, owner, palette.ink.text);
    });
  }
  const left = scale.rhythm;
  const text = setText(block.text, scale.small, width - left, setting);
  const bar = { colour: palette.axis.line, width: 1.5 };
  const strips = lineStrips(text, owner, palette.ink.text, left).map((line) => ({
    ...line,
    draw: (...[sheet, x, y]: Parameters<Strip['draw']>) => {
      sheet.asArtifact().lines([[x + 0.75, y, x + 0.75, y + line.height]], bar);
      line.draw(sheet, x, y);
    },
  }));
  return flow(together(strips), 0.8 * scale.rhythm, 0.8 * scale.rhythm);
}
