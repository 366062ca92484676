import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create, type ParsedFont } from 'fontkit';
import type { Drawing, Mark } from '../../src/model/drawing.ts';
import type { Block, Report } from '../../src/model/report.ts';
import { SIGNS } from '../../src/writers/signs.ts';
import { home } from './story.ts';

/** What is drawn takes so much room, points; y down. */
interface Box {
  name: string;
  kind: 'text' | 'sign' | 'bar';
  left: number;
  right: number;
  top: number;
  foot: number;
}

/** Less between two that stand side by side reads as one; a sign belongs to the words right of it. Points, ours. */
const AIR = { beside: 1.2, own: 0.4 };
/** What may be lost to rounding, points. */
const HAIR = 0.25;

const face = (name: string): ParsedFont =>
  create(readFileSync(join(home, `node_modules/@expo-google-fonts/ibm-plex-sans/${name}.ttf`)));
const FACES = {
  regular: face('400Regular/IBMPlexSans_400Regular'),
  strong: face('600SemiBold/IBMPlexSans_600SemiBold'),
};
const known = new Map<string, number>();

/** As wide as the face's own shaper sets it, which takes no part in where charts place a text. */
function widthOf(text: string, size: number, strong = false): number {
  const key = `${strong ? 'strong' : 'regular'} ${text}`;
  let wide = known.get(key);
  if (wide === undefined) {
    const font = FACES[strong ? 'strong' : 'regular'];
    const run = font.layout(text);
    if (typeof run !== 'object' || run === null || !('advanceWidth' in run) || typeof run.advanceWidth !== 'number')
      throw new Error(`no width of ${text}`);
    wide = run.advanceWidth / font.unitsPerEm;
    known.set(key, wide);
  }
  return wide * size;
}

function boxOf(mark: Mark): Box | null {
  if (mark.kind === 'text') {
    const width = widthOf(mark.text, mark.size, mark.strong);
    const left = mark.x - (mark.anchor === 'start' ? 0 : mark.anchor === 'middle' ? width / 2 : width);
    // Capitals of the face are 0.698 em high (its OS/2 table), figures as well.
    const foot = mark.y + (/[gjpqy,;()]/.test(mark.text) ? 0.18 : 0) * mark.size;
    return { name: `"${mark.text}"`, kind: 'text', left, right: left + width, top: mark.y - 0.7 * mark.size, foot };
  }
  if (mark.kind === 'sign') {
    const { polygons, circle = 0 } = SIGNS[mark.shape];
    const xs = polygons.flatMap((ring) => ring.filter((_, i) => i % 2 === 0).map(Math.abs));
    const ys = polygons.flatMap((ring) => ring.filter((_, i) => i % 2 === 1).map(Math.abs));
    const across = Math.max(circle, ...xs) * mark.size;
    const up = Math.max(circle, ...ys) * mark.size;
    const { x, y } = mark;
    return { name: mark.shape, kind: 'sign', left: x - across, right: x + across, top: y - up, foot: y + up };
  }
  if (mark.kind === 'rect' && mark.role !== 'night' && mark.role !== 'paper') {
    const { x, y, w, h } = mark;
    return { name: `bar ${mark.role}`, kind: 'bar', left: x, right: x + w, top: y, foot: y + h };
  }
  return null;
}

const within = (a: Box, b: Box): boolean =>
  a.left >= b.left - 1 && a.right <= b.right + 1 && a.top >= b.top - 1 && a.foot <= b.foot + 1;

/** What of a drawing stands on something else, or out of the drawing: texts, signs and bars. A text may stand in a bar, a bar on a bar. */
export function touching(drawing: Drawing): string[] {
  const boxes = drawing.marks.flatMap((mark) => boxOf(mark) ?? []);
  const found: string[] = [];
  boxes.forEach((a, i) => {
    if (a.kind !== 'bar' && (a.left < -2 || a.right > drawing.width + 2 || a.top < -2 || a.foot > drawing.height + 2))
      found.push(`${a.name} out of the drawing`);
    for (const b of boxes.slice(i + 1)) {
      if (a.kind === 'bar' && b.kind === 'bar') continue;
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.foot, b.foot) - Math.max(a.top, b.top);
      const [left, right] = a.left <= b.left ? [a, b] : [b, a];
      const air = left.kind === 'sign' && right.kind === 'text' ? AIR.own : AIR.beside;
      if (across <= -air || down <= HAIR) continue;
      if ((a.kind === 'bar' && within(b, a)) || (b.kind === 'bar' && within(a, b))) continue;
      found.push(`${a.name} on ${b.name}`);
    }
  });
  return found;
}

/** What touches in the drawings of a report, each block in the form in which it is printed. */
export const touchingIn = (report: Report): string[] =>
  drawingsIn(report).flatMap(({ page, drawing }) => touching(drawing).map((what) => `${page}: ${what}`));

/** The drawings of a report with their pages: of blocks in several forms those of the first, which a screen shows. */
export function drawingsIn(report: Report): { page: string; drawing: Drawing }[] {
  const walk = (block: Block): Drawing[] => {
    switch (block.kind) {
      case 'chart':
        return [block.drawing];
      case 'columns':
        return block.columns.flat().flatMap(walk);
      case 'panel':
      case 'together':
        return block.blocks.flatMap(walk);
      case 'fit':
        return block.forms[0]!().flatMap(walk);
      case 'table':
        return block.rows.flatMap((row) => row.flatMap(({ picture }) => picture ?? []));
      default:
        return [];
    }
  };
  return report.pages.flatMap(({ id, blocks }) => blocks.flatMap(walk).map((drawing) => ({ page: id, drawing })));
}
