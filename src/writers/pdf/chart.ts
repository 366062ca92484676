import type { BlockOf } from '../../model/report.ts';
import { type Flow, flow, leading, type Strip } from './flow.ts';
import { drawMarks } from './marks.ts';
import { lineStrips, type Setting, setText } from './setting.ts';
import { node } from './tree.ts';

export function chart(block: BlockOf<'chart'>, width: number, setting: Setting): Flow {
  const { scale, palette, parent, capacity } = setting;
  const { drawing } = block;
  const strips: Strip[] = [];
  if (block.title) {
    const text = setText(block.title, scale.strong, width, setting);
    strips.push(...leading(lineStrips(text, node('P', parent), palette.ink.text)));
  }
  const titleRoom = strips.length ? scale.rhythm * 0.5 : 0;
  const most = capacity - strips.length * scale.strong.line - titleRoom;
  const zoom = Math.min(1, width / drawing.width, most / drawing.height);
  const figure = node('Figure', parent);
  const [w, h] = [drawing.width * zoom, drawing.height * zoom];
  strips.push({
    height: h,
    gap: titleRoom,
    keep: false,
    draw(sheet, x, y) {
      figure.alt = drawing.inWords === undefined ? drawing.summary : `${drawing.summary} ${drawing.inWords}`;
      figure.box = sheet.boxInFile(x, y, w, h);
      drawMarks(drawing, sheet.as(figure), x, y, zoom, setting);
    },
  });
  return block.dense
    ? flow(strips, strips.length > 1 ? 0.6 * scale.rhythm : 0, 2)
    : flow(strips, 0.8 * scale.rhythm, scale.rhythm);
}
