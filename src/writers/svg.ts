import type { Drawing, Mark } from '../model/drawing.ts';
import { type Box, boxOf, hatchLines } from './hatch.ts';
import { withoutMarkup } from './markup.ts';
import { COLOUR, GREY, type Ink, outlineOf, type Palette } from './palette.ts';
import { letterPlace, ringWidth, SIGNS } from './signs.ts';

export interface SvgOptions {
  /** Black ink only. */
  grey?: boolean;
  /** Starts every id, so that several drawings can stand in one document. */
  id?: string;
  /** Whether words that name a day lead to it. */
  days?: boolean;
}

/** A drawing as one SVG element, with its summary as the accessible name. Throws on a coordinate that is no number. */
export function drawingSvg(drawing: Drawing, { grey = false, id = 'drawing', days = false }: SvgOptions = {}): string {
  const pen: Pen = { palette: grey ? GREY : COLOUR, id, clips: 0, days };
  const body = drawing.marks.map((mark) => `${markSvg(mark, pen)}\n`).join('');
  const size = `width="${num(drawing.width)}" height="${num(drawing.height)}"`;
  const view = `viewBox="0 0 ${num(drawing.width)} ${num(drawing.height)}"`;
  const name = `<title id="${id}-title">${escaped(drawing.summary)}</title>`;
  const root = `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${view} role="img" aria-labelledby="${id}-title"`;
  return `${root} font-family="'IBM Plex Sans', sans-serif">\n${name}\n${body}</svg>\n`;
}

interface Pen {
  palette: Palette;
  id: string;
  clips: number;
  days: boolean;
}

function markSvg(mark: Mark, pen: Pen): string {
  const ink = pen.palette[mark.role];
  switch (mark.kind) {
    case 'line': {
      const d = mark.lines.filter((line) => line.length >= 4).map(path);
      const dash = mark.dash ? ` stroke-dasharray="${mark.dash.map(num).join(' ')}"` : ' stroke-linecap="round"';
      const stroke = `stroke="${ink.line}" stroke-width="${num(mark.width)}" stroke-linejoin="round"${dash}`;
      return `<path d="${d.join('')}" fill="none" ${stroke}/>`;
    }
    case 'shape': {
      const d = mark.rings
        .filter((ring) => ring.length >= 6)
        .map((ring) => `${path(ring)}Z`)
        .join('');
      const shape = `<path d="${d}" fill-rule="evenodd"`;
      return filled(shape, ' clip-rule="evenodd"', ink, boxOf(mark.rings), outline(mark, pen), pen);
    }
    case 'rect': {
      const radius = mark.radius ? ` rx="${num(mark.radius)}"` : '';
      const place = `x="${num(mark.x)}" y="${num(mark.y)}" width="${num(mark.w)}" height="${num(mark.h)}"`;
      return filled(`<rect ${place}${radius}`, '', ink, mark, outline(mark, pen), pen);
    }
    case 'text':
      return textSvg(mark, pen);
    case 'sign':
      return signSvg(mark, pen);
  }
}

/** A filled element, its hatch, and its outline on top. */
function filled(shape: string, rule: string, ink: Ink, box: Box, stroke: string, pen: Pen): string {
  const { hatch } = ink;
  if (!hatch) return `${shape} fill="${ink.fill}"${stroke}/>`;
  const clip = `${pen.id}-clip-${++pen.clips}`;
  const d = hatchLines(box, hatch).map(path).join('');
  const lines = `<path d="${d}" fill="none" stroke="${hatch.colour}" stroke-width="${hatch.width}" clip-path="url(#${clip})"/>`;
  const top = stroke ? `${shape} fill="none"${stroke}/>` : '';
  return `${shape} fill="${ink.fill}"/><clipPath id="${clip}">${shape}${rule}/></clipPath>${lines}${top}`;
}

function outline(mark: Extract<Mark, { kind: 'shape' | 'rect' }>, { palette }: Pen): string {
  const stroke = outlineOf(mark, palette);
  if (!stroke) return '';
  const { colour, width, dash } = stroke;
  return ` stroke="${colour}" stroke-width="${num(width)}"${dash ? ` stroke-dasharray="${dash.join(' ')}"` : ''}`;
}

function textSvg(mark: Extract<Mark, { kind: 'text' }>, { palette, days }: Pen): string {
  const under = mark.on && palette[mark.on];
  const colour = under ? under.on : palette[mark.role].text;
  const weight = mark.strong ? ' font-weight="600"' : '';
  // On a hatched band the words carry a rim of the band's plain fill, so that no line runs through them.
  const rim = under?.hatch ? ` stroke="${under.fill}" stroke-width="4" paint-order="stroke"` : '';
  const place = `x="${num(mark.x)}" y="${num(mark.y)}" font-size="${num(mark.size)}" text-anchor="${mark.anchor}"`;
  const day = days && mark.date ? ` data-day="${mark.date}"` : '';
  return `<text ${place} fill="${colour}"${weight}${rim}${day}>${escaped(mark.text)}</text>`;
}

function signSvg(mark: Extract<Mark, { kind: 'sign' }>, { palette }: Pen): string {
  const ink = palette[mark.role];
  const sign = SIGNS[mark.shape];
  const { x, y, size } = mark;
  let out = '';
  for (const polygon of sign.polygons) {
    const ring = polygon.map((value, i) => value * size + (i % 2 ? y : x));
    out += `<path d="${path(ring)}Z" fill="${ink.fill}"/>`;
  }
  if (sign.circle) {
    const look = sign.hollow
      ? `fill="${palette.paper.fill}" stroke="${ink.line}" stroke-width="${num(ringWidth(size))}"`
      : `fill="${ink.fill}"`;
    out += `<circle cx="${num(x)}" cy="${num(y)}" r="${num(sign.circle * size)}" ${look}/>`;
  }
  if (!mark.letter) return out;
  const place = letterPlace(mark.shape, size);
  const colour = place.onFill ? ink.on : ink.text;
  const where = `x="${num(x + place.dx)}" y="${num(y + place.dy)}" font-size="${num(place.size)}"`;
  const anchor = place.inside ? ' text-anchor="middle"' : '';
  return `${out}<text ${where} fill="${colour}" font-weight="600"${anchor}>${escaped(mark.letter)}</text>`;
}

function path(points: readonly number[]): string {
  let d = '';
  for (let i = 0; i + 1 < points.length; i += 2) d += `${i ? 'L' : 'M'}${num(points[i]!)} ${num(points[i + 1]!)}`;
  return d;
}

function num(value: number): string {
  if (!Number.isFinite(value)) throw new Error('a mark has a coordinate that is not a number');
  return `${Math.round(value * 100) / 100}`;
}

/** Text for XML: markup escaped; controls and half surrogate pairs, which XML cannot hold, dropped. */
const escaped = (text: string): string => withoutMarkup(text.replace(/(?![\n\t])[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, ''));
