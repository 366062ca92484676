import type { Hatch } from './palette.ts';

export interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

/**
 * The lines of a hatch that cross a box, each [x0, y0, x1, y1] in the box's own coordinates (points, y down). They
 * run past the box: the caller clips. `originX`, `originY` say where the coordinates lie on the page, so that the
 * lines of neighbouring shapes meet and the same page always comes out the same.
 */
export function hatchLines(box: Box, hatch: Hatch, originX = 0, originY = 0): number[][] {
  const lines: number[][] = [];
  const step = hatch.pitch * Math.SQRT2;
  const { x, y, w, h } = box;
  if (hatch.run !== 'rising') {
    // Falling: x - y stays the same along a line.
    const shift = originX - originY;
    for (let c = Math.ceil((x - y - h + shift) / step) * step - shift; c <= x + w - y; c += step) {
      lines.push([c + y, y, c + y + h, y + h]);
    }
  }
  if (hatch.run !== 'falling') {
    // Rising: x + y stays the same along a line.
    const shift = originX + originY;
    for (let c = Math.ceil((x + y + shift) / step) * step - shift; c <= x + w + y + h; c += step) {
      lines.push([c - y, y, c - y - h, y + h]);
    }
  }
  return lines;
}

/** The box around one or more rings of x0, y0, x1, y1 … */
export function boxOf(rings: readonly number[][]): Box {
  let left = Infinity;
  let top = Infinity;
  let right = -Infinity;
  let bottom = -Infinity;
  for (const ring of rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const x = ring[i]!;
      const y = ring[i + 1]!;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  return right < left ? { x: 0, y: 0, w: 0, h: 0 } : { x: left, y: top, w: right - left, h: bottom - top };
}
