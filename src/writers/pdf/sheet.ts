import { Bytes, hundredths } from './bytes.ts';
import type { DocumentFont } from './documentFont.ts';
import type { Run } from './mixed.ts';
import type { Node } from './tree.ts';
import type { Typeface } from './typeface.ts';
import { utf16 } from './words.ts';

export interface Stroke {
  colour: string;
  width: number;
  dash?: readonly [number, number] | undefined;
  round?: boolean;
}

/** Closed rings of x0, y0, x1, y1 …, moved by dx, dy; or a box with rounded corners. Points, y down. */
export type Path =
  | { rings: readonly (readonly number[])[]; dx: number; dy: number }
  | { x: number; y: number; w: number; h: number; radius?: number };

const colours = new Map<string, string>();

function rgb(colour: string): string {
  let text = colours.get(colour);
  if (text === undefined) {
    const part = (at: number): number =>
      Math.round((Number.parseInt(colour.slice(at, at + 2), 16) / 255) * 1000) / 1000;
    text = `${part(1)} ${part(3)} ${part(5)}`;
    colours.set(colour, text);
  }
  return text;
}

/** A quarter circle as a cubic curve: the usual constant, 4/3 (sqrt 2 - 1). */
const ARC = 0.5522847498;

/**
 * Everything drawn on one sheet, as PDF operators. Coordinates are points from the top left corner, y down; the file
 * holds them as hundredths. Every operator belongs either to a node of the structure tree or to an artifact.
 */
export class Sheet {
  readonly marks: Node[] = [];
  readonly fonts = new Set<DocumentFont>();
  private readonly index: number;
  private readonly height: number;
  private readonly out = new Bytes();
  private open: Node | string | null = null;
  private filled = '';
  private stroked = '';

  constructor(index: number, height: number) {
    this.index = index;
    this.height = height;
    this.out.text(`0.01 0 0 -0.01 0 ${height} cm\n`);
  }

  /** What follows belongs to this node. */
  as(owner: Node): this {
    if (this.open === owner) return this;
    this.close();
    const mark = this.marks.push(owner) - 1;
    owner.content.push([this.index, mark]);
    this.out.text(`/${owner.kind} <</MCID ${mark}>> BDC\n`);
    this.open = owner;
    return this;
  }

  /** What follows is decoration (`Layout`) or a standing line (`Pagination`): not read aloud. */
  asArtifact(type: 'Layout' | 'Pagination' = 'Layout'): this {
    if (this.open === type) return this;
    this.close();
    this.out.text(`/Artifact <</Type /${type}>> BDC\n`);
    this.open = type;
    return this;
  }

  private close(): void {
    if (this.open) this.out.text('EMC\n');
    this.open = null;
  }

  finish(): Uint8Array {
    this.close();
    return this.out.done();
  }

  /** A box in the file's own coordinates, for the structure tree. */
  boxInFile(x: number, y: number, w: number, h: number): [number, number, number, number] {
    return [x, this.height - y - h, x + w, this.height - y];
  }

  private fillWith(colour: string): void {
    if (this.filled === colour) return;
    this.filled = colour;
    this.out.text(`${rgb(colour)} rg\n`);
  }

  private strokeWith({ colour, width, dash, round = false }: Stroke): void {
    const dashes = dash ? `[${hundredths(dash[0])} ${hundredths(dash[1])}] 0 d` : '[] 0 d';
    const state = `${rgb(colour)} RG ${hundredths(width)} w ${dashes} ${round ? '1 J 1 j' : '0 J 0 j'}\n`;
    if (this.stroked === state) return;
    this.stroked = state;
    this.out.text(state);
  }

  /** One line of text; x, y is the start of its baseline. */
  text(text: string, x: number, y: number, face: Typeface, size: number, colour: string): void {
    if (!text) return;
    this.fillWith(colour);
    const runs = face.runs(text);
    if (runs) {
      this.runs(runs, x, y, size);
      return;
    }
    this.startText(face.font, x, y, size);
    this.out.text('[');
    face.encode(text, this.out);
    this.out.text('] TJ ET\n');
  }

