import type { Node } from './tree.ts';
import type { Typeface } from './typeface.ts';

export interface Stroke {
  colour: string;
  width: number;
  dash?: readonly [number, number] | undefined;
  round?: boolean;
}

/** Whole hundredths of a point: short to write, and the same on every machine. */
export function hundredths(value: number): number {
  const whole = Math.round(value * 100);
  if (!Number.isFinite(whole)) throw new RangeError('not a number');
  return whole;
}

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

/** Circle by four cubic arcs: the usual constant, 4/3 (sqrt 2 - 1). */
const ARC = 0.5522847498;

/**
 * Everything drawn on one sheet, as PDF operators in one string. Coordinates are points from the top left corner,
 * y down. Every operator belongs either to a node of the structure tree or to an artifact.
 */
export class Sheet {
  readonly marks: Node[] = [];
  readonly typefaces = new Set<Typeface>();
  private readonly index: number;
  private readonly height: number;
  private out: string;
  private open: Node | string | null = null;
  private filled = '';
  private stroked = '';

  constructor(index: number, height: number) {
    this.index = index;
    this.height = height;
    this.out = `0.01 0 0 -0.01 0 ${height} cm\n`;
  }

  /** What follows belongs to this node. */
  as(owner: Node): this {
    if (this.open === owner) return this;
    this.close();
    const mark = this.marks.push(owner) - 1;
    owner.content.push([this.index, mark]);
    this.out += `/${owner.kind} <</MCID ${mark}>> BDC\n`;
    this.open = owner;
    return this;
  }

  /** What follows is decoration (`Layout`) or a standing line (`Pagination`): not read aloud. */
  asArtifact(type: 'Layout' | 'Pagination' = 'Layout'): this {
    if (this.open === type) return this;
    this.close();
    this.out += `/Artifact <</Type /${type}>> BDC\n`;
    this.open = type;
    return this;
  }

  private close(): void {
    if (this.open) this.out += 'EMC\n';
    this.open = null;
  }

  finish(): string {
    this.close();
    return this.out;
  }

  /** A box in the file's own coordinates, for the structure tree. */
  boxInFile(x: number, y: number, w: number, h: number): [number, number, number, number] {
    return [x, this.height - y - h, x + w, this.height - y];
  }

  private fillWith(colour: string): void {
    if (this.filled === colour) return;
    this.filled = colour;
    this.out += `${rgb(colour)} rg\n`;
  }

  private strokeWith({ colour, width, dash, round = false }: Stroke): void {
    const dashes = dash ? `[${hundredths(dash[0])} ${hundredths(dash[1])}] 0 d` : '[] 0 d';
    const state = `${rgb(colour)} RG ${hundredths(width)} w ${dashes} ${round ? '1 J 1 j' : '0 J 0 j'}\n`;
    if (this.stroked === state) return;
    this.stroked = state;
    this.out += state;
  }

  /** One line of text; x, y is the start of its baseline. */
  text(text: string, x: number, y: number, face: Typeface, size: number, colour: string): void {
    if (!text) return;
    this.fillWith(colour);
    this.typefaces.add(face);
    const at = `1 0 0 -1 ${hundredths(x)} ${hundredths(y)}`;
    this.out += `BT /${face.id} ${hundredths(size)} Tf ${at} Tm [${face.encode(text)}] TJ ET\n`;
  }

  private path(points: readonly number[], dx: number, dy: number): string {
    let out = `${hundredths(points[0]! + dx)} ${hundredths(points[1]! + dy)} m`;
    for (let i = 2; i + 1 < points.length; i += 2) {
      out += ` ${hundredths(points[i]! + dx)} ${hundredths(points[i + 1]! + dy)} l`;
    }
    return out;
  }

  /** Open lines, each x0, y0, x1, y1 …, moved by dx, dy. */
  lines(lines: readonly (readonly number[])[], stroke: Stroke, dx = 0, dy = 0): void {
    let out = '';
    for (const line of lines) if (line.length >= 4) out += `${this.path(line, dx, dy)}\n`;
    if (!out) return;
    this.strokeWith(stroke);
    this.out += `${out}S\n`;
  }

  rings(rings: readonly (readonly number[])[], dx = 0, dy = 0): string {
    let out = '';
    for (const ring of rings) if (ring.length >= 6) out += `${this.path(ring, dx, dy)} h\n`;
    return out;
  }

  rect(x: number, y: number, w: number, h: number, radius = 0): string {
    const r = Math.min(radius, w / 2, h / 2);
    if (r <= 0) return `${hundredths(x)} ${hundredths(y)} ${hundredths(w)} ${hundredths(h)} re\n`;
    const k = r * (1 - ARC);
    const [x1, y1] = [x + w, y + h];
    const n = (...values: number[]): string => values.map(hundredths).join(' ');
    return `${n(x + r, y)} m ${n(x1 - r, y)} l ${n(x1 - k, y, x1, y + k, x1, y + r)} c ${n(x1, y1 - r)} l ${n(x1, y1 - k, x1 - k, y1, x1 - r, y1)} c ${n(x + r, y1)} l ${n(x + k, y1, x, y1 - k, x, y1 - r)} c ${n(x, y + r)} l ${n(x, y + k, x + k, y, x + r, y)} c h\n`;
  }

  /** Fills a path made by `rings` or `rect`. */
  fill(path: string, colour: string): void {
    if (!path) return;
    this.fillWith(colour);
    this.out += `${path}f*\n`;
  }

  stroke(path: string, stroke: Stroke): void {
    if (!path) return;
    this.strokeWith(stroke);
    this.out += `${path}S\n`;
  }

  /** Draws inside a path only. */
  clipped(path: string, draw: () => void): void {
    if (!path) return;
    const { filled, stroked } = this;
    this.out += `q\n${path}W* n\n`;
    draw();
    this.out += 'Q\n';
    this.filled = filled;
    this.stroked = stroked;
  }
}
