import type { Block } from '../../model/report.ts';
import type { Flow, Strip } from './flow.ts';
import { baseline } from './scale.ts';
import { flow, lineStrips, type SetText, type Setting, setText } from './setting.ts';
import { SWATCH, swatch } from './swatch.ts';
import { type Node, node } from './tree.ts';
import { fitSize } from './wrap.ts';

type Figures = Extract<Block, { kind: 'figures' }>;

/** A row of large numbers; as many in a row as keep a readable width, the rest under them. */
export function figures(block: Figures, width: number, setting: Setting): Flow {
  const { scale, parent } = setting;
  const narrowest = scale.value.size * 4.4;
  const gutter = scale.rhythm * 1.6;
  const most = Math.max(1, Math.floor((width + gutter) / (narrowest + gutter)));
  const rows = Math.ceil(block.items.length / most);
  const perRow = Math.ceil(block.items.length / Math.max(1, rows));
  const cell = (width - gutter * (perRow - 1)) / Math.max(1, perRow);
  const top = node('L', parent);
  const strips: Strip[] = [];
  for (let from = 0; from < block.items.length; from += perRow) {
    const cells = block.items.slice(from, from + perRow).map((item) => figure(item, cell, top, setting));
    strips.push({
      height: Math.max(...cells.map((it) => it.height)),
      gap: from === 0 ? 0 : scale.rhythm * 1.2,
      keep: false,
      draw(sheet, x, y) {
        cells.forEach((it, i) => {
          const left = x + i * (cell + gutter);
          it.draw(sheet, left, y);
        });
      },
    });
  }
  return flow(strips, scale.rhythm, 1.3 * scale.rhythm);
}

function figure(item: Figures['items'][number], width: number, top: Node, setting: Setting) {
  const { scale, palette, faces } = setting;
  const body = node('LBody', node('LI', top));
  const ink = palette.ink.text;
  const shift = item.band ? SWATCH + 5 : 0;
  const value = faces.semibold.readable(item.value);
  const size = fitSize(value, faces.semibold, scale.value.size, scale.strong.size, width);
  const parts: [SetText, colour: string, left: number][] = [
    [setText(item.value, { ...scale.value, size }, width, setting), ink, 0],
    [setText(item.label, scale.strong, width - shift, setting), ink, shift],
    [setText(item.note, scale.small, width, setting), palette.axis.text, 0],
  ];
  const strips = parts.map(([text, colour, left]) => lineStrips(text, node('Span', body), colour, left));
  const valueHeight = strips[0]!.length * scale.value.line;
  const all = strips.flat();
  return {
    height: all.reduce((sum, strip) => sum + strip.height, 0),
    draw(sheet: Parameters<Strip['draw']>[0], x: number, y: number) {
      let at = y;
      for (const strip of all) {
        strip.draw(sheet, x, at);
        at += strip.height;
      }
      if (item.band) swatch(sheet, item.band, x, y + valueHeight + baseline(scale.strong), setting);
    },
  };
}