  private startText(font: DocumentFont, x: number, y: number, size: number): void {
    this.fonts.add(font);
    this.out.text(`BT /${font.id} `).whole(hundredths(size)).text('Tf 1 0 0 -1 ');
    this.point(x, y);
    this.out.text('Tm ');
  }

  /** Runs of several faces side by side; marks that stand higher or lower are lifted by the text rise. */
  private runs(runs: readonly Run[], x: number, y: number, size: number): void {
    for (const { font, parts, x: from, actual } of runs) {
      if (actual) this.out.text(`/Span <</ActualText <FEFF${utf16(actual)}>>> BDC\n`);
      this.startText(font, x + (from * size) / 1000, y, size);
      let lifted = 0;
      for (const { code, rise } of parts) {
        if (rise !== lifted) this.out.whole(hundredths((rise * size) / 1000)).text('Ts ');
        lifted = rise;
        this.out.text(`[${code}] TJ `);
      }
      // The rise outlasts a text object.
      this.out.text(lifted === 0 ? 'ET\n' : '0 Ts ET\n');
      if (actual) this.out.text('EMC\n');
    }
  }

  private point(x: number, y: number): void {
    this.out.whole(hundredths(x)).whole(hundredths(y));
  }

  private points(points: readonly number[], dx: number, dy: number): void {
    this.point(points[0]! + dx, points[1]! + dy);
    this.out.text('m ');
    for (let i = 2; i + 1 < points.length; i += 2) {
      this.point(points[i]! + dx, points[i + 1]! + dy);
      this.out.text('l ');
    }
  }

  /** Open lines, each x0, y0, x1, y1 …, moved by dx, dy. */
  lines(lines: readonly (readonly number[])[], stroke: Stroke, dx = 0, dy = 0): void {
    const drawn = lines.filter((line) => line.length >= 4);
    if (drawn.length === 0) return;
    this.strokeWith(stroke);
    for (const line of drawn) this.points(line, dx, dy);
    this.out.text('S\n');
  }

  private path(path: Path): void {
    if ('rings' in path) {
      for (const ring of path.rings) {
        if (ring.length < 6) continue;
        this.points(ring, path.dx, path.dy);
        this.out.text('h ');
      }
      return;
    }
    const { x, y, w, h } = path;
    const r = Math.min(path.radius ?? 0, w / 2, h / 2);
    if (r > 0) {
      this.rounded(x, y, x + w, y + h, r);
      return;
    }
    this.point(x, y);
    this.point(w, h);
    this.out.text('re ');
  }

  private rounded(x0: number, y0: number, x1: number, y1: number, r: number): void {
    const k = r * (1 - ARC);
    const step = (operator: string, ...numbers: number[]): void => {
      for (const value of numbers) this.out.whole(hundredths(value));
      this.out.text(operator);
    };
    step('m ', x0 + r, y0);
    step('l ', x1 - r, y0);
    step('c ', x1 - k, y0, x1, y0 + k, x1, y0 + r);
    step('l ', x1, y1 - r);
    step('c ', x1, y1 - k, x1 - k, y1, x1 - r, y1);
    step('l ', x0 + r, y1);
    step('c ', x0 + k, y1, x0, y1 - k, x0, y1 - r);
    step('l ', x0, y0 + r);
    step('c h ', x0, y0 + k, x0 + k, y0, x0 + r, y0);
  }

  fill(path: Path, colour: string): void {
    this.fillWith(colour);
    this.path(path);
    this.out.text('f*\n');
  }

  stroke(path: Path, stroke: Stroke): void {
    this.strokeWith(stroke);
    this.path(path);
    this.out.text('S\n');
  }

  /** Draws inside a path only. */
  clipped(path: Path, draw: () => void): void {
    const { filled, stroked } = this;
    this.out.text('q\n');
    this.path(path);
    this.out.text('W* n\n');
    draw();
    this.out.text('Q\n');
    this.filled = filled;
    this.stroked = stroked;
  }
}
