import type { Drawing, Mark } from '../../model/drawing.ts';
import { type Box, boxOf, hatchLines } from '../hatch.ts';
import { type Ink, outlineOf } from '../palette.ts';
import { letterPlace, ringWidth, SIGNS } from '../signs.ts';
import type { Setting } from './setting.ts';
import type { Path, Sheet } from './sheet.ts';

/**
 * Fills a path, and lays the role's hatch over it. The hatch keeps its phase on the sheet, or runs through the middle
 * of a small sample, so that all samples look alike.
 */
export function hatchedFill(sheet: Sheet, ink: Ink, path: Path, box: Box, phase: 'sheet' | 'middle' = 'sheet'): void {
  sheet.fill(path, ink.fill);
  const { hatch } = ink;
  if (!hatch) return;
  const [ox, oy] = phase === 'sheet' ? [0, 0] : [-box.x - box.w / 2, -box.y - box.h / 2];
  const lines = hatchLines(box, hatch, ox, oy);
  sheet.clipped(path, () => sheet.lines(lines, { colour: hatch.colour, width: hatch.width }));
}

/** Draws a chart's marks with its top left corner at x, y, `zoom` times its own size. */
export function drawMarks(drawing: Drawing, sheet: Sheet, x: number, y: number, zoom: number, setting: Setting): void {
  drawing.marks.forEach((mark, i) => {
    try {
      drawMark(zoom === 1 ? mark : zoomed(mark, zoom), sheet, x, y, setting);
    } catch (cause) {
      if (!(cause instanceof RangeError)) throw cause;
      throw new Error(
        `mark ${i} (${mark.kind}, ${mark.role}) of the chart "${drawing.summary}" has a coordinate that is not a number`,
        { cause },
      );
    }
  });
}

function drawMark(mark: Mark, sheet: Sheet, x: number, y: number, setting: Setting): void {
  const ink = setting.palette[mark.role];
  switch (mark.kind) {
    case 'line':
      sheet.lines(mark.lines, { colour: ink.line, width: mark.width, dash: mark.dash, round: !mark.dash }, x, y);
      return;
    case 'shape': {
      const box = boxOf(mark.rings);
      const path = { rings: mark.rings, dx: x, dy: y };
      hatchedFill(sheet, ink, path, { ...box, x: box.x + x, y: box.y + y });
      const stroke = outlineOf(mark, setting.palette);
      if (stroke) sheet.stroke(path, stroke);
      return;
    }
    case 'rect': {
      const box = { x: mark.x + x, y: mark.y + y, w: mark.w, h: mark.h };
      const path = { ...box, radius: mark.radius ?? 0 };
      hatchedFill(sheet, ink, path, box);
      const stroke = outlineOf(mark, setting.palette);
      if (stroke) sheet.stroke(path, stroke);
      return;
    }
    case 'text':
      drawText(mark, sheet, x, y, setting);
      return;
    case 'sign':
      drawSign(mark, sheet, x, y, setting);
  }
}

function drawText(mark: Extract<Mark, { kind: 'text' }>, sheet: Sheet, x: number, y: number, setting: Setting): void {
  const face = setting.faces[mark.strong ? 'semibold' : 'regular'];
  const text = face.readable(mark.text).replaceAll('\n', ' ');
  const width = face.width(text, mark.size);
  const left = mark.x + x - (mark.anchor === 'start' ? 0 : mark.anchor === 'end' ? width : width / 2);
  const base = mark.y + y;
  const under = mark.on && setting.palette[mark.on];
  if (under?.hatch) {
    // Words are not read through a hatch: a plate of the band's plain fill lies under them.
    sheet.fill({ x: left - 2, y: base - mark.size * 0.82, w: width + 4, h: mark.size * 1.08, radius: 1 }, under.fill);
  }
  sheet.text(text, left, base, face, mark.size, under ? under.on : setting.palette[mark.role].text);
}

function drawSign(mark: Extract<Mark, { kind: 'sign' }>, sheet: Sheet, x: number, y: number, setting: Setting): void {
  const sign = SIGNS[mark.shape];
  const ink = setting.palette[mark.role];
  const [cx, cy, size] = [mark.x + x, mark.y + y, mark.size];
  const rings = sign.polygons.map((ring) => ring.map((value) => value * size));
  if (rings.length) sheet.fill({ rings, dx: cx, dy: cy }, ink.fill);
  if (sign.circle) {
    const r = sign.circle * size;
    const path = { x: cx - r, y: cy - r, w: 2 * r, h: 2 * r, radius: r };
    if (sign.hollow) {
      sheet.fill(path, setting.palette.paper.fill);
      sheet.stroke(path, { colour: ink.line, width: ringWidth(size) });
    } else sheet.fill(path, ink.fill);
  }
  if (!mark.letter) return;
  const face = setting.faces.semibold;
  const place = letterPlace(mark.shape, size);
  const letter = face.readable(mark.letter);
  const left = cx + place.dx - (place.inside ? face.width(letter, place.size) / 2 : 0);
  const colour = place.onFill ? ink.on : ink.text;
  sheet.text(letter, left, cy + place.dy, face, place.size, colour);
}

/** A chart too large for its place is drawn smaller rather than cut. */
function zoomed(mark: Mark, zoom: number): Mark {
  const all = (rows: number[][]): number[][] => rows.map((row) => row.map((value) => value * zoom));
  switch (mark.kind) {
    case 'line':
      return { ...mark, lines: all(mark.lines) };
    case 'shape':
      return { ...mark, rings: all(mark.rings) };
    case 'rect':
      return { ...mark, x: mark.x * zoom, y: mark.y * zoom, w: mark.w * zoom, h: mark.h * zoom };
    default:
      return { ...mark, x: mark.x * zoom, y: mark.y * zoom, size: mark.size * zoom };
  }
}
