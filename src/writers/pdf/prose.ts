import type { BlockOf } from '../../model/report.ts';
import { type Flow, flow, leading, type Strip, together } from './flow.ts';
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
  const strips: Strip[] = [];
  block.items.forEach((item, i) => {
    const entry = node('LI', top);
    const label = node('Lbl', entry);
    const text = setText(item, style, width - indent, setting);
    const lines = lineStrips(text, node('LBody', entry), palette.ink.text, indent);
    lines.forEach((line, n) => {
      const first = n === 0;
      strips.push({
        ...line,
        gap: first && i > 0 ? style.size * (block.dense ? 0.1 : 0.3) : 0,
        draw(sheet, x, y) {
          if (first) sheet.as(label).text(labels[i]!, x, y + baseline(style), face, style.size, palette.ink.text);
          line.draw(sheet, x, y);
        },
      });
    });
  });
  return flow(strips, 0.2 * scale.rhythm, 0.8 * scale.rhythm);
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
